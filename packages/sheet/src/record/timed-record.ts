import { type LimitLeft, leftText, type TimedFigure, type TimedState } from "@witnessmark/assess";
import type { AircraftState, ComponentMove, CounterValues, Done } from "@witnessmark/ledger";
import type { RecordDone, RecordTimed } from "./aircraft-record.ts";
import { dayWords } from "./day-words.ts";
import type { SignedEvents } from "./discrepancy-record.ts";
import { counterName, countWords, itemName, type Names, personWords } from "./names.ts";

const STATES: Readonly<Record<TimedState, string>> = {
  good: "Good",
  "ends-in-flight": "Good",
  "in-tolerance": "Past, within its tolerance",
  past: "Run out",
  unknown: "Not known",
};

function dueWords(left: LimitLeft): string {
  switch (left.by) {
    case "date":
      return dayWords(left.on);
    case "counter": {
      const at = left.at.toLocaleString("en", { maximumFractionDigits: 1 });
      const name = left.counter.name.toLowerCase();
      return left.counter.unit === "h" ? `${at} h of ${name}` : `${at} ${name}`;
    }
    case "unknown":
      return `not known: ${left.lacks}`;
    default:
      return left satisfies never;
  }
}

const lastWords = (last: Done | undefined): string =>
  last === undefined
    ? "not on record"
    : [dayWords(last.on), last.by, last.reference].filter((part) => part !== undefined).join(", ");

/** A pilot's own items are the pilot's papers, not the aircraft's. */
export const isOfAircraft = ({ item }: TimedFigure): boolean => item.about !== "pilot";

/** What runs out, as `assess` has it, nearest its end first. */
export const timedOf = (figures: readonly TimedFigure[]): readonly RecordTimed[] =>
  figures.filter(isOfAircraft).map(({ item, last, limits, nearest, state }) => ({
    item: item.name,
    ...(item.rule === undefined ? {} : { rule: item.rule }),
    state: STATES[state],
    lastDone: lastWords(last),
    nextDue: [
      ...limits.map(dueWords),
      ...(limits.length > 1 ? [item.combine === "first" ? "whichever is first" : "whichever is later"] : []),
    ],
    left: leftText(nearest),
  }));

/** What was written down in the period as done about them, and which component went in or came out, in order. */
export function timedDoneOf(
  state: AircraftState,
  names: Names,
  signed: SignedEvents,
  isIn: (at: string) => boolean,
): readonly RecordDone[] {
  const isPilots = (id: string) =>
    (names.book?.timedItems.find((item) => item.id === id) ?? state.timedAdded.get(id)?.item)?.about ===
    "pilot";
  const dones = [...state.timedDone.values()]
    .flat()
    .filter(({ recordedAt, item, holder }) => isIn(recordedAt) && holder === undefined && !isPilots(item))
    .map((done) => ({
      ...entryOf(done, signed),
      hlc: done.hlc,
      on: done.on,
      item: itemName(done.item, names),
      says: [
        `Done by ${done.by}${done.reference === undefined ? "" : `, ${done.reference}`}`,
        ...(done.until === undefined ? [] : [`Good until ${dayWords(done.until)}, as it says itself`]),
        ...(done.serial === undefined ? [] : [`To number ${done.serial}, by its own count`]),
        ...(done.words === undefined ? [] : [done.words]),
        ...countsWords(done.counters, names),
      ],
    }));
  const moves = state.componentMoves
    .filter(({ recordedAt }) => isIn(recordedAt))
    .map((move) => ({
      ...entryOf(move, signed),
      hlc: move.hlc,
      on: move.on,
      item: names.book?.equipment.find(({ id }) => id === move.component)?.name ?? move.component,
      says: [
        `Number ${move.serial} was ${move.fitted ? "fitted" : "removed"}`,
        ...countsWords(move.ran, names).map((words) => `It had run itself, ${words}`),
        ...countsWords(move.counters ?? {}, names).map((words) => `The aircraft then, ${words}`),
      ],
    }));
  return [...dones, ...moves]
    .sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : a.hlc < b.hlc ? -1 : 1))
    .map(({ hlc: _, ...entry }) => entry);
}

const entryOf = ({ recordedAt, author, event }: Done | ComponentMove, signed: SignedEvents) => ({
  at: recordedAt,
  by: personWords(author),
  entry: event,
  signed: signed.has(event),
});

const countsWords = (counts: CounterValues, names: Names): readonly string[] =>
  Object.entries(counts).map(([id, value]) => `${counterName(id, names)}: ${countWords(id, value, names)}`);
