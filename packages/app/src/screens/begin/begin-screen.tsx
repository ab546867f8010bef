import { ARCHETYPES, beginBook, drawnFrom } from "@witnessmark/book";
import { InputError } from "@witnessmark/engine";
import { type FormEvent, useMemo, useRef, useState } from "react";
import { PlainTitle } from "../../frame/title-block.tsx";
import { Trouble } from "../../frame/trouble.tsx";
import { useKeeping } from "../../frame/use-keeping.ts";
import type { KeepSnapshot } from "../../keep/contract.ts";
import { useKeep } from "../../keep/react.ts";
import { href } from "../../routes/route.ts";
import { isoWithOffset } from "../../words/dates.ts";
import { keptOfAll } from "../../words/keeping.ts";
import { BeginDrawing } from "./begin-drawing.tsx";
import { beginDraft } from "./drafts-here.tsx";
import {
  asKind,
  DATUM_ASKED,
  DATUM_MEANS,
  type FieldName,
  figuresOf,
  firstArchetype,
  nothingSaid,
  type Said,
  type Wrong,
  wrongOf,
} from "./first-figures.ts";
import { LayoutPicks, Pick } from "./layout-picks.tsx";
import "./begin.css";

/** Begins a book from a few figures: the aircraft is drawn while one types. */
export function BeginScreen({ snapshot }: { readonly snapshot: KeepSnapshot }) {
  return (
    <div className="frame">
      <PlainTitle title="Begin a book" kept={keptOfAll(snapshot.status)} back={href({ at: "add" })} />
      <main className="page begin">
        <section>
          <p>
            A few figures, and the aircraft is drawn with its points in their places and what is generally
            looked at there. Its limits are not in it: they are in the aircraft’s approved manual, and you put
            them in.
          </p>
        </section>
        <BeginForm snapshot={snapshot} />
      </main>
    </div>
  );
}

function BeginForm({ snapshot }: { readonly snapshot: KeepSnapshot }) {
  const keep = useKeep();
  const keeping = useKeeping();
  const form = useRef<HTMLFormElement>(null);
  const [said, setSaid] = useState(() => nothingSaid(firstArchetype()));
  const [asked, setAsked] = useState(false);
  const { figures, wrong: missing } = figuresOf(said, [...snapshot.aircraft.keys()]);
  const { drawn, wrong: outside } = useDrawn(figures);
  const seen = useLast(drawn === null ? null : { drawn, figures });
  const wrong: Wrong = { ...outside, ...missing };
  const say = (part: Partial<Said>) => setSaid((before) => ({ ...before, ...part }));
  const send = async (event: FormEvent) => {
    event.preventDefault();
    setAsked(true);
    if (Object.keys(wrong).length > 0) {
      // after the words about it are there
      requestAnimationFrame(() => form.current?.querySelector<HTMLElement>("[aria-invalid=true]")?.focus());
      return;
    }
    await keeping.keep(async () => {
      const on = isoWithOffset(Date.now()).slice(0, 10);
      const by = snapshot.person?.name ?? "";
      const text = beginBook({ archetype: said.archetype, figures, by, on });
      await beginDraft(keep, figures.registration, text);
    });
  };
  const field = (
    name: FieldName,
    label: string,
    more: { readonly number?: boolean; readonly means?: string } = {},
  ) => (
    <TextField
      name={name}
      label={label}
      value={said[name]}
      wrong={asked || (said[name] !== "" && name !== "registration") ? wrong[name] : undefined}
      isNumber={more.number ?? false}
      means={more.means}
      onChange={(text) => say({ [name]: text })}
    />
  );
  return (
    <form ref={form} className="begin-form" onSubmit={(event) => void send(event)} noValidate>
      <section>
        <fieldset>
          <legend className="legend">It is most like</legend>
          <div className="choices">
            {ARCHETYPES.map((kind) => (
              <button
                key={kind.id}
                type="button"
                aria-pressed={kind.id === said.archetype.id}
                onClick={() => setSaid((before) => asKind(before, kind))}
              >
                {kind.name}
              </button>
            ))}
          </div>
        </fieldset>
      </section>
      <section className="begin-fields">
        {field("registration", "Registration")}
        {field("type", "Type")}
        <Pick
          legend="Lengths in"
          options={{ m: "Metres", ft: "Feet" }}
          chosen={said.unit}
          onPick={(unit) => say({ unit })}
        />
        {field("seats", "Seats", { number: true })}
        {field("span", "Wing span", { number: true })}
        {field("length", "Length", { number: true })}
        {field("height", "Height, if you know it", { number: true })}
        {field("datum", DATUM_ASKED, { means: DATUM_MEANS })}
        <LayoutPicks said={said} onSay={say} />
      </section>
      <section className="begin-seen">
        {seen === null ? null : <BeginDrawing {...seen} unit={said.unit} isPast={drawn === null} />}
        {drawn === null ? <p className="begin-note">With these figures nothing can be drawn.</p> : null}
        {said.span.trim() === "" || said.length.trim() === "" ? (
          <p className="begin-note">Until you say, it is drawn with the figures of no aircraft.</p>
        ) : null}
      </section>
      <section>
        <Trouble words={keeping.trouble} />
        <button type="submit" className="button filled tall full" aria-busy={keeping.busy}>
          Begin this book
        </button>
      </section>
    </form>
  );
}

/** What would be drawn; nothing, and why, where the figures are those of no aircraft. */
function useDrawn(figures: Parameters<typeof drawnFrom>[0]): {
  readonly drawn: ReturnType<typeof drawnFrom> | null;
  readonly wrong: Wrong;
} {
  const { registration: _registration, type: _type, ...asked } = figures;
  const key = JSON.stringify(asked);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key says all that it is drawn from
  return useMemo(() => {
    try {
      return { drawn: drawnFrom({ ...asked, registration: "", type: "" }), wrong: {} };
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      return { drawn: null, wrong: wrongOf(error) };
    }
  }, [key]);
}

/** What there was last; the drawing does not go while a figure is half typed. */
function useLast<Seen extends { readonly drawn: object }>(now: Seen | null): Seen | null {
  const [last, setLast] = useState(now);
  if (now !== null && now.drawn !== last?.drawn) setLast(now);
  return now ?? last;
}

interface TextFieldProps {
  readonly name: FieldName;
  readonly label: string;
  readonly value: string;
  readonly wrong: string | undefined;
  readonly isNumber: boolean;
  /** What it is, where its name does not say it all. */
  readonly means: string | undefined;
  readonly onChange: (text: string) => void;
}

function TextField({ name, label, value, wrong, isNumber, means, onChange }: TextFieldProps) {
  const id = `begin-${name}`;
  return (
    <div className={means === undefined ? "begin-field" : "begin-field begin-field-wide"}>
      <label className="field">
        <span>{label}</span>
        <input
          value={value}
          onChange={(event) => onChange(event.target.value)}
          inputMode={isNumber ? "decimal" : "text"}
          autoComplete="off"
          autoCapitalize={name === "registration" ? "characters" : "sentences"}
          maxLength={60}
          aria-invalid={wrong !== undefined}
          aria-describedby={wrong === undefined ? (means === undefined ? undefined : `${id}-means`) : id}
        />
      </label>
      {means === undefined ? null : (
        <p className="begin-note" id={`${id}-means`}>
          {means}
        </p>
      )}
      {wrong === undefined ? null : (
        <p className="trouble" id={id} role="alert">
          {wrong}
        </p>
      )}
    </div>
  );
}
