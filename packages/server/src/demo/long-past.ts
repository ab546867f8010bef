import type { Book, Check } from "@witnessmark/book";
import { fromSI, toSI } from "@witnessmark/engine";
import { type EventDraft, newId, Random, type Read, wallTime } from "@witnessmark/ledger";
import { BEFORE_LAST } from "./demo-timed.ts";

/** A draft, and when it was made. */
export interface Timed {
  readonly at_ms: number;
  readonly draft: EventDraft;
}

const MIN_MS = 60_000;
const DAY_MS = 24 * 60 * MIN_MS;
const DAYS = 730;
/** The same past in every demo; it is invented, and moves with the day of the demo. */
const SEED = 460;
const AIR_Pa = 101_325;
const REFERENCE_K = 288.15;

/** The right main tyre of the turboprop loses so much a day since so long. */
const LEAK = { check: "main-tyre-pressure.right-main-tyre", bar_perDay: 0.02, since_d: 12 } as const;
/** Filled to so much above its service pressure, as a share. */
const FILLED_1 = 1.045;
/** Tyres are filled up again when they have lost so much, and so often at the least. */
const REFILL_d = 70;
const LAST_REFILL_d = 33;
/** Over so many hours the engine has come to use twice the oil. */
const RISING_h = 70;

interface Past {
  readonly now_ms: number;
  readonly zone_min: number;
  readonly flights: number;
}

/**
 * The invented two years before: on each flying day a short walk with the pressures, a flight, what the counters show;
 * oil and tyres filled up now and then; lately a slow leak, more oil for each hour, and a fault that came back.
 */
export function longPast(book: Book, { now_ms, zone_min, flights }: Past): readonly Timed[] {
  const random = new Random(SEED);
  const tyres = book.checks.filter((check) => check.reading?.limit.by === "tyre");
  const oil = book.checks.find(({ id }) => id.startsWith("oil-level"));
  const codes = (book.fields ?? []).map(({ code }) => code);
  const out: Timed[] = [];
  const say = (at_ms: number, draft: EventDraft) => out.push({ at_ms, draft });
  const hours = hoursOf(flights, random);
  let lastOil_h = 0;
  for (let flight = 0; flight < flights; flight += 1) {
    const daysAgo = DAYS - ((DAYS - 5) * (flight + 1)) / flights;
    const at_ms = Math.floor(now_ms - daysAgo * DAY_MS + random.between(-2, 2) * 60 * MIN_MS);
    const walk = newId();
    const kelvin = REFERENCE_K + random.between(-9, 8);
    say(at_ms, { type: "walk.started", body: { walk, kind: "first-of-day", bookSha256: book.sha256 } });
    let step_ms = at_ms;
    for (const check of tyres) {
      step_ms += 40_000;
      for (const draft of tyreDrafts(check, walk, { daysAgo, kelvin, leaks: leaksOf(book) }, random))
        say(step_ms, draft);
    }
    say(step_ms + 30_000, { type: "walk.finished", body: { walk } });
    const flown_h = hours[flight] ?? 0;
    const total_h = BEFORE_LAST["airframe-hours"] - sum(hours.slice(flight + 1));
    const takeOff_ms = step_ms + 25 * MIN_MS;
    const landing_ms = takeOff_ms + flown_h * 3_600_000;
    const [from, to] = [codes[flight % codes.length] ?? "home", codes[(flight + 1) % codes.length] ?? "home"];
    say(landing_ms + 4 * MIN_MS, {
      type: "flight.made",
      body: {
        made: newId(),
        from,
        to,
        takeOff: wallTime(takeOff_ms, zone_min),
        landing: wallTime(landing_ms, zone_min),
        landings: { day: 1, night: 0, nightFullStop: 0 },
      },
    });
    say(landing_ms + 6 * MIN_MS, {
      type: "counters.read",
      body: {
        at: wallTime(landing_ms, zone_min),
        counters: {
          "airframe-hours": Math.round(total_h * 10) / 10,
          landings: BEFORE_LAST.landings - (flights - 1 - flight),
        },
      },
    });
    if (oil !== undefined && total_h - lastOil_h > 10) {
      lastOil_h = total_h;
      // more for each hour over the last of them
      const ago_h = BEFORE_LAST["airframe-hours"] - total_h;
      const more = leaksOf(book) && ago_h < RISING_h ? 1 + (RISING_h - ago_h) / RISING_h : 1;
      const litres = Math.round((0.31 + random.between(-0.02, 0.02)) * more * 100) / 100;
      say(landing_ms + 8 * MIN_MS, {
        type: "servicing.recorded",
        body: {
          at: wallTime(landing_ms, zone_min),
          what: "refilled",
          of: "oil",
          check: oil.id,
          amount: { value: litres, unit: "L" },
        },
      });
    }
  }
  for (const check of tyres) {
    for (const daysAgo of refillsOf()) {
      const at_ms = now_ms - daysAgo * DAY_MS - 3 * 3_600_000;
      say(at_ms, {
        type: "servicing.recorded",
        body: { at: wallTime(at_ms, zone_min), what: "refilled", of: "tyre", check: check.id },
      });
    }
  }
  for (const timed of faults(book, now_ms)) out.push(timed);
  return out.toSorted((a, b) => a.at_ms - b.at_ms);
}

const sum = (values: readonly number[]): number => values.reduce((all, one) => all + one, 0);

const hoursOf = (flights: number, random: Random): readonly number[] =>
  Array.from({ length: flights }, () => Math.round(random.between(0.6, 1.3) * 10) / 10);

const refillsOf = (): readonly number[] => {
  const days: number[] = [];
  for (let day = DAYS - 20; day > LAST_REFILL_d + 20; day -= REFILL_d) days.push(day);
  return [...days, LAST_REFILL_d];
};

/** What a tyre has lost since it was filled: next to nothing, and what the leak took. */
function pressure_bar(check: Check, service_bar: number, daysAgo: number, leaks: boolean): number {
  const filled = refillsOf().findLast((day) => day >= daysAgo) ?? DAYS;
  const lost = (filled - daysAgo) * 0.001;
  const leaked =
    leaks && check.id === LEAK.check && daysAgo < LEAK.since_d
      ? (LEAK.since_d - daysAgo) * LEAK.bar_perDay
      : 0;
  return service_bar * FILLED_1 - lost - leaked;
}

interface TyreDay {
  readonly daysAgo: number;
  readonly kelvin: number;
  readonly leaks: boolean;
}

/** Whether one of its tyres leaks: one aircraft of the demo has that fault. */
export const leaksOf = (book: Book): boolean => book.aircraft.engine === "turboprop";

/** As the gauge shows it at a temperature, in its steps. */
export function tyreRead(
  check: Check,
  { leaks, daysAgo, kelvin }: TyreDay,
  random: Random,
): Read | undefined {
  const { reading } = check;
  if (reading?.limit.by !== "tyre") return undefined;
  const service_bar = fromSI(reading.limit.service.valueSI, "bar");
  const absolute_Pa = toSI(pressure_bar(check, service_bar, daysAgo, leaks), "bar") + AIR_Pa;
  const shown_bar = fromSI((absolute_Pa * kelvin) / REFERENCE_K - AIR_Pa, "bar");
  return { value: Math.round((shown_bar + random.between(-0.01, 0.01)) * 100) / 100, unit: "bar" };
}

function tyreDrafts(check: Check, walk: string, day: TyreDay, random: Random): readonly EventDraft[] {
  const read = tyreRead(check, day, random);
  if (read === undefined || check.reading === undefined) return [];
  const temperature = { value: Math.round(day.kelvin - 273.15), unit: "degC" as const };
  return [
    {
      type: "reading.recorded",
      body: { walk, check: check.id, gauge: check.reading.gauge, read, temperature },
    },
    { type: "check.answered", body: { walk, check: check.id, answer: "as-it-should-be" } },
  ];
}

/** A light that failed twice within ninety days and was put right, and a boot whose split is watched. */
function faults(book: Book, now_ms: number): readonly Timed[] {
  const landing = book.checks.find(({ id }) => id === "landing-light");
  const boot = book.checks.find(({ id }) => id === "wing-boot.right-wing-boot");
  const split = boot?.faults.find(({ measure }) => measure !== undefined);
  const at = (daysAgo: number) => now_ms - daysAgo * DAY_MS;
  const out: Timed[] = [];
  const [first, second, third] = [newId(), newId(), newId()];
  if (landing !== undefined) {
    const raised = (discrepancy: string, words: string): EventDraft => ({
      type: "discrepancy.raised",
      body: { discrepancy, words, check: landing.id, point: landing.point, fault: "dark" },
    });
    out.push(
      { at_ms: at(71), draft: raised(first, "Landing light: one lamp dark") },
      {
        at_ms: at(69),
        draft: {
          type: "discrepancy.closed",
          body: {
            discrepancy: first,
            how: "put-right",
            words: "Lamp changed",
            releasedBy: "The island workshop",
          },
        },
      },
      { at_ms: at(22), draft: raised(second, "Landing light: the same lamp dark again") },
    );
  }
  if (boot !== undefined && split !== undefined) {
    out.push({
      at_ms: at(25),
      draft: {
        type: "discrepancy.raised",
        body: {
          discrepancy: third,
          words: "Right boot: split near the tip, let pass",
          check: boot.id,
          point: boot.point,
          fault: split.id,
          measured: { value: 8, unit: "mm" },
        },
      },
    });
  }
  return out;
}
