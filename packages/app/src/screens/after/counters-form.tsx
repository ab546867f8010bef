import type { Counter } from "@witnessmark/book";
import { type FormEvent, useState } from "react";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import type { Draft } from "../../keep/contract.ts";
import { dayMonth, isoWithOffset } from "../../words/dates.ts";
import { tally } from "../../words/figures.ts";
import { type CounterSaid, counterText, readCounter } from "./counter-said.ts";
import { KeepRow, useKeptHere } from "./keep-and-undo.tsx";

/** What the counters show now: everything that runs out by hours, landings and starts goes by it. */
export function CountersForm({ open }: { readonly open: OpenAircraft }) {
  const { book, state, registration } = open;
  const kept = useKeptHere(registration);
  const [typed, setTyped] = useState<Readonly<Record<string, string>>>({});
  const [replaced, setReplaced] = useState<ReadonlySet<string>>(new Set());
  const [fault, setFault] = useState<string | null>(null);
  const rows = book.counters.map((counter) => {
    const last = state.counters.get(counter.id)?.at(-1);
    return { counter, last, said: readCounter(typed[counter.id] ?? "", counter, last, Date.now()) };
  });
  const send = async (event: FormEvent) => {
    event.preventDefault();
    const wrong = faultOf(rows, replaced);
    setFault(wrong);
    if (wrong !== null) return;
    const drafts = draftsOf(rows, replaced, isoWithOffset(Date.now()));
    const said = rows.filter(({ said: { kind } }) => kind !== "nothing");
    if (await kept.keepAll(drafts, `Kept: ${tally(said.length, "counter")}.`)) {
      setTyped({});
      setReplaced(new Set());
    }
  };
  return (
    <section>
      <h2>What the counters show</h2>
      <form className="after-form" onSubmit={(event) => void send(event)} noValidate>
        {rows.map(({ counter, last, said }) => (
          <div key={counter.id} className="after-counter">
            <label className="field">
              <span>
                {counter.name}
                {last === undefined
                  ? ", not written down before"
                  : `, ${counterText(last.shown, counter)} on ${dayMonth(last.at_ms)}`}
              </span>
              <input
                inputMode="decimal"
                autoComplete="off"
                value={typed[counter.id] ?? ""}
                aria-invalid={said.kind === "fault"}
                onChange={(event) => setTyped({ ...typed, [counter.id]: event.target.value })}
              />
            </label>
            {said.kind === "cannot-be" ? (
              <label className="after-replaced">
                <input
                  type="checkbox"
                  checked={replaced.has(counter.id)}
                  onChange={(event) => setReplaced(toggled(replaced, counter.id, event.target.checked))}
                />
                <span>
                  From {counterText(said.before, counter)} it {said.why}. Tick if the meter was replaced; else
                  type what it shows.
                </span>
              </label>
            ) : null}
          </div>
        ))}
        <KeepRow kept={kept} act="Keep what they show" fault={fault} />
      </form>
    </section>
  );
}

interface Row {
  readonly counter: Counter;
  readonly said: CounterSaid;
}

function toggled(set: ReadonlySet<string>, id: string, isIn: boolean): ReadonlySet<string> {
  const next = new Set(set);
  if (isIn) next.add(id);
  else next.delete(id);
  return next;
}

function faultOf(rows: readonly Row[], replaced: ReadonlySet<string>): string | null {
  for (const { counter, said } of rows) {
    if (said.kind === "fault") return `${said.words}.`;
    if (said.kind === "cannot-be" && !replaced.has(counter.id))
      return `${counter.name} ${said.why}. Type what it shows, or say that the meter was replaced.`;
  }
  return rows.every(({ said }) => said.kind === "nothing") ? "Type what at least one of them shows." : null;
}

/** One reading of all that were typed, and for each meter that was replaced the event that says so. */
function draftsOf(rows: readonly Row[], replaced: ReadonlySet<string>, at: string): readonly Draft[] {
  const shows = rows.flatMap(({ counter, said }) =>
    said.kind === "shows" ? [[counter.id, said.value] as const] : [],
  );
  const changed = rows.flatMap(({ counter, said }): readonly Draft[] =>
    said.kind === "cannot-be" && replaced.has(counter.id)
      ? [
          {
            type: "counter.replaced",
            body: { counter: counter.id, at, showed: said.before, shows: said.value },
          },
        ]
      : [],
  );
  return shows.length === 0
    ? changed
    : [...changed, { type: "counters.read", body: { at, counters: Object.fromEntries(shows) } }];
}
