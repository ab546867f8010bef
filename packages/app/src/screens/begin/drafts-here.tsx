import { copyForAnother, newDraft } from "@witnessmark/book";
import { useId, useState } from "react";
import { Trouble } from "../../frame/trouble.tsx";
import { useKeeping } from "../../frame/use-keeping.ts";
import type { KeepSnapshot } from "../../keep/contract.ts";
import { useKeep } from "../../keep/react.ts";
import { href } from "../../routes/route.ts";
import { go } from "../../routes/use-route.ts";
import { shortDay } from "../../words/dates.ts";
import { useDrafts } from "./use-drafts.ts";

/** Books in the making on this phone: the way back to each. */
export function DraftsHere() {
  const { drafts, trouble } = useDrafts();
  if (drafts.length === 0) return <Trouble words={trouble} />;
  return (
    <section>
      <h2>Books in the making</h2>
      {drafts.map(({ registration, type, changedAt_ms }) => (
        <a key={registration} className="button tall full" href={href({ at: "book", registration })}>
          {registration}
          {type === "" ? "" : `, ${type}`}, {shortDay(changedAt_ms)}
        </a>
      ))}
    </section>
  );
}

const REGISTRATION = /^[A-Z0-9]+(-[A-Z0-9]+)*$/;

/** A new book from that of an aircraft that is here: the same but for its registration. */
export function CopyOfABook({ snapshot }: { readonly snapshot: KeepSnapshot }) {
  const keep = useKeep();
  const keeping = useKeeping();
  const id = useId();
  const books = [...snapshot.aircraft.values()].filter(({ book }) => book !== null);
  const [from, setFrom] = useState(books[0]?.registration ?? "");
  const [typed, setTyped] = useState("");
  if (books.length === 0) return null;
  const registration = typed.trim().toUpperCase();
  const wrong =
    registration === ""
      ? null
      : !REGISTRATION.test(registration) || registration.length > 16
        ? "Capital letters, figures and a dash between them, at most 16."
        : snapshot.aircraft.has(registration)
          ? `${registration} is here already. Change its book on its own page.`
          : null;
  const copy = () =>
    keeping.keep(async () => {
      if (registration === "" || wrong !== null) throw new Error(wrong ?? "Say which aircraft it is for.");
      const text = snapshot.aircraft.get(from)?.state.books.at(-1)?.text;
      if (text === undefined) throw new Error(`The book of ${from} is not here. Choose another.`);
      await beginDraft(keep, registration, copyForAnother(text, registration));
    });
  return (
    <section>
      <h2>From the book of another</h2>
      <p>
        All of it is copied but the registration. Masses, papers and gauges are those of the other: look at
        each.
      </p>
      <label className="field" htmlFor={`${id}-from`}>
        <span>The book of</span>
        <select id={`${id}-from`} value={from} onChange={(event) => setFrom(event.target.value)}>
          {books.map(({ registration: each, book }) => (
            <option key={each} value={each}>
              {each}, {book?.aircraft.type}
            </option>
          ))}
        </select>
      </label>
      <label className="field" htmlFor={`${id}-to`}>
        <span>Registration of the new one</span>
        <input
          id={`${id}-to`}
          value={typed}
          autoCapitalize="characters"
          autoComplete="off"
          maxLength={20}
          aria-invalid={wrong !== null}
          onChange={(event) => setTyped(event.target.value)}
        />
      </label>
      <Trouble words={wrong ?? keeping.trouble} />
      <button type="button" className="button tall full" aria-busy={keeping.busy} onClick={() => void copy()}>
        Copy it
      </button>
    </section>
  );
}

/** Keeps the text as the draft of a book never issued, and opens it. @throws {NotKept} @throws {Error} a draft is there */
export async function beginDraft(
  keep: ReturnType<typeof useKeep>,
  registration: string,
  text: string,
): Promise<void> {
  if ((await keep.drafts.find(registration)) !== undefined) {
    throw new Error(`A draft for ${registration} is here already: it is listed under “Add an aircraft”.`);
  }
  await keep.drafts.put(registration, newDraft(text, null), 0);
  go({ at: "book", registration }, "replace");
}
