import type { FollowedItem } from "@witnessmark/assess";
import type { Counter } from "@witnessmark/book";
import { type FormEvent, useState } from "react";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { readFigure } from "../../words/figures.ts";
import { counterText } from "../after/counter-said.ts";
import { KeepRow, useKeptHere } from "../after/keep-and-undo.tsx";
import { doneDrafts, type FollowedHere } from "./done-drafts.ts";
import { MedicalDay } from "./medical-day.tsx";
import { useTimed } from "./timed-now.ts";

interface DoneFormProps {
  readonly open: OpenAircraft;
  readonly followed: FollowedHere;
}

/** Whether the last day may stand on the paper itself. */
const endsOnAPaper = ({ limits }: FollowedItem): boolean =>
  limits.some(({ by }) => by === "printed" || by === "date" || by === "data-cycle");

/** Takes down that something was done: when, at what the counters showed, by whom, and until when it is then good. */
export function DoneForm({ open, followed }: DoneFormProps) {
  const { item } = followed;
  const kept = useKeptHere(open.registration);
  const { today } = useTimed(open);
  const counters = countersOf(open, item);
  const [on, setOn] = useState(item.limits.some(({ by }) => by === "printed") ? "" : today);
  const [until, setUntil] = useState("");
  const [shown, setShown] = useState<Readonly<Record<string, string>>>(() =>
    Object.fromEntries(
      counters.map(({ id }) => [id, String(open.state.counters.get(id)?.at(-1)?.shown ?? "")]),
    ),
  );
  const [by, setBy] = useState("");
  const [reference, setReference] = useState("");
  const [fault, setFault] = useState<string | null>(null);
  const read = counters.map((counter) => ({ counter, ...readShown(shown[counter.id] ?? "", counter) }));
  const isPrinted = item.limits.some((limit) => limit.by === "printed");
  const faultOf = (): string | null => {
    if (on === "") return "Say on which day it was done.";
    if (on > today) return `${on} is still to come: write down what was done, not what will be.`;
    if (isPrinted && until === "") return "Say until which day it is good, as it is printed on it.";
    if (until !== "" && until < on)
      return `It is good until ${until}, and was done on ${on}: look at the two days.`;
    if (by.trim() === "") return "Say who did it, or who released it.";
    for (const each of read) if (each.value === undefined) return each.why;
    return null;
  };
  const send = async (event: FormEvent) => {
    event.preventDefault();
    const wrong = faultOf();
    setFault(wrong);
    if (wrong !== null) return;
    const done = await kept.keepAll(
      doneDrafts(followed, {
        on,
        until,
        counters: Object.fromEntries(read.map(({ counter, value }) => [counter.id, value ?? 0])),
        by,
        reference,
        person: open.person.id,
      }),
      "Kept.",
    );
    if (!done) return;
    setBy("");
    setReference("");
    setUntil("");
  };
  return (
    <section className="one-section">
      <h3>Write down that it was done</h3>
      <form className="done-form" onSubmit={(event) => void send(event)} noValidate>
        <label className="field">
          <span>{isPrinted ? "Done, or issued, on" : "On"}</span>
          <input type="date" value={on} max={today} onChange={(event) => setOn(event.target.value)} />
        </label>
        {item.rule === "14 CFR 61.23(d)" || item.rule === "MED.A.045" ? (
          <MedicalDay rule={item.rule} on={on} onUntil={setUntil} />
        ) : null}
        {endsOnAPaper(item) ? (
          <label className="field">
            <span>Good until, as printed on it{isPrinted ? "" : ", if it says so"}</span>
            <input type="date" value={until} onChange={(event) => setUntil(event.target.value)} />
          </label>
        ) : null}
        {counters.map((counter) => (
          <label className="field" key={counter.id}>
            <span>
              {counter.name} then{counter.unit === "h" ? ", h" : ""}
            </span>
            <input
              inputMode="decimal"
              value={shown[counter.id] ?? ""}
              onChange={(event) => setShown({ ...shown, [counter.id]: event.target.value })}
            />
          </label>
        ))}
        <label className="field">
          <span>
            {item.about === "pilot" ? "By: examiner, instructor, office" : "By, as on the work order"}
          </span>
          <input
            value={by}
            onChange={(event) => setBy(event.target.value)}
            maxLength={200}
            autoComplete="off"
          />
        </label>
        <label className="field">
          <span>Reference, if there is one</span>
          <input value={reference} onChange={(event) => setReference(event.target.value)} maxLength={400} />
        </label>
        <KeepRow kept={kept} act="Keep it" fault={fault} />
      </form>
    </section>
  );
}

/** The counters that an item runs by. */
function countersOf({ book }: OpenAircraft, item: FollowedItem): readonly Counter[] {
  const ids = new Set(item.limits.flatMap((limit) => (limit.by === "counter" ? [limit.counter] : [])));
  return book.counters.filter(({ id }) => ids.has(id));
}

/** What a counter showed, as it was typed. */
export function readShown(
  text: string,
  counter: Counter,
): { readonly value: number } | { readonly value: undefined; readonly why: string } {
  const read = readFigure(text, counterText(100, counter));
  if (!read.ok) return { value: undefined, why: `${counter.name}: ${read.why}` };
  const is = (read.unit === undefined || read.unit === counter.unit) && read.value >= 0;
  return is
    ? { value: read.value }
    : { value: undefined, why: `${counter.name}: expected what it showed, as a number.` };
}
