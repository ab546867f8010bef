import { createHash } from "node:crypto";
import { readLedger } from "@witnessmark/ledger";
import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import { PHOTO_SHA256, type RecordLedger, recordLedger } from "../testing/record-ledger.ts";
import { recordOfLedger } from "./record-of-ledger.ts";

/** 20 November 2026, 10:00 UTC. */
const NOW_MS = Date.UTC(2026, 10, 20, 10, 0);

let made: RecordLedger;
beforeAll(async () => {
  made = await recordLedger();
});

async function recordFor(period: { readonly from?: string; readonly to?: string }, events = made.events) {
  const result = await recordOfLedger(events, { ...period, now_ms: NOW_MS });
  if (!result.ok) throw new Error(result.says);
  return result;
}

async function discrepancy(id: keyof RecordLedger["ids"], period: { from?: string; to?: string }) {
  const { record } = await recordFor(period);
  return record.discrepancies.find((each) => each.id === made.ids[id]);
}

describe("a discrepancy on the record", () => {
  it("is told step by step: found, looked into, relieved on what basis until when, put right by whom, released by whom", async () => {
    const dent = await discrepancy("dent", {});
    expect(dent?.disposition).toBe("Put right");
    expect(dent?.where).toContain("JASC 7110");
    expect(dent?.steps.map(({ title, by, at, says }) => [at.slice(0, 10), title, by, says])).toEqual([
      ["2026-11-02", "Written down", "Ada Example, pilot", ["8\u00A0mm"]],
      ["2026-11-02", "Photo", "Ada Example, pilot", [`SHA-256 ${PHOTO_SHA256}`]],
      ["2026-11-03", "Looked into", "Bo Sample, mechanic", ["Skin sound, no crack"]],
      [
        "2026-11-04",
        "Relief",
        "Bo Sample, mechanic",
        [
          "Basis: 14 CFR 91.213(d)",
          "Until: 10 Nov 2026, the last day",
          "Determined by Bo Sample, mechanic",
          "The equipment was deactivated",
          "Placard: INOPERATIVE",
          "Not for flights: ifr day",
          "(d)(2): Not asked for by day",
        ],
      ],
      ["2026-11-07", "Relief ended", "Bo Sample, mechanic", ["The new cowling is here"]],
      ["2026-11-07", "Put right", "Bo Sample, mechanic", ["Cowling changed", "Released by R. Works, 4711"]],
    ]);
    expect(dent?.steps.map(({ signed }) => signed)).toEqual([
      undefined,
      undefined,
      undefined,
      true,
      undefined,
      true,
    ]);
  });

  it("stands as it stood at the end of the period", async () => {
    const dent = await discrepancy("dent", { to: "2026-11-05" });
    expect(dent?.disposition).toBe("Open, with relief until 10 Nov 2026");
    expect(dent?.steps.at(-1)?.title).toBe("Relief");
    expect((await discrepancy("dent", { to: "2026-11-03" }))?.disposition).toBe("Open");
    expect(await discrepancy("dent", { to: "2026-11-01" })).toBeUndefined();
  });

  it("is carried in while it is open, and told no more once it was put right before the period", async () => {
    expect(await discrepancy("dent", { from: "2026-11-07" })).toMatchObject({
      isCarriedIn: true,
      isOpen: false,
    });
    expect(await discrepancy("dent", { from: "2026-11-08" })).toBeUndefined();
    expect(await discrepancy("lamp", { from: "2026-11-08" })).toMatchObject({
      isCarriedIn: true,
      isOpen: true,
    });
    expect(await discrepancy("lamp", { from: "2026-11-05" })).toMatchObject({ isCarriedIn: false });
  });

  it("that was taken back after the period is not told of it, and the correction is, in its own", async () => {
    expect(await discrepancy("mistaken", { to: "2026-11-05" })).toBeUndefined();
    const { record } = await recordFor({ from: "2026-11-09", to: "2026-11-09" });
    expect(record.corrections).toHaveLength(1);
    expect(record.corrections[0]).toMatchObject({
      by: "Cy Instance, owner",
      why: "Written into the wrong aircraft",
      what: "Discrepancy raised",
      taken: made.events.find(
        (event) => event.type === "discrepancy.raised" && event.body.discrepancy === made.ids.mistaken,
      )?.id,
    });
  });

  it("that is open comes before those that are put right", async () => {
    const { record } = await recordFor({});
    expect(record.discrepancies.map(({ id }) => id)).toEqual([made.ids.lamp, made.ids.dent]);
  });
});

describe("what runs out, on the record", () => {
  it("has when it was done last, by whom, and until when it is good", async () => {
    const { record } = await recordFor({});
    // 14 CFR 91.409(a): within the preceding 12 calendar months, so through the last day of November 2027
    expect(record.timed.find(({ item }) => item === "Annual inspection")).toMatchObject({
      state: "Good",
      lastDone: "6 Nov 2026, Example Works, WO 12",
      nextDue: ["30 Nov 2027"],
    });
    expect(record.timedDone).toMatchObject([
      { on: "2025-11-10", item: "Annual inspection", says: ["Done by Earlier Works"], signed: true },
      { on: "2026-11-06", item: "Annual inspection", says: ["Done by Example Works, WO 12"], signed: true },
    ]);
  });

  it("knows nothing of what was written down later", async () => {
    const { record } = await recordFor({ to: "2026-11-05" });
    expect(record.timed.some(({ item }) => item === "Annual inspection")).toBe(false);
    expect(record.timedDone).toEqual([]);
  });
});

describe("walks and decisions on the record", () => {
  it("stand in the order in which they began, with what was not right, and how they ended", async () => {
    const { record } = await recordFor({});
    expect(record.walks.map(({ kind, by }) => [kind, by])).toEqual([
      ["Turnaround walk", "Ada Example, pilot"],
      ["First walk of the day", "Ada Example, pilot"],
    ]);
    const [turnaround, first] = record.walks;
    expect(turnaround?.ended).toMatch(/^Given up 2 Nov 2026, 10:0\d \+01:00: dark$/);
    expect(turnaround?.answers).toEqual({ "as-it-should-be": 0, "not-right": 1, "could-not-check": 0 });
    expect(turnaround?.exceptions[0]).toMatch(/^Not right: .+: .+/);
    expect(first?.ended).toMatch(/^Decided 12 Nov 2026/);
  });

  it("say what was decided, by whom, and whether a key signed it", async () => {
    const { record } = await recordFor({ from: "2026-11-12", to: "2026-11-12" });
    expect(record.decisions).toMatchObject([
      {
        title: "Not going yet",
        by: "Ada Example, pilot",
        signed: true,
        flight: "No flight named",
        hash: expect.stringMatching(/^([0-9A-F]{4} ){3}[0-9A-F]{4}$/),
      },
    ]);
  });
});

describe("a period", () => {
  it("is everything until today when none is asked for", async () => {
    const { record } = await recordFor({});
    expect(record.period).toEqual({ from: "2026-11-01", to: "2026-11-20" });
  });

  it("in which nothing was written has nothing in it but what was open", async () => {
    const { record } = await recordFor({ from: "2026-11-14", to: "2026-11-15" });
    expect(record).toMatchObject({ walks: [], decisions: [], timedDone: [], corrections: [], writers: [] });
    expect(record.discrepancies.map(({ id }) => id)).toEqual([made.ids.lamp]);
    const before = await recordFor({ from: "2025-01-01", to: "2025-01-31" });
    expect(before.record).toMatchObject({ walks: [], discrepancies: [], timed: [], registration: "ZZ-SML" });
  });

  it("that ends in days to come stands as it is today", async () => {
    expect((await recordFor({ to: "2027-12-31" })).record.standsOn).toBe("2026-11-20");
  });

  it.each([
    [
      { from: "2026-02-30" },
      "from",
      'from: expected a day of the calendar, written YYYY-MM-DD, received "2026-02-30"; February 2026 ends with day 28',
    ],
    [
      { to: "1.12.2026" },
      "to",
      'to: expected a day of the calendar, written YYYY-MM-DD, received "1.12.2026"; write the year in four digits, month and day in two, joined by hyphens',
    ],
    [
      { from: "2026-11-05", to: "2026-11-04" },
      "from",
      "from: expected a day not after the last day 2026-11-04, received 2026-11-05; give an earlier first day or a later last day",
    ],
    [
      { from: "2026-12-01" },
      "from",
      "from: expected a day not after the last day 2026-11-20, which is today, received 2026-12-01; give an earlier first day or a later last day",
    ],
    [
      { to: "2026-10-31" },
      "to",
      "to: expected 2026-11-01, the first day on record, or later, received 2026-10-31; give a later last day, or a first day with it",
    ],
  ])("that cannot be is refused with what to do: %o", async (period, field, says) => {
    const result = await recordOfLedger(made.events, { ...period, now_ms: NOW_MS });
    expect(result).toEqual({ ok: false, why: "bad-period", field, says });
  });

  it("of an empty ledger is refused", async () => {
    expect(await recordOfLedger([], { now_ms: NOW_MS })).toEqual({
      ok: false,
      why: "no-events",
      says: "There are no events in this ledger",
    });
  });
});

describe("the ledger that goes with it", () => {
  it("reads back whole, and its SHA-256 is the one on the record", async () => {
    const { record, ledgerText } = await recordFor({ from: "2026-11-14", to: "2026-11-15" });
    expect(record.ledger.sha256).toBe(createHash("sha256").update(ledgerText, "utf8").digest("hex"));
    const read = await readLedger(ledgerText);
    expect(read.faults).toEqual([]);
    expect(read.events).toHaveLength(made.events.length);
    expect(record.ledger).toMatchObject({ file: "ZZ-SML.jsonl", isSound: true, devices: 2 });
  });

  it("that was changed after it was made is told so", async () => {
    const changed = made.events.map((event) =>
      event.type === "discrepancy.closed"
        ? { ...event, body: { ...event.body, releasedBy: "Somebody else" } }
        : event,
    );
    const { record } = await recordFor({}, changed);
    expect(record.ledger.isSound).toBe(false);
    expect(record.ledger.says).toMatch(/^It does not hold: .*was changed after it was made/);
  });

  it("gives the same record in whatever order its events came", async () => {
    const { record } = await recordFor({});
    await fc.assert(
      fc.asyncProperty(
        fc.shuffledSubarray([...made.events], { minLength: made.events.length }),
        async (events) => {
          expect((await recordFor({}, events)).record).toEqual(record);
        },
      ),
      { numRuns: 5 },
    );
  });
});
