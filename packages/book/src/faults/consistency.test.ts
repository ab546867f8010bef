import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { beginBook } from "../begin/begin-book.ts";
import { ARCHETYPES } from "../begin/figures.ts";
import { type BookEdit, editText } from "../edit/edit-text.ts";
import { readBook } from "../read-book.ts";
import { flightBookText } from "../testing/flight-book.ts";
import { consistencyOf } from "./consistency.ts";

async function doubtsOf(text: string) {
  const read = await readBook(text, "a.yaml");
  if (!read.ok) throw new Error(`expected a book, found ${read.faults[0].path}: ${read.faults[0].found}`);
  return consistencyOf(read.book, text);
}

const before = await doubtsOf(flightBookText);
/** What is doubted after a change and was not before. */
async function doubtsAfter(...edits: readonly BookEdit[]) {
  const known = new Set(before.map(({ says }) => says));
  return (await doubtsOf(editText(flightBookText, edits))).filter(({ says }) => !known.has(says));
}

describe("a book that reads, and does not hang together", () => {
  it("is told of a check that nothing makes untrue, at its place", async () => {
    const [doubt, ...more] = await doubtsAfter({ set: ["checks", 0, "holds"], to: { until: [] } });
    expect(more).toEqual([]);
    expect(doubt).toMatchObject({
      path: "checks[0].holds",
      remedy: "Name what it holds until, or how old it may be.",
    });
    expect(doubt?.says).toMatch(/^Nothing makes “.+” untrue: one look would hold for ever\.$/);
    expect(doubt?.line).toBeGreaterThan(1);
  });

  it("is told of equipment that no check looks at", async () => {
    const item = { id: "winch", name: "Winch", jasc: "2500", points: [] };
    expect(await doubtsAfter({ set: ["equipment"], to: [item] })).toMatchObject([
      {
        path: "equipment[0]",
        says: "No check looks at “Winch”.",
        remedy: "Name the points at which it is looked at.",
      },
    ]);
  });

  it("is told of a point at which nothing is looked at", async () => {
    const point = { id: "bolt", name: "Bolt", area: "", side: "centre", place: [3, 0, 1], stance: "" };
    const read = await readBook(flightBookText, "a.yaml");
    if (!read.ok) throw new Error("expected a book");
    const [area, stance] = [[...read.book.areas.keys()][0] ?? "", read.book.stances[0]?.id ?? ""];
    const [doubt] = await doubtsAfter({ insert: ["points", 0], item: { ...point, area, stance } });
    expect(doubt).toMatchObject({ path: "points[0]", says: "Nothing is looked at at “Bolt”." });
  });

  it("is told of a tank that acts elsewhere than it is drawn", async () => {
    const read = await readBook(flightBookText, "a.yaml");
    const tank = read.ok ? read.book.loading?.tanks[0] : undefined;
    const away = tank?.arms.map(({ volume_m3, arm_m }) => ({
      volume: `${volume_m3 * 1000} L`,
      arm: `${(arm_m + 0.9).toFixed(2)} m`,
    }));
    const [doubt] = await doubtsAfter({ set: ["loading", "tanks", 0, "arms"], to: away ?? [] });
    expect(doubt).toMatchObject({
      path: "loading.tanks[0].arms[0].arm",
      remedy: "Mend the arm, or where it is drawn.",
    });
  });

  it("is told of a gauge that is true to what is common, and not to what its maker states", async () => {
    const [doubt, ...more] = await doubtsAfter({ set: ["gauges", 0, "assumed"], to: true });
    expect(more).toEqual([]);
    expect(doubt).toMatchObject({
      path: "gauges[0].accuracy",
      remedy: "Put in what its maker states, or say that this is it.",
    });
    expect(doubt?.says).toMatch(/^“.+” is taken as true to ±0.05 bar: common practice, not its own\.$/);
  });

  describe("by its surface factors", () => {
    const single = readFileSync(new URL("../../../../books/zz-brk.yaml", import.meta.url), "utf8");
    const doubtsWith = async (edit: BookEdit) =>
      (await doubtsOf(editText(single, [edit]))).map(({ path, says }) => `${path}: ${says}`);

    it("is told of two that count for one runway, one times the other", async () => {
      // the fourth is for landing on dry grass; with take-off it meets the third
      const quantities = ["landing-ground-roll", "take-off-over-50ft"];
      expect(await doubtsWith({ set: ["performance", "factors", 3, "quantities"], to: quantities })).toEqual([
        "performance.factors[3]: Two factors are for dry grass: both count, one times the other.",
      ]);
    });

    it("is told so in words where water stands", async () => {
      const factor = (id: string) => ({
        id,
        quantities: ["take-off-over-50ft"],
        when: { condition: "standing-water" },
        factor: 1.3,
        of: "total",
        source: "Invented.",
      });
      expect(
        await doubtsWith({ set: ["performance", "factors"], to: [factor("one"), factor("two")] }),
      ).toEqual([
        "performance.factors[1]: Two factors are for standing water: both count, one times the other.",
      ]);
    });

    it("is told when it has none, as a runway that is not paved and dry then stays open", async () => {
      expect(await doubtsWith({ set: ["performance", "factors"], to: [] })).toEqual([
        "performance: No factor is there for grass, gravel, or a wet runway: on such a one the distances stay open.",
      ]);
    });
  });

  it("is not the demo's tail-wheel single", async () => {
    const text = readFileSync(new URL("../../../../books/zz-brk.yaml", import.meta.url), "utf8");
    expect((await doubtsOf(text)).map(({ says }) => says)).toEqual([]);
  });

  it.each(["piston-single-tail-wheel", "piston-twin", "pressurised-turboprop"])(
    "is none that was just begun: %s",
    async (id) => {
      const archetype = ARCHETYPES.find((each) => each.id === id);
      if (archetype === undefined) throw new Error(`expected a kind of aircraft, ${id}`);
      const figures = { registration: "ZZ-NEW", type: "New 1", ...archetype.figures };
      const text = beginBook({ archetype, figures, by: "A. Example", on: "2026-11-26" });
      expect((await doubtsOf(text)).map(({ says }) => says)).toEqual([]);
    },
  );
});
