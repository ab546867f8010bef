import { componentAboard } from "@witnessmark/assess";
import type { Counter } from "@witnessmark/book";
import { type FormEvent, useState } from "react";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { KeepRow, type KeptHere } from "../after/keep-and-undo.tsx";
import { lastSeenElsewhere } from "./component-elsewhere.ts";
import { type MoveSaid, moveDrafts, moveFault, type Typed } from "./move-said.ts";
import { useTimed } from "./timed-now.ts";

interface MoveFormProps {
  readonly open: OpenAircraft;
  readonly kept: KeptHere;
  readonly component: string;
  readonly counters: readonly Counter[];
  /** What is done to it again and again has a last time that its papers may tell. */
  readonly recurs: boolean;
  readonly item: string;
}

/** A component that goes in or comes out: its number, the day, what the aircraft and it itself had run. */
export function MoveForm({ open, component, counters, recurs, kept, item }: MoveFormProps) {
  const { state } = open;
  const { today } = useTimed(open);
  const aboard = componentAboard(state, component);
  const [said, setSaid] = useState<MoveSaid>(() => ({
    act: "fitted",
    serial: "",
    on: today,
    shown: Object.fromEntries(
      counters.map(({ id }) => [id, String(state.counters.get(id)?.at(-1)?.shown ?? "")]),
    ),
    ran: {},
    lastOn: "",
    lastRan: {},
  }));
  const [fault, setFault] = useState<string | null>(null);
  const { act, on, shown, ran, lastOn, lastRan } = said;
  const say = (more: Partial<MoveSaid>) => setSaid({ ...said, ...more });
  const before = act === "fitted" ? lastSeenElsewhere(open, said.serial.trim()) : undefined;
  const send = async (event: FormEvent) => {
    event.preventDefault();
    const isOut = act === "removed" && aboard?.isFitted === true;
    const whole = isOut ? { ...said, serial: aboard.serial } : said;
    const where = { state, component, counters, aboard, today };
    const wrong = moveFault(whole, where);
    setFault(wrong);
    if (wrong !== null) return;
    await kept.keepAll(
      moveDrafts(whole, item, where),
      `Kept: number ${whole.serial.trim()} is ${act === "removed" ? "out" : "fitted"}.`,
    );
  };
  return (
    <form className="done-form" onSubmit={(event) => void send(event)} noValidate>
      <fieldset className="choices" aria-label="What was done">
        <button type="button" aria-pressed={act === "fitted"} onClick={() => say({ act: "fitted" })}>
          Fitted
        </button>
        <button type="button" aria-pressed={act === "removed"} onClick={() => say({ act: "removed" })}>
          Removed, nothing put in
        </button>
      </fieldset>
      {act === "removed" && aboard?.isFitted === true ? null : (
        <label className="field">
          <span>Serial number of {act === "fitted" ? "what was fitted" : "what was removed"}</span>
          <input
            value={said.serial}
            maxLength={120}
            autoComplete="off"
            onChange={(e) => say({ serial: e.target.value })}
          />
        </label>
      )}
      {before === undefined ? null : (
        <p className="record-small" role="status">
          It came off {before.registration} on {before.on}.
          <button
            type="button"
            className="quiet"
            onClick={() =>
              say({
                ran: Object.fromEntries(
                  Object.entries(before.ran).map(([id, n]) => [id, String(Math.round(n * 1000) / 1000)]),
                ),
              })
            }
          >
            Take what it had run then
          </button>
        </p>
      )}
      <label className="field">
        <span>On</span>
        <input type="date" value={on} max={today} onChange={(event) => say({ on: event.target.value })} />
      </label>
      {counters.map((counter) => (
        <Figure
          key={`shown ${counter.id}`}
          words={`${counter.name} of the aircraft then`}
          counter={counter}
          typed={shown}
          onTyped={(typed) => say({ shown: typed })}
        />
      ))}
      {act === "removed"
        ? null
        : counters.map((counter) => (
            <Figure
              key={`ran ${counter.id}`}
              words={`It had run then itself, ${counter.name.toLowerCase()}`}
              counter={counter}
              typed={ran}
              onTyped={(typed) => say({ ran: typed })}
            />
          ))}
      {act === "removed" || !recurs ? null : (
        <>
          <label className="field">
            <span>Last done to it before, if its papers say so</span>
            <input
              type="date"
              value={lastOn}
              max={on}
              onChange={(event) => say({ lastOn: event.target.value })}
            />
          </label>
          {lastOn === ""
            ? null
            : counters.map((counter) => (
                <Figure
                  key={`last ${counter.id}`}
                  words={`It had run by then itself, ${counter.name.toLowerCase()}`}
                  counter={counter}
                  typed={lastRan}
                  onTyped={(typed) => say({ lastRan: typed })}
                />
              ))}
        </>
      )}
      <KeepRow kept={kept} act={act === "fitted" ? "It is fitted" : "It is out"} fault={fault} />
    </form>
  );
}

interface FigureProps {
  readonly words: string;
  readonly counter: Counter;
  readonly typed: Typed;
  readonly onTyped: (typed: Typed) => void;
}

function Figure({ words, counter, typed, onTyped }: FigureProps) {
  return (
    <label className="field">
      <span>
        {words}
        {counter.unit === "h" ? ", h" : ""}
      </span>
      <input
        inputMode="decimal"
        autoComplete="off"
        value={typed[counter.id] ?? ""}
        onChange={(event) => onTyped({ ...typed, [counter.id]: event.target.value })}
      />
    </label>
  );
}
