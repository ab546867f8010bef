import { type LimitLeft, leftText, type TimedFigure, type TimedState } from "@witnessmark/assess";
import type { AircraftState, Done } from "@witnessmark/ledger";
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

/** What was written down in the period as done about them, in the order in which it was done. */
export function timedDoneOf(
  state: AircraftState,
  names: Names,
  signed: SignedEvents,
  isIn: (at: string) => boolean,
): readonly RecordDone[] {
  const isPilots = (id: string) =>
    (names.book?.timedItems.find((item) => item.id === id) ?? state.timedAdded.get(id)?.item)?.about ===
    "pilot";
  return [...state.timedDone.values()]
    .flat()
    .filter(({ recordedAt, item, holder }) => isIn(recordedAt) && holder === undefined && !isPilots(item))
    .sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : a.hlc < b.hlc ? -1 : 1))
    .map((done) => ({
      at: done.recordedAt,
      by: personWords(done.author),
      entry: done.event,
      signed: signed.has(done.event),
      on: done.on,
      item: itemName(done.item, names),
      says: [
        `Done by ${done.by}${done.reference === undefined ? "" : `, ${done.reference}`}`,
        ...(done.words === undefined ? [] : [done.words]),
        ...Object.entries(done.counters).map(
          ([id, value]) => `${counterName(id, names)}: ${countWords(id, value, names)}`,
        ),
      ],
    }));
}
