import { askedByChance } from "@witnessmark/assess";
import type { Book, Check } from "@witnessmark/book";
import {
  type Author,
  type ChainEnd,
  type EventDraft,
  emptyState,
  type LedgerEvent,
  makeEvents,
  newId,
  Random,
  wallTime,
} from "@witnessmark/ledger";
import { demoReading } from "./demo-reading.ts";
import { countersOf, SHOWN, timedDrafts } from "./demo-timed.ts";
import { leaksOf, longPast, type Timed, tyreRead } from "./long-past.ts";

export interface DemoContext {
  readonly operator: string;
  /** The device that the history is written by. */
  readonly device: string;
  readonly author: Author;
  /** Milliseconds since 1970 UTC: the history ends before it. */
  readonly now_ms: number;
  /** Local time minus UTC, minutes, east positive. */
  readonly zone_min: number;
  /** Two years of flying, or the last walk and flight alone. */
  readonly past: "short" | "long";
}

const MINUTE_MS = 60_000;
const DAY_MS = 24 * 60 * MINUTE_MS;
/** One look takes at least this long in the invented walk. */
const LOOK_MS = 9_000;
/** What is left to the next inspection: in the long past less than a flight takes. */
const INSPECTION_LEFT_h = { short: 12.4, long: 0.4 } as const;
const WHY_NO_KEY = "This is the demo: it was written by the program, and nobody signed it.";

/**
 * The invented past of one demo aircraft, as real, sealed events: its book, a walk three days ago on which everything
 * was as it should be, a flight after it, the ground gear fitted since, what runs out; and, where it is asked for, the
 * two years before.
 */
export async function demoHistory(
  book: Book,
  text: string,
  context: DemoContext,
): Promise<readonly LedgerEvent[]> {
  const events: LedgerEvent[] = [];
  let last: ChainEnd | null = null;
  let clock: string | null = null;
  for (const { at_ms, draft } of timeline(book, text, context)) {
    const made = await makeEvents(
      {
        operator: context.operator,
        aircraft: book.aircraft.registration,
        device: context.device,
        author: context.author,
        zone_min: context.zone_min,
        last,
        clock,
        now_ms: at_ms,
        newId,
        key: null,
      },
      [draft],
    );
    events.push(...made.events);
    ({ last, clock } = made);
  }
  return events;
}

function timeline(book: Book, text: string, context: DemoContext): readonly Timed[] {
  const walked = walkOf(book, context.now_ms - 3 * DAY_MS, context.past === "long");
  const finished_ms = walked.at(-1)?.at_ms ?? context.now_ms - 3 * DAY_MS;
  const landed_ms = finished_ms + 110 * MINUTE_MS;
  const { now_ms, zone_min, past } = context;
  const isLong = past === "long";
  const flights = book.aircraft.engine === "turboprop" ? 200 : 60;
  // with its long past the book is as old as the first flight
  const adopted_ms = isLong ? now_ms - 760 * DAY_MS : now_ms - 4 * DAY_MS;
  const known = isLong ? INSPECTION_LEFT_h.long : INSPECTION_LEFT_h.short;
  return [
    ...adoption(book, text, adopted_ms),
    ...(isLong ? longPast(book, { now_ms, zone_min, flights }) : []),
    ...timedDrafts(book, now_ms - 4 * DAY_MS, zone_min, known).map((draft, index) => ({
      at_ms: now_ms - 4 * DAY_MS + 5 * MINUTE_MS + index * LOOK_MS,
      draft,
    })),
    ...walked,
    {
      at_ms: landed_ms + 4 * MINUTE_MS,
      draft: {
        type: "happening.recorded",
        body: { happening: "flown", at: wallTime(landed_ms, context.zone_min) },
      },
    },
    ...(book.counters.length === 0 ? [] : [counted(book, landed_ms, context.zone_min)]),
    ...fitted(book, landed_ms + 25 * MINUTE_MS),
  ];
}

/** What the counters show after the last flight. */
const counted = (book: Book, landed_ms: number, zone_min: number): Timed => ({
  at_ms: landed_ms + 6 * MINUTE_MS,
  draft: {
    type: "counters.read",
    body: { at: wallTime(landed_ms + 5 * MINUTE_MS, zone_min), counters: countersOf(book, SHOWN) },
  },
});

function adoption(book: Book, text: string, at_ms: number): readonly Timed[] {
  const { registration, type } = book.aircraft;
  return [
    {
      at_ms,
      draft: { type: "device.introduced", body: { label: "Demo", key: { kind: "none", why: WHY_NO_KEY } } },
    },
    {
      at_ms,
      draft: {
        type: "book.adopted",
        body: { sha256: book.sha256, revision: book.revision, registration, type, text },
      },
    },
    ...fitted(book, at_ms + MINUTE_MS),
  ];
}

function fitted(book: Book, at_ms: number): readonly Timed[] {
  return book.groundGear.map((item, index) => ({
    at_ms: at_ms + index * LOOK_MS,
    draft: { type: "groundGear.fitted", body: { item: item.id, count: item.count } },
  }));
}

function walkOf(book: Book, started_ms: number, leaking: boolean): readonly Timed[] {
  const walk = newId();
  const steps: Timed[] = [
    {
      at_ms: started_ms,
      draft: { type: "walk.started", body: { walk, kind: "first-of-day", bookSha256: book.sha256 } },
    },
  ];
  let at_ms = started_ms;
  for (const { id: item, count, stowedIn } of book.groundGear) {
    at_ms += LOOK_MS;
    const body = { item, count, stowedIn: stowedIn[0] ?? "the baggage compartment", walk };
    steps.push({ at_ms, draft: { type: "groundGear.removed", body } });
  }
  for (const check of book.checks.filter(({ walks }) => walks.includes("first-of-day"))) {
    at_ms += Math.max(LOOK_MS, check.least.valueSI * 1_500);
    steps.push(...answered(check, book, walk, at_ms, leaking));
  }
  for (const check of drawnIn(book, walk, started_ms)) {
    const draft = {
      type: "evidence.declined",
      body: { walk, check, why: "No camera in this demo" },
    } as const;
    steps.push({ at_ms, draft });
  }
  steps.push({ at_ms: at_ms + LOOK_MS, draft: { type: "walk.finished", body: { walk } } });
  return steps;
}

/** The looks that a walk with no photo before it asks to be shown: which they are rests on its id alone. */
const drawnIn = (book: Book, walk: string, started_ms: number): ReadonlySet<string> =>
  askedByChance(book, emptyState(book.aircraft.registration), {
    id: walk,
    kind: "first-of-day",
    recordedAt: new Date(started_ms).toISOString(),
    hlc: "",
  });

function answered(check: Check, book: Book, walk: string, at_ms: number, leaking: boolean): readonly Timed[] {
  const reading = leaking ? goingOn(check, book) : demoReading(check, book);
  const answer: EventDraft = {
    type: "check.answered",
    body: { walk, check: check.id, answer: "as-it-should-be" },
  };
  if (reading === null) return [{ at_ms, draft: answer }];
  return [
    { at_ms, draft: { type: "reading.recorded", body: { walk, check: check.id, ...reading } } },
    { at_ms: at_ms + 2_000, draft: answer },
  ];
}

/** Three days ago, as the long past goes on: the tyres as they were, one of them a little less. */
function goingOn(check: Check, book: Book): ReturnType<typeof demoReading> {
  const reading = demoReading(check, book);
  const read = tyreRead(check, { daysAgo: 3, kelvin: 288.15, leaks: leaksOf(book) }, new Random(3));
  return reading === null || read === undefined
    ? reading
    : { ...reading, read, temperature: { value: 15, unit: "degC" } };
}
