import { PlainTitle } from "../../frame/title-block.tsx";
import { Trouble } from "../../frame/trouble.tsx";
import { useKeeping } from "../../frame/use-keeping.ts";
import type { KeepSnapshot } from "../../keep/contract.ts";
import { useKeep } from "../../keep/react.ts";
import { href } from "../../routes/route.ts";
import { keptOfAll } from "../../words/keeping.ts";
import "./apron.css";

/** The aircraft that were put away: nothing of them is lost, and each can be fetched back. */
export function Archived({ snapshot }: { readonly snapshot: KeepSnapshot }) {
  const keep = useKeep();
  const keeping = useKeeping();
  const entries = [...snapshot.aircraft.values()].filter((entry) => entry.state.archived);
  const restore = (registration: string) =>
    void keeping.keep(() => keep.append(registration, [{ type: "aircraft.restored", body: {} }]));
  return (
    <div className="frame">
      <PlainTitle title="Put away" kept={keptOfAll(snapshot.status)} back={href({ at: "apron" })} />
      <main>
        <Trouble words={keeping.trouble} onDismiss={keeping.dismiss} />
        {entries.length === 0 ? <p className="apron-none">Nothing is put away.</p> : null}
        <ul className="rows">
          {entries.map((entry) => (
            <li key={entry.registration}>
              <div>
                <b>{entry.registration}</b>
                <span>{entry.state.books.at(-1)?.type ?? "No book"}</span>
              </div>
              <button
                type="button"
                className="button"
                aria-busy={keeping.busy}
                onClick={() => restore(entry.registration)}
              >
                Fetch back
              </button>
            </li>
          ))}
        </ul>
      </main>
      <footer className="plain-foot">
        <a className="button full tall" href={href({ at: "apron" })}>
          Back to the Apron
        </a>
      </footer>
    </div>
  );
}
