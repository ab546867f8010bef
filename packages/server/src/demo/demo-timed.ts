import type { Book } from "@witnessmark/book";
import { addDays, airacCycleOn, dateOfDayNumber } from "@witnessmark/engine";
import { type CounterValues, type EventDraft, type LocalDate, wallTime } from "@witnessmark/ledger";

/** How long ago something of the book was last done, and until when a paper is good. */
interface DemoDone {
  readonly daysAgo: number;
  /** How far the counters had come since. */
  readonly since?: Readonly<Record<string, number>>;
  /** So many days ahead stands on the paper. */
  readonly until_d?: number;
  /** Done to the component of this number, when it had itself run so much. */
  readonly serial?: string;
  readonly ran?: CounterValues;
}

const DAY_MS = 86_400_000;
const MIN_MS = 60_000;

/** What the demo's counters show on the day of the demo. */
export const SHOWN = { "airframe-hours": 1284.6, landings: 1623, "engine-starts": 1188 };
/** And what they showed before the last flight of the demo. */
export const BEFORE_LAST = { "airframe-hours": 1283.5, landings: 1622, "engine-starts": 1187 };

/** Of what is shown, the counters that the book has. */
export const countersOf = (book: Book, shown: CounterValues): CounterValues =>
  Object.fromEntries(
    Object.entries(shown).filter(([id]) => book.counters.some((counter) => counter.id === id)),
  );

export const demoDay = (now_ms: number, zone_min: number): LocalDate =>
  dateOfDayNumber(Math.floor((now_ms + zone_min * MIN_MS) / DAY_MS));

/** @param inspectionLeft_h what is left to the 100 h inspection */
function donesOf(today: LocalDate, inspectionLeft_h: number): Readonly<Record<string, DemoDone>> {
  const cycleAge_d = Math.max(0, dayDifference(airacCycleOn(today).from, today));
  return {
    "navigation-data": { daysAgo: Math.min(cycleAge_d, 20) },
    "inspection-100h": { daysAgo: 130, since: { "airframe-hours": 100 - inspectionLeft_h } },
    "annual-inspection": { daysAgo: 151 },
    "altimeter-static": { daysAgo: 402 },
    "transponder-test": { daysAgo: 402 },
    "locator-inspection": { daysAgo: 151 },
    "fire-bottle": { daysAgo: 324, since: { landings: 402 } },
    registration: { daysAgo: 400, until_d: 612 },
    insurance: { daysAgo: 268, until_d: 97 },
    weighing: { daysAgo: 267 },
    "parachute-rocket": { daysAgo: 1_300 },
    // by its own hours: done when it had run 180 h less than it has now
    "starter-generator": { daysAgo: 500, serial: "SG-0417", ran: { "airframe-hours": 610 } },
    magnetos: { daysAgo: 500, serial: "MG-2208", ran: { "airframe-hours": 260 } },
  };
}

/** What moved from another aircraft of the service to this one, and what it had run by then. */
const MOVED: readonly { readonly component: string; readonly serial: string; readonly ran: CounterValues }[] =
  [
    { component: "starter-generator", serial: "SG-0417", ran: { "airframe-hours": 640 } },
    { component: "magnetos", serial: "MG-2208", ran: { "airframe-hours": 295 } },
  ];
const MOVED_DAYS_AGO = 320;
const MOVED_SINCE_h = 150;

const dayDifference = (from: LocalDate, to: LocalDate): number =>
  Math.round((Date.parse(to) - Date.parse(from)) / DAY_MS);

const tenths = (value: number): number => Math.round(value * 10) / 10;

/** Counters as they stand, and when every thing of the book that runs out was last done: nothing of it has run out. */
export function timedDrafts(
  book: Book,
  now_ms: number,
  zone_min: number,
  inspectionLeft_h: number,
): readonly EventDraft[] {
  const today = demoDay(now_ms, zone_min);
  if (book.counters.length === 0) return [];
  const shows: CounterValues = SHOWN;
  const dones = donesOf(today, inspectionLeft_h);
  const hours = tenths(SHOWN["airframe-hours"] - MOVED_SINCE_h);
  return [
    {
      type: "counters.read",
      body: { at: wallTime(now_ms, zone_min), counters: countersOf(book, BEFORE_LAST) },
    },
    ...MOVED.filter(({ component }) => book.timedItems.some((item) => item.component === component)).map(
      (moved): EventDraft => ({
        type: "component.fitted",
        body: { ...moved, on: addDays(today, -MOVED_DAYS_AGO), counters: { "airframe-hours": hours } },
      }),
    ),
    ...book.timedItems.flatMap(({ id }): readonly EventDraft[] => {
      const done = dones[id];
      if (done === undefined) return [];
      const { daysAgo, since = {}, until_d, serial, ran } = done;
      return [
        {
          type: "timedItem.done",
          body: {
            item: id,
            on: addDays(today, -daysAgo),
            counters:
              ran ??
              Object.fromEntries(
                Object.entries(since).map(([counter, counted]) => [
                  counter,
                  tenths((shows[counter] ?? 0) - counted),
                ]),
              ),
            by: "The island workshop",
            ...(until_d === undefined ? {} : { until: addDays(today, until_d) }),
            ...(serial === undefined ? {} : { serial }),
          },
        },
      ];
    }),
  ];
}
