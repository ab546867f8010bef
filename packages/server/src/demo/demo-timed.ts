import type { Book } from "@witnessmark/book";
import { addDays, airacCycleOn, dateOfDayNumber } from "@witnessmark/engine";
import {
  type AddedItem,
  type CounterValues,
  type EventDraft,
  type LocalDate,
  wallTime,
} from "@witnessmark/ledger";

/** An invented thing that runs out, and how long ago it was last done. */
interface DemoItem {
  readonly item: AddedItem;
  readonly doneDaysAgo: number;
  /** How far the counters had come since. */
  readonly since?: Readonly<Record<string, number>>;
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

const item = (more: Partial<AddedItem> & Pick<AddedItem, "id" | "name" | "limits" | "why">): AddedItem => ({
  about: "aircraft",
  combine: "first",
  recurring: true,
  endsLife: false,
  ...more,
});

/** @param inspectionLeft_h what is left to the 100 h inspection */
function itemsOf(today: LocalDate, inspectionLeft_h: number): readonly DemoItem[] {
  const cycleAge_d = 1 + Math.max(0, dayDifference(airacCycleOn(today).from, today));
  return [
    {
      item: item({
        id: "navigation-data",
        name: "Navigation data",
        about: "data",
        limits: [{ by: "data-cycle" }],
        neededFor: ["ifr-day", "ifr-night"],
        instead: "by day, by sight, on the chart only",
        why: "Points and heights in it change with each cycle.",
      }),
      doneDaysAgo: Math.min(cycleAge_d - 1, 20),
    },
    {
      item: item({
        id: "inspection-100h",
        name: "100 h inspection",
        limits: [{ by: "counter", counter: "airframe-hours", every: 100 }],
        rule: "Maintenance programme of the aircraft",
        why: "What wears by the hour is looked at by the hour.",
      }),
      doneDaysAgo: 130,
      since: { "airframe-hours": 100 - inspectionLeft_h },
    },
    {
      item: item({
        id: "annual-inspection",
        name: "Annual inspection",
        limits: [{ by: "calendar-months", months: 12 }],
        why: "What ages without being flown is looked at each year.",
      }),
      doneDaysAgo: 151,
    },
    {
      item: item({
        id: "altimeter-static",
        name: "Altimeter and static system",
        limits: [{ by: "calendar-months", months: 24 }],
        neededFor: ["ifr-day", "ifr-night"],
        why: "A leak in it shows a wrong height.",
      }),
      doneDaysAgo: 402,
    },
    {
      item: item({
        id: "transponder-test",
        name: "Transponder test",
        limits: [{ by: "calendar-months", months: 24 }],
        why: "Others see the aircraft by it.",
      }),
      doneDaysAgo: 402,
    },
    {
      item: item({
        id: "locator-inspection",
        name: "Emergency locator, inspected",
        component: "emergency-locator",
        about: "component",
        limits: [{ by: "calendar-months", months: 12 }],
        why: "It is found out only when it is needed.",
      }),
      doneDaysAgo: 151,
    },
    {
      item: item({
        id: "fire-bottle",
        name: "Fire bottle, weighed",
        about: "component",
        limits: [
          { by: "months", months: 12 },
          { by: "counter", counter: "landings", every: 500 },
        ],
        why: "A bottle that lost its charge looks like one that did not.",
      }),
      doneDaysAgo: 324,
      since: { landings: 402 },
    },
    {
      item: item({
        id: "registration",
        name: "Registration",
        about: "papers",
        limits: [{ by: "date", on: addDays(today, 612) }],
        why: "Without it the aircraft may not be flown.",
      }),
      doneDaysAgo: 400,
    },
    {
      item: item({
        id: "insurance",
        name: "Insurance",
        about: "papers",
        limits: [{ by: "date", on: addDays(today, 97) }],
        why: "The owner asks for it, and most fields do.",
      }),
      doneDaysAgo: 268,
    },
    {
      item: item({
        id: "weighing",
        name: "Weighing",
        limits: [{ by: "months", months: 48 }],
        why: "Aircraft grow heavier with the years.",
      }),
      doneDaysAgo: 267,
    },
  ];
}

const dayDifference = (from: LocalDate, to: LocalDate): number =>
  Math.round((Date.parse(to) - Date.parse(from)) / DAY_MS);

/** Counters as they stand, and every thing that runs out with when it was last done: nothing of it has run out. */
export function timedDrafts(
  book: Book,
  now_ms: number,
  zone_min: number,
  inspectionLeft_h: number,
): readonly EventDraft[] {
  const today = demoDay(now_ms, zone_min);
  const equipment = new Set(book.equipment.map(({ id }) => id));
  if (book.counters.length === 0) return [];
  const shows: CounterValues = SHOWN;
  const followed = itemsOf(today, inspectionLeft_h).filter(
    ({ item: each }) => each.component === undefined || equipment.has(each.component),
  );
  return [
    {
      type: "counters.read",
      body: { at: wallTime(now_ms, zone_min), counters: countersOf(book, BEFORE_LAST) },
    },
    ...followed.flatMap(({ item: each, doneDaysAgo, since }): readonly EventDraft[] => [
      { type: "timedItem.added", body: { item: each } },
      {
        type: "timedItem.done",
        body: {
          item: each.id,
          on: addDays(today, -doneDaysAgo),
          counters: Object.fromEntries(
            Object.entries(since ?? {}).map(([id, counted]) => [
              id,
              Math.round(((shows[id] ?? 0) - counted) * 10) / 10,
            ]),
          ),
          by: "The island workshop",
        },
      },
    ]),
  ];
}
