import type { FieldFigures } from "@witnessmark/assess";
import { expect, it } from "vitest";
import { distanceRows, standingOf, textWidth_px } from "./distance-rows.ts";

type Distance = NonNullable<FieldFigures["distance"]["value"]>;

const factor = (id: string, factor_1: number) =>
  ({ stage: "surface", id, title: id, factor_1, of: "each" }) as const;

/** The landing of the design's own picture: 573 m by the table, 758 m with both factors, 870 m of runway. */
const LANDING = {
  kind: "landing",
  start: { total_m: 573, groundRoll_m: 330 },
  steps: [
    {
      factor: factor("wet", 1.15),
      before: { total_m: 573, groundRoll_m: 330 },
      after: { total_m: 658.95, groundRoll_m: 379.5 },
    },
    {
      factor: factor("own", 1.15),
      before: { total_m: 658.95, groundRoll_m: 379.5 },
      after: { total_m: 757.79, groundRoll_m: 436.4 },
    },
  ],
  nearest: {
    name: "over 50 ft",
    needed_m: 758,
    exact_m: 757.79,
    available_m: 870,
    availableName: "LDA",
    left_m: 112,
  },
} as unknown as Distance; // what the rows do not look at is left out

it("each factor has its own dimension, and the last is what is needed, not rounded yet", () => {
  expect(distanceRows(LANDING).map(({ to_m, words, kind }) => [kind, to_m, words])).toEqual([
    ["table", 573, "by the table"],
    ["factor", 658.95, "× 1.15 wet"],
    ["needed", 757.79, "× 1.15 own"],
    ["there", 870, "LDA"],
  ]);
});

it("without factors the table's figure is what is needed", () => {
  const rows = distanceRows({
    ...LANDING,
    steps: [],
    nearest: { ...LANDING.nearest, needed_m: 573, exact_m: 573 },
  });
  expect(rows.map(({ kind }) => kind)).toEqual(["needed", "there"]);
});

it("where the ground roll has the least left, the chain is the ground roll's", () => {
  const rows = distanceRows({
    ...LANDING,
    nearest: { ...LANDING.nearest, name: "ground roll", needed_m: 437, exact_m: 436.4 },
  });
  expect(rows.map(({ to_m }) => to_m)).toEqual([330, 379.5, 436.4, 870]);
});

it("a factor of the ground roll alone says of how much, so that the figures add up", () => {
  // 568 m of which 280 m are on the ground: 568 + 0.05 × 280 = 582
  const wet = { ...factor("wet", 1.05), of: "ground-roll" } as const;
  const takeOff = {
    ...LANDING,
    kind: "take-off",
    start: { total_m: 568, groundRoll_m: 280 },
    steps: [
      {
        factor: wet,
        before: { total_m: 568, groundRoll_m: 280 },
        after: { total_m: 582, groundRoll_m: 294 },
      },
    ],
    nearest: { ...LANDING.nearest, needed_m: 582, exact_m: 582, available_m: 960, availableName: "TODA" },
  } as unknown as Distance; // as above
  expect(distanceRows(takeOff).map(({ to_m, ofRoll_m }) => [to_m, ofRoll_m])).toEqual([
    [568, undefined],
    [582, 280],
    [960, undefined],
  ]);
  const ofRoll = { ...takeOff, nearest: { ...takeOff.nearest, name: "ground roll", exact_m: 294 } } as const;
  expect(distanceRows(ofRoll).map(({ ofRoll_m }) => ofRoll_m)).toEqual([undefined, undefined, undefined]);
});

it("words stand where they have room: in the dimension, behind its end, else under it", () => {
  const words = "541 m, ground roll 259 m × 1.05 wet paved";
  const wide = textWidth_px(words);
  expect(standingOf(words, wide + 40, 700)).toBe("inside");
  expect(standingOf(words, 180, 180 + 10 + wide)).toBe("beside");
  // a phone: 336 px
  expect(standingOf(words, 180, 336)).toBe("below");
});
