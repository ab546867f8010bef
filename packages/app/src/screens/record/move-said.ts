import { type ComponentAboard, totalWhenShown } from "@witnessmark/assess";
import type { Counter } from "@witnessmark/book";
import type { AircraftState } from "@witnessmark/ledger";
import type { Draft } from "../../keep/contract.ts";
import { readShown } from "./done-form.tsx";

/** What was typed for each counter, by its id. */
export type Typed = Readonly<Record<string, string>>;

/** What a person says when a component goes in or comes out, as it was typed. */
export interface MoveSaid {
  readonly act: "fitted" | "removed";
  readonly serial: string;
  readonly on: string;
  /** What the counters of the aircraft showed then. */
  readonly shown: Typed;
  /** What the one that was fitted had run itself. */
  readonly ran: Typed;
  /** When it was last done to it before, and what it had run by then; empty where its papers do not say. */
  readonly lastOn: string;
  readonly lastRan: Typed;
}

interface Where {
  readonly state: AircraftState;
  readonly component: string;
  readonly counters: readonly Counter[];
  readonly aboard: ComponentAboard | undefined;
  readonly today: string;
}

/** What cannot be of it, in words; `null` when it can be kept. */
export function moveFault(said: MoveSaid, { counters, aboard, today }: Where): string | null {
  const { act, on, lastOn } = said;
  const serial = said.serial.trim();
  if (serial === "") return "Write the serial number that stands on it.";
  if (on === "" || on > today) return "Say on which day it was; it cannot be still to come.";
  if (aboard !== undefined && on < aboard.on)
    return `Number ${aboard.serial} was ${aboard.isFitted ? "fitted" : "removed"} on ${aboard.on}: this cannot have been before.`;
  if (act === "fitted" && aboard?.isFitted === true && serial === aboard.serial)
    return `Number ${serial} is fitted already.`;
  if (lastOn > on) return "It was last done before it was fitted: look at the two days.";
  return figureFault(said, counters);
}

function figureFault(
  { act, shown, ran, lastOn, lastRan }: MoveSaid,
  counters: readonly Counter[],
): string | null {
  for (const counter of counters) {
    const read = readShown(shown[counter.id] ?? "", counter);
    if (read.value === undefined) return read.why;
    if (act === "removed") continue;
    const own = readShown(ran[counter.id] ?? "", counter);
    if (own.value === undefined)
      return `${counter.name}: expected what it had run when it was fitted; 0 for a new one.`;
    if (lastOn === "") continue;
    const last = readShown(lastRan[counter.id] ?? "", counter);
    if (last.value === undefined || last.value > own.value)
      return `${counter.name}: expected what it had run itself when it was last done, at most ${own.value}.`;
  }
  return null;
}

const valuesOf = (typed: Typed, counters: readonly Counter[]): Readonly<Record<string, number>> =>
  Object.fromEntries(
    counters.flatMap((counter) => {
      const { value } = readShown(typed[counter.id] ?? "", counter);
      return value === undefined ? [] : [[counter.id, value]];
    }),
  );

/** What is kept: the one aboard goes out with what it has run, the other comes in with what it had. */
export function moveDrafts(
  said: MoveSaid,
  item: string,
  { state, component, counters, aboard }: Where,
): readonly Draft[] {
  const { act, on, lastOn } = said;
  const serial = said.serial.trim();
  const shown = valuesOf(said.shown, counters);
  const ranOfAboard = Object.fromEntries(
    Object.entries(shown).flatMap(([id, at]) => {
      const began = aboard?.began(id);
      return began === undefined ? [] : [[id, Math.max(0, totalWhenShown(state, id, at, on) - began)]];
    }),
  );
  const out: readonly Draft[] =
    aboard?.isFitted === true
      ? [
          {
            type: "component.removed",
            body: { component, serial: aboard.serial, on, ran: ranOfAboard, counters: shown },
          },
        ]
      : act === "removed"
        ? [{ type: "component.removed", body: { component, serial, on, ran: {}, counters: shown } }]
        : [];
  if (act === "removed") return out;
  return [
    ...out,
    {
      type: "component.fitted",
      body: { component, serial, on, ran: valuesOf(said.ran, counters), counters: shown },
    },
    ...(lastOn === ""
      ? []
      : [
          {
            type: "timedItem.done",
            body: {
              item,
              on: lastOn,
              counters: valuesOf(said.lastRan, counters),
              by: "As its papers say",
              serial,
            },
          } as const,
        ]),
  ];
}
