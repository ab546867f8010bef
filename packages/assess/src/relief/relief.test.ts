import type { Book, KindOfOperation, TimedItem } from "@witnessmark/book";
import { addDays } from "@witnessmark/engine";
import type { PlannedFlight, Status } from "@witnessmark/ledger";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { assess } from "../assess.ts";
import type { Verdict } from "../assessment.ts";
import type { ReliefSaid } from "../rules/relief.ts";
import { demoBook } from "../testing/demo-book.ts";
import { plain, verdictOf } from "../testing/plain.ts";
import { ALL_SAID, assessed, flightAt, relieve } from "../testing/relief-story.ts";
import { at, Story } from "../testing/story.ts";
import { reliefOf } from "./relief-of.ts";

const twin = await demoBook("zz-dun");
const turboprop = await demoBook("zz-skr");
const day = flightAt("12:00");
const night = flightAt("23:00");
const MEND = "Put it right: licensed mechanic, then look again";

/** A story in which one piece of the book's equipment does not work. */
function broken(book: Book, equipment: string, words = "It does not work"): { story: Story; id: string } {
  const story = new Story(book, "07:00");
  const id = story.ada.raise({ words });
  assessed(story, id, equipment);
  return { story, id };
}

const verdictIn = (story: Story, id: string, flight: PlannedFlight | null, now_ms = at("09:00")): Verdict =>
  verdictOf(assess(story.book, story.state, flight, now_ms), `discrepancy:${id}`);

const because = (verdict: Verdict): readonly string[] =>
  verdict.status === "stop" || verdict.status === "caution"
    ? verdict.because
    : verdict.status === "open"
      ? verdict.missing
      : [];
const wayOut = (verdict: Verdict): readonly string[] => (verdict.status === "stop" ? verdict.wayOut : []);

function answerOf(book: Book, equipment: string, flight: PlannedFlight | null, said: ReliefSaid) {
  const { story, id } = broken(book, equipment);
  const discrepancy = story.state.discrepancies.get(id);
  if (discrepancy === undefined) throw new Error("it was not raised");
  return reliefOf({ book, discrepancy, flight, said, state: story.state });
}

describe("a dead position light on the piston twin, 14 CFR 91.213(d) and 91.205(c)(2)", () => {
  it("stops by day while no relief is signed, and names the way out and the pilot's own work", () => {
    const { story, id } = broken(twin, "position-lights");
    const verdict = verdictIn(story, id, day);
    expect(verdict.status).toBe("stop");
    expect(wayOut(verdict)).toEqual([
      MEND,
      expect.stringContaining("appendix A (c)(17)"),
      "Relief may be had: 14 CFR 91.213(d), United States, 14 CFR Part 91; see its record",
    ]);
  });

  it("asks one thing after the other, until every step holds", () => {
    const answers: ReliefSaid = {
      action: "deactivated",
      placard: true,
      deactivationIsMaintenance: false,
      noHazardBy: "pilot",
    };
    const asked: (keyof ReliefSaid)[] = [];
    let said: ReliefSaid = {};
    for (let i = 0; i < 10; i += 1) {
      const answer = answerOf(twin, "position-lights", day, said);
      if (answer?.ask === undefined) break;
      expect(answer.ruling.allowed).toBe(false);
      asked.push(answer.ask);
      said = { ...said, [answer.ask]: answers[answer.ask] };
    }
    expect(asked).toEqual(["action", "placard", "deactivationIsMaintenance", "noHazardBy"]);
    const last = answerOf(twin, "position-lights", day, said);
    expect(last?.ruling.allowed).toBe(true);
    expect(last?.ruling.steps.map(({ rule }) => rule)).toEqual([
      "91.213(d)(1)(ii)",
      "91.213(d)(2)(i)",
      "91.213(d)(2)(ii)",
      "91.213(d)(2)(iii)",
      "91.213(d)(2)(iv)",
      "91.213(d)(3)(ii)",
      "91.213(d)(4)",
    ]);
  });

  it("is clear by day and stops by night under one and the same relief", () => {
    const { story, id } = broken(twin, "position-lights");
    relieve(story, id, { flight: day });
    const clear = verdictIn(story, id, day);
    expect(clear.status).toBe("clear");
    expect(plain(clear.says)).toContain("relief by 14 CFR 91.213(d), placard fitted");
    expect(clear.sources.map(({ title }) => title)).toEqual(
      expect.arrayContaining([
        "14 CFR 91.213: inoperative instruments and equipment",
        "The approved manual, the authority's own text and licensed people come first",
      ]),
    );
    const stop = verdictIn(story, id, night);
    expect(stop.status).toBe("stop");
    expect(because(stop)).toEqual([
      "The relief is not for a flight by sight by night, by instruments by night",
      expect.stringMatching(/^91\.213\(d\)\(2\)\(iii\) does not hold for this flight/),
    ]);
    expect(wayOut(stop)).toContain("A special permit is a way of its own: ask the authority, 14 CFR 21.197");
  });

  it("stops when the flight begins by day and ends after sunset", () => {
    const { story, id } = broken(twin, "position-lights");
    relieve(story, id, { flight: day });
    expect(verdictIn(story, id, flightAt("21:20")).status).toBe("stop");
  });

  it("with no flight planned is a caution that says for what it is not; with half a flight it is open", () => {
    const { story, id } = broken(twin, "position-lights");
    relieve(story, id, { flight: day });
    const idle = verdictIn(story, id, null);
    expect(idle.status).toBe("caution");
    expect(because(idle)[0]).toBe("Not for a flight by sight by night, by instruments by night");
    const half = verdictIn(story, id, { ...day, plan: { rulePack: "us-part-91", flightRules: "VFR" } });
    expect(half.status).toBe("open");
  });

  it("counts no more when it was put right and came back", () => {
    const { story, id } = broken(twin, "position-lights");
    relieve(story, id, { flight: day });
    story.ada.close(id);
    story.phone("Ben").tell({ type: "discrepancy.reopened", body: { discrepancy: id, words: "dark again" } });
    const verdict = verdictIn(story, id, day);
    expect(verdict.status).toBe("stop");
    expect(plain(verdict.says)).toMatch(/opened again 07:\d\d, by Ben: dark again$/);
    expect(verdict.evidence).toHaveLength(2);
    relieve(story, id, { flight: day });
    expect(verdictIn(story, id, day).status).toBe("clear");
  });

  it("stops when the relief is ended", () => {
    const { story, id } = broken(twin, "position-lights");
    const relief = relieve(story, id, { flight: day });
    story.ada.tell({ type: "discrepancy.reliefEnded", body: { discrepancy: id, relief, why: "no more" } });
    expect(verdictIn(story, id, day).status).toBe("stop");
  });
});

describe("other equipment of the twin", () => {
  it("of the type's certification has no relief on any flight, with all that bars it", () => {
    const answer = answerOf(twin, "fuel-gauges", day, ALL_SAID);
    expect(answer?.ruling.failing).toEqual(["91.213(d)(2)(i)", "91.213(d)(2)(iii)"]);
  });

  it("asked by the kinds-of-operations list is judged by the flight: pitot heat by sight and by instruments", () => {
    expect(answerOf(twin, "pitot-heat", flightAt("12:00", "IFR"), ALL_SAID)?.ruling.failing).toEqual([
      "91.213(d)(2)(ii)",
    ]);
    // whether the flight meets icing is in no plan, so it is not known by sight either
    const bySight = answerOf(twin, "pitot-heat", day, ALL_SAID);
    expect(bySight?.ruling.failing).toEqual([]);
    expect(bySight?.ruling.allowed).toBe(false);
  });

  it("that is the locator may be away for 90 days from when the fault was found, 91.207(f)(10)", () => {
    const { story, id } = broken(twin, "emergency-locator");
    expect(wayOut(verdictIn(story, id, day))).toContain(
      "It may be away for repair for 90 days, entered and placarded: 91.207(f)(10)",
    );
    relieve(story, id, { flight: day, said: { action: "removed", placard: true, recorded: true } });
    const verdict = verdictIn(story, id, day);
    expect(verdict.status).toBe("clear");
    expect(verdict.margin?.value).toBe(90);
    expect(story.state.discrepancies.get(id)?.reliefs[0]).toMatchObject({
      until: "2031-08-06",
      placard: "ELT not installed",
    });
    expect(verdictIn(story, id, flightAt("12:00", "VFR", "us-part-91", 91), at("09:00", 91)).status).toBe(
      "stop",
    );
  });

  it("that nobody can tell gets no answer of the rules, and stops", () => {
    const story = new Story(twin, "07:00");
    const id = story.ada.raise({ words: "Dark", point: "left-tip-light" });
    expect(verdictIn(story, id, day).status).toBe("stop");
    expect(wayOut(verdictIn(story, id, day))).toEqual([MEND]);
  });
});

describe("a deferred item and the inspection that comes next, 14 CFR 91.405(c)", () => {
  const annual: TimedItem = {
    id: "annual",
    name: "Annual inspection",
    about: "aircraft",
    rule: "14 CFR 91.409(a)",
    limits: [{ by: "calendar-months", months: 12 }],
    combine: "first",
    recurring: true,
    endsLife: false,
    why: "It runs out.",
  };
  const book: Book = { ...twin, timedItems: [annual] };
  const inspected = (story: Story, on: string) =>
    story.ada.tell(
      { type: "timedItem.done", body: { item: "annual", on, counters: {}, by: "a mechanic" } },
      "signed",
    );

  it("ends with that inspection, and asks what became of it when the inspection is made sooner", () => {
    const { story, id } = broken(book, "taxi-light");
    inspected(story, "2030-05-20");
    relieve(story, id, { flight: day });
    // case inop-deferral-expires-at-next-inspection: the last day is that of the annual, the end of its 12th month
    expect(story.state.discrepancies.get(id)?.reliefs[0]?.until).toBe("2031-05-31");
    expect(verdictIn(story, id, day).status).toBe("clear");
    story.at("10:00", 2);
    inspected(story, "2031-05-10");
    const after = verdictIn(story, id, flightAt("12:00", "VFR", "us-part-91", 3), at("09:00", 3));
    expect(after.status).toBe("open");
    expect(because(after)[0]).toContain("Annual inspection was made on 2031-05-10, after the relief");
  });
});

describe("the turboprop, which has a list of its own", () => {
  it("has no relief by paragraph (d) for what the list does not have", () => {
    const answer = answerOf(turboprop, "trim", day, ALL_SAID);
    expect(answer?.ruling.path).toBe("91.213(a)");
    expect(answer?.ruling.failing).toEqual(["91.213(a)"]);
    const { relief: _none, ...without } = turboprop;
    const bare = answerOf(without, "taxi-light", day, ALL_SAID);
    expect(bare?.ruling.path).toBe("91.213(d)");
    expect(bare?.ruling.failing).toEqual(["91.213(d)(1)(ii)"]);
  });

  it("has no relief any more when its days from the fault are over", () => {
    const { story, id } = broken(turboprop, "landing-light");
    const discrepancy = story.state.discrepancies.get(id);
    if (discrepancy === undefined) throw new Error("it was not raised");
    const on = (today: string) =>
      reliefOf({ book: turboprop, discrepancy, flight: day, said: ALL_SAID, state: story.state, today });
    const until = on("2031-05-08")?.until ?? "";
    expect(on(until)?.broken).toEqual([]);
    expect(on(addDays(until, 1))?.broken).toEqual([`Its time ended with ${until}`]);
  });

  it("counts the days of category C from the day of the fault, and never anew", () => {
    const { story, id } = broken(turboprop, "position-lights");
    story.at("07:00", 4); // signed four days later: the days run from the fault
    relieve(story, id, { flight: flightAt("12:00", "VFR", "us-part-91", 4) });
    expect(story.state.discrepancies.get(id)?.reliefs[0]).toMatchObject({
      until: "2031-05-18",
      category: "C",
    });
    const on = (days: number, time = "12:00") =>
      verdictIn(story, id, flightAt(time, "VFR", "us-part-91", days), at("09:00", days));
    expect([4, 9, 10, 11].map((days) => on(days).status)).toEqual(["clear", "clear", "caution", "stop"]);
    expect(plain(on(4).margin?.text)).toBe("6 days");
    expect(plain(on(10).margin?.text)).toBe("last day");
    expect(because(on(11))[0]).toBe("The relief ended with Sunday");
    expect(on(9).holdsUntil_ms).toBe(at("23:59", 10) + 60_000 - 1);
  });

  it("that expires in the middle of a walk stops the whole assessment, and nothing of the walk is lost", () => {
    const { story, id } = broken(turboprop, "taxi-light");
    const [first, second] = ["exit", "step"] as const;
    relieve(story, id, { flight: day, changed: { until: "2031-05-08" } });
    story.at("23:50").ada.start();
    story.ada.answer(first);
    const asked = (now_ms: number) => assess(turboprop, story.state, null, now_ms);
    const before = asked(at("23:59"));
    expect(verdictOf(before, `discrepancy:${id}`).status).toBe("caution");
    expect(verdictOf(before, `discrepancy:${id}`).holdsUntil_ms).toBe(at("24:00") - 1);
    story.at("00:01", 1).ada.answer(second);
    const after = asked(at("00:02", 1));
    const stop = verdictOf(after, `discrepancy:${id}`);
    expect(stop.status).toBe("stop");
    expect(because(stop)).toEqual(["The relief ended with Thursday"]);
    expect(wayOut(stop)).toContain(MEND);
    expect(after.status).toBe("stop");
    for (const check of [first, second]) {
      expect(verdictOf(after, `check:${check}`).status).toBe("clear");
    }
  });

  it("stops when the relief ends during the flight, or before one that is planned for later", () => {
    const { story, id } = broken(turboprop, "taxi-light");
    relieve(story, id, { flight: day, changed: { until: "2031-05-08" } });
    expect(because(verdictIn(story, id, flightAt("23:40")))[0]).toMatch(/ends with .*, during this flight/);
    expect(because(verdictIn(story, id, flightAt("12:00", "VFR", "us-part-91", 1)))[0]).toMatch(
      /ends with .*, before this flight/,
    );
  });

  it("flies with one landing lamp by the list, and not when the other fails too", () => {
    const { story, id } = broken(turboprop, "landing-light", "Left lamp is dark");
    relieve(story, id, { flight: day });
    expect(verdictIn(story, id, day).status).toBe("clear");
    const second = story.ada.raise({ words: "Right lamp is dark" });
    assessed(story, second, "landing-light");
    const stop = verdictIn(story, id, day);
    expect(stop.status).toBe("stop");
    expect(because(stop)[0]).toBe("0 of 2 work, 1 must by the list");
    expect(wayOut(verdictIn(story, second, day))).not.toContainEqual(expect.stringContaining("may be had"));
  });

  it("is never relieved by its list of what a rule asks for on this flight, whatever the list prints", () => {
    const items =
      turboprop.relief?.minimumEquipmentList?.items.map((item) => ({ ...item, notFor: [] })) ?? [];
    const list = turboprop.relief?.minimumEquipmentList;
    const careless = {
      ...turboprop,
      relief: { kindsList: true, ...(list ? { minimumEquipmentList: { ...list, items } } : {}) },
    };
    expect(answerOf(careless, "position-lights", day, ALL_SAID)?.ruling.allowed).toBe(true);
    expect(answerOf(careless, "position-lights", night, ALL_SAID)?.ruling.failing).toEqual(["91.213(b)(3)"]);
  });

  it("under Part-NCO goes by the list for what is required at night, and may defer it by day", () => {
    const byNight = answerOf(turboprop, "position-lights", flightAt("23:00", "VFR", "eu-part-nco"), ALL_SAID);
    expect(byNight?.ruling.path).toBe("NCO.IDE.A.105(a)");
    expect(byNight?.broken).toEqual(["The list is not for a flight by sight by night"]);
    expect(byNight?.ruling.allowed).toBe(false);
    const byDay = answerOf(turboprop, "position-lights", flightAt("12:00", "VFR", "eu-part-nco"), {
      ...ALL_SAID,
      recorded: true,
    });
    expect(byDay?.ruling.path).toBe("ML.A.403");
    expect(byDay?.ruling.allowed).toBe(true);
  });
});

/** From mild to severe: what is not known is worse than a caution, and a stop is worst. */
const SEVERITY: Readonly<Record<Status, number>> = { clear: 0, caution: 1, open: 2, stop: 3 };
const KINDS: readonly KindOfOperation[] = [
  "vfr-day",
  "vfr-night",
  "ifr-day",
  "ifr-night",
  "icing",
  "passengers",
];

describe("a relief", () => {
  it("makes no verdict milder when it or the book is tightened", () => {
    const seen = new Set<string>();
    const kinds = fc.subarray([...KINDS]);
    fc.assert(
      fc.property(
        fc.constantFrom("taxi-light", "heater", "position-lights", "landing-light"),
        fc.constantFrom("09:30", "12:00", "21:20", "23:00"),
        fc.constantFrom("VFR" as const, "IFR" as const),
        fc.boolean(),
        fc.integer({ min: -2, max: 4 }),
        fc.integer({ min: 0, max: 4 }),
        fc.constantFrom("type", "directive", "list", "none"),
        fc.oneof({ weight: 2, arbitrary: fc.constant([]) }, kinds),
        kinds,
        (equipment, time, rules, planned, until_d, sooner_d, how, notFor, moreNotFor) => {
          const flight = planned ? flightAt(time, rules) : null;
          const on = (days: number) => `2031-05-${String(8 + days).padStart(2, "0")}`;
          const status = (book: Book, until: string, kindsNot: readonly KindOfOperation[]): Status => {
            const { story, id } = broken(twin, equipment);
            relieve(story, id, { flight: day, changed: { until, notFor: [...kindsNot] } });
            return verdictOf(assess(book, story.state, flight, at("09:00")), `discrepancy:${id}`).status;
          };
          const before = status(twin, on(until_d), notFor);
          const tightBook: Book = {
            ...twin,
            equipment: twin.equipment.map((each) =>
              each.id !== equipment
                ? each
                : {
                    ...each,
                    ...(how === "type" ? { typeEquipment: true } : {}),
                    ...(how === "directive" ? { directive: "2031-01-01" } : {}),
                    ...(how === "list" ? { neededFor: [...moreNotFor] } : {}),
                  },
            ),
          };
          const after = status(tightBook, on(until_d - sooner_d), [...new Set([...notFor, ...moreNotFor])]);
          seen.add(before);
          expect(SEVERITY[after]).toBeGreaterThanOrEqual(SEVERITY[before]);
        },
      ),
      { numRuns: 400 },
    );
    expect([...seen].toSorted()).toEqual(["caution", "clear", "open", "stop"]);
  });
});
