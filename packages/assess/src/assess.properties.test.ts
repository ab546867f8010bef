import type { HappeningKind } from "@witnessmark/book";
import { measure } from "@witnessmark/engine";
import { fold, type LedgerEvent, type Status } from "@witnessmark/ledger";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { assess } from "./assess.ts";
import type { Assessment } from "./assessment.ts";
import { book, check, gear, tyreReading, voltsFrom } from "./testing/small-book.ts";
import { at, Story } from "./testing/story.ts";

const KINDS: readonly HappeningKind[] = ["fuelled", "unattended", "rain", "flown", "maintenance"];
const theBook = book({
  checks: [
    check("oil", "oil", { until: ["flown", "maintenance"], severity: "high" }),
    check("volts", "battery", {
      reading: voltsFrom(24, 29),
      until: ["flown"],
      walks: ["first-of-day", "turnaround"],
    }),
    check("tank", "tank", {
      stance: "wing",
      until: ["fuelled"],
      atMost: measure(2, "h"),
      walks: ["first-of-day", "turnaround"],
    }),
    check("cap", "tank", { stance: "wing", until: ["fuelled", "unattended"], after: ["tank"] }),
    check("tyre", "tyre", { stance: "wing", reading: tyreReading, walks: ["first-of-day", "after-flight"] }),
    check("pitot", "pitot", { stance: "wing", evidence: "photo" }),
  ],
  gear: [gear("plug", "Plug", 2, "oil"), gear("cover", "Cover", 1, "boot")],
});
const CHECKS = theBook.checks.map(({ id }) => id);

/** One thing that one of two phones does. */
const deed = fc.oneof(
  {
    weight: 10,
    arbitrary: fc.record({
      do: fc.constant("answer" as const),
      check: fc.constantFrom(...CHECKS),
      answer: fc.constantFrom(
        "as-it-should-be",
        "as-it-should-be",
        "as-it-should-be",
        "not-right",
        "could-not-check",
      ),
    }),
  },
  {
    weight: 4,
    arbitrary: fc.record({
      do: fc.constant("read" as const),
      check: fc.constantFrom("volts", "tyre"),
      value: fc.constantFrom(4.1, 5.0, 5.3, 23, 24.05, 26),
      warm: fc.boolean(),
    }),
  },
  {
    weight: 2,
    arbitrary: fc.record({ do: fc.constant("happen" as const), kind: fc.constantFrom(...KINDS) }),
  },
  {
    weight: 2,
    arbitrary: fc.record({
      do: fc.constantFrom("remove" as const, "fit" as const),
      item: fc.constantFrom("plug", "cover"),
      count: fc.constantFrom(1, 2),
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      do: fc.constant("start" as const),
      kind: fc.constantFrom("first-of-day", "turnaround", "after-flight"),
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      do: fc.constantFrom(
        "finish" as const,
        "interrupt" as const,
        "photo" as const,
        "future" as const,
        "undo" as const,
      ),
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      do: fc.constantFrom("raise" as const, "close" as const),
      check: fc.constantFrom(...CHECKS),
    }),
  },
);
const deeds = fc.array(fc.record({ deed, ben: fc.boolean(), wait_s: fc.integer({ min: 0, max: 1800 }) }), {
  maxLength: 30,
});

type Deed = typeof deed extends fc.Arbitrary<infer T> ? T : never;

function doIt(story: Story, phone: Story["ada"], what: Deed): void {
  switch (what.do) {
    case "answer":
      phone.answer(what.check, what.answer as "as-it-should-be");
      return;
    case "read":
      phone.read(
        what.check,
        what.value,
        what.check === "tyre" ? "bar" : "V",
        what.warm ? { value: 15, unit: "degC" } : undefined,
      );
      return;
    case "happen":
      phone.happen(what.kind);
      return;
    case "remove":
      phone.remove(what.item, what.count);
      return;
    case "fit":
      phone.fit(what.item, what.count);
      return;
    case "start": {
      const walk = phone.start(what.kind as "turnaround");
      for (const name of ["Ada", "Ben"]) story.phone(name).walk = walk;
      return;
    }
    case "raise":
      phone.raise({ check: what.check });
      return;
    case "close": {
      const open = [...story.state.discrepancies.keys()].at(-1);
      if (open !== undefined) phone.close(open);
      return;
    }
    case "finish":
      phone.finish();
      return;
    case "interrupt":
      phone.interrupt();
      return;
    case "photo":
      phone.photo("pitot");
      return;
    case "future":
      phone.fromTheFuture();
      return;
    case "undo": {
      const last = story.events.at(-1);
      if (last !== undefined && last.type !== "book.adopted") phone.withdraw(last.id);
      return;
    }
    default:
      what satisfies never;
  }
}

interface Told {
  readonly events: readonly LedgerEvent[];
  readonly story: Story;
  readonly now_ms: number;
}

const anyStory: fc.Arbitrary<Told> = deeds.map((list) => {
  const story = new Story(theBook, "06:00");
  const walk = story.ada.start();
  story.phone("Ben").walk = walk;
  for (const { deed: what, ben, wait_s } of list) {
    story.now_ms += wait_s * 1000;
    doIt(story, ben ? story.phone("Ben") : story.ada, what);
  }
  return { events: [...story.events], story, now_ms: story.now_ms };
});

const of = (events: readonly LedgerEvent[], now_ms: number): Assessment =>
  assess(theBook, fold(events), null, now_ms);

/** How little one can rest on it; what is not known is worse than a caution. */
const UNSAFE: Readonly<Record<Status, number>> = { clear: 0, caution: 1, open: 2, stop: 3 };

function deepFreeze<T>(value: T): T {
  if (typeof value !== "object" || value === null || Object.isFrozen(value)) return value;
  if (value instanceof Map) for (const [key, each] of value) deepFreeze([key, each]);
  Object.freeze(value);
  for (const each of Object.values(value)) deepFreeze(each);
  return value;
}

describe("an assessment, whatever happened", () => {
  it("is the same for the same book, state, flight and moment, and changes nothing that it is given", () => {
    fc.assert(
      fc.property(anyStory, ({ events, now_ms }) => {
        const state = deepFreeze(fold(events));
        const once = assess(theBook, state, null, now_ms);
        const again = assess(structuredClone({ ...theBook }), structuredClone(state), null, now_ms);
        expect(JSON.stringify(again)).toBe(JSON.stringify(once));
      }),
      { numRuns: 60 },
    );
  });

  it("does not depend on the order in which events arrive, nor on how often", () => {
    fc.assert(
      fc.property(
        anyStory.chain((told) =>
          fc.tuple(
            fc.constant(told),
            fc.shuffledSubarray([...told.events], { minLength: told.events.length }),
          ),
        ),
        ([{ events, now_ms }, shuffled]) => {
          expect(of([...shuffled, ...shuffled.slice(0, 5)], now_ms)).toEqual(of(events, now_ms));
        },
      ),
      { numRuns: 60 },
    );
  });

  it("has one verdict for each check of the walk, or the discrepancy that is its verdict; and one for each item", () => {
    fc.assert(
      fc.property(anyStory, ({ events, now_ms }) => {
        const state = fold(events);
        const { verdicts, walk } = assess(theBook, state, null, now_ms);
        const ids = verdicts.map(({ id }) => id);
        expect(new Set(ids).size).toBe(ids.length);
        const open = new Set(
          [...state.discrepancies.values()].flatMap(({ check: id, closings }) =>
            closings.length === 0 ? [id] : [],
          ),
        );
        for (const { id, walks } of theBook.checks) {
          const concerned =
            walk?.kind === "after-flight"
              ? walks.includes("after-flight")
              : walks.includes("first-of-day") ||
                (walk?.kind === "turnaround" && walks.includes("turnaround"));
          expect(ids.includes(`check:${id}`) || (concerned && open.has(id))).toBe(concerned);
        }
        for (const { id } of theBook.groundGear) expect(ids).toContain(`gear:${id}`);
        for (const [id, { closings }] of state.discrepancies) {
          expect(ids.includes(`discrepancy:${id}`)).toBe(closings.length === 0);
        }
      }),
      { numRuns: 100 },
    );
  });

  it("adds up: counts, order, status, and no number that is none", () => {
    fc.assert(
      fc.property(anyStory, ({ events, now_ms }) => {
        const assessment = of(events, now_ms);
        const { verdicts, counts } = assessment;
        for (const status of ["stop", "caution", "open", "clear"] as const) {
          expect(counts[status]).toBe(verdicts.filter((verdict) => verdict.status === status).length);
        }
        const order = verdicts.map(({ status }) => ["stop", "caution", "open", "clear"].indexOf(status));
        expect(order).toEqual([...order].sort((a, b) => a - b));
        expect(assessment.status).toBe(verdicts[0]?.status);
        expect(JSON.stringify(assessment)).not.toContain('null,"unit"');
        for (const { margin } of verdicts) expect(Number.isFinite(margin?.value ?? 0)).toBe(true);
        expect(JSON.parse(JSON.stringify(assessment))).toEqual(assessment);
      }),
      { numRuns: 100 },
    );
  });

  it("is never better for a happening: no verdict improves, and none that was not clear is gone", () => {
    fc.assert(
      fc.property(
        anyStory,
        fc.constantFrom(...KINDS),
        fc.integer({ min: -7200, max: 600 }),
        ({ events, story, now_ms }, kind, ago_s) => {
          const before = of(events, now_ms);
          story.now_ms = now_ms;
          story.ada.happen(kind, new Date(now_ms + ago_s * 1000).toISOString());
          const after = of(story.events, now_ms);
          const now = new Map(after.verdicts.map(({ id, status }) => [id, status]));
          for (const { id, status } of before.verdicts) {
            expect(`${id} ${UNSAFE[now.get(id) ?? "clear"] >= UNSAFE[status]}`).toBe(`${id} true`);
          }
        },
      ),
      { numRuns: 150 },
    );
  });

  it("is never better for time alone, but for a clock that stood ahead", () => {
    fc.assert(
      fc.property(anyStory, fc.integer({ min: 0, max: 200_000_000 }), ({ events, now_ms }, later_ms) => {
        const state = fold(events);
        const now = new Map(
          assess(theBook, state, null, now_ms + later_ms).verdicts.map(({ id, status }) => [id, status]),
        );
        for (const { id, status } of assess(theBook, state, null, now_ms).verdicts) {
          expect(`${id} ${UNSAFE[now.get(id) ?? "clear"] >= UNSAFE[status]}`).toBe(`${id} true`);
        }
      }),
      { numRuns: 100 },
    );
  });

  it("never comes out clear of a check without its look, its reading, its temperature or its photo", () => {
    fc.assert(
      fc.property(anyStory, ({ events, now_ms }) => {
        const state = fold(events);
        const { verdicts, walk } = assess(theBook, state, null, now_ms);
        for (const { subject, status, topic, evidence } of verdicts) {
          if (topic !== "check" || status !== "clear" || subject === undefined) continue;
          const asked = theBook.checksById.get(subject.id);
          const history = state.checks.get(subject.id);
          const answer = history?.answers.find(({ event }) => evidence.includes(event));
          expect(answer?.answer).toBe("as-it-should-be");
          expect(answer?.askedAgainBy).toBeUndefined();
          if (asked?.walks.some((kind) => kind === walk?.kind)) expect(answer?.walk).toBe(walk?.id);
          const reading = history?.readings.find(({ event }) => evidence.includes(event));
          if (asked?.reading !== undefined) expect(reading?.walk).toBe(answer?.walk);
          if (asked?.reading?.limit.by === "tyre") expect(reading?.temperature).toBeDefined();
          if (asked?.evidence === "photo") expect(state.photos.length).toBeGreaterThan(0);
        }
      }),
      { numRuns: 100 },
    );
  });

  it("every stop tells a way out, everything open what is missing, every verdict a source", () => {
    fc.assert(
      fc.property(anyStory, ({ events, now_ms }) => {
        for (const verdict of of(events, now_ms).verdicts) {
          expect(verdict.sources.length).toBeGreaterThan(0);
          expect(verdict.says.trim()).not.toBe("");
          if (verdict.status === "stop") expect(verdict.wayOut.length).toBeGreaterThan(0);
          if (verdict.status === "open") expect(verdict.missing[0].trim()).not.toBe("");
          if (verdict.status === "caution") expect(verdict.because[0].trim()).not.toBe("");
        }
      }),
      { numRuns: 60 },
    );
  });

  it("sees every look of a ten-year walk, and only up to the moment that it is asked for", () => {
    const story = new Story(theBook, "06:00");
    for (let day = 0; day < 300; day += 1) {
      story.at("07:00", day).ada.start();
      story.ada.answer("oil");
      story.ada.finish();
    }
    story.at("07:00", 300).ada.start();
    expect(of(story.events, at("08:00", 300)).verdicts.find(({ id }) => id === "check:oil")?.status).toBe(
      "open",
    );
  });
});
