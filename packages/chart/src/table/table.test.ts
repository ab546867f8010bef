import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bookTable, envelopeYaml, tableYaml } from "./book-form.ts";
import { envelopeOf } from "./envelope.ts";
import { oddCells } from "./odd-cells.ts";
import { roundCell, roundValues, stepFor } from "./round-cell.ts";

describe("a cell", () => {
  it.each([
    [101, 5, "up", 105],
    [100, 5, "up", 100],
    [100.000_000_000_01, 5, "up", 100],
    [104, 5, "down", 100],
    [102.4, 5, "nearest", 100],
    [0.3, 0.1, "up", 0.3],
    [-3, 5, "up", 0],
  ] as const)("of %d in steps of %d goes %s to %d", (value, step, to, rounded) => {
    expect(Math.abs(roundCell(value, { step, to }))).toBe(Math.abs(rounded));
  });

  it("has a step that a chart can be read to", () => {
    expect(stepFor([0, 1000])).toBe(2);
    expect(stepFor([0, 4000])).toBe(10);
    expect(stepFor([0, 0.12])).toBe(0.0002);
    expect(roundValues([0, 40], 9)).toEqual([0, 5, 10, 15, 20, 25, 30, 35, 40]);
    expect(roundValues([-18, 41], 9)).toEqual([-10, 0, 10, 20, 30, 40]);
  });
});

describe("an envelope from its chart", () => {
  it("in arms keeps its corners, and the first that is tapped again counts once", () => {
    const corners = [
      { x: 80, y: 1400 },
      { x: 80, y: 1900 },
      { x: 84.2, y: 2360 },
      { x: 94.5, y: 2360 },
      { x: 94.5, y: 1400 },
      { x: 80.05, y: 1402 },
    ];
    const result = envelopeOf(corners, { kind: "arm", unit: "in" }, "lb", "in");
    expect(result).toMatchObject({ ok: true, corners: [{ arm: "80 in", mass: "1400 lb" }, {}, {}, {}, {}] });
  });

  it("in moments gets the corners that keep a slanting edge where it is drawn", () => {
    // moment 1000 lb·in: 112 at 1400 lb is an arm of 80 in; 198.24 at 2360 lb is 84 in
    const corners = [
      { x: 112, y: 1400 },
      { x: 198.24, y: 2360 },
      { x: 223.02, y: 2360 },
      { x: 132.3, y: 1400 },
    ];
    const result = envelopeOf(corners, { kind: "moment", unit: "lbin", times: 1000 }, "lb", "in");
    if (!result.ok) throw new Error(result.says);
    expect(result.corners[0]).toEqual({ arm: "80 in", mass: "1400 lb" });
    const second = result.corners.findIndex(({ mass }) => mass === "2360 lb");
    expect(second).toBeGreaterThan(1);
    expect(result.corners[second]).toEqual({ arm: "84 in", mass: "2360 lb" });
    // the arm of the edge's middle is its moment over its mass, not the mean of the two arms, 82 in
    const middle = result.corners.find(({ mass }) => mass === "1880 lb");
    expect(Number.parseFloat(middle?.arm ?? "")).toBeCloseTo((112_000 + 198_240) / 2 / 1880, 1);
    // an aft limit of one arm, 94.5 in, is a straight line through the origin: it needs none
    expect(result.corners.at(-1)).toEqual({ arm: "94.5 in", mass: "1400 lb" });
    expect(result.corners).toHaveLength(second + 3);
  });

  it("in per cent of the chord", () => {
    const corners = [10, 25, 25].map((x, i) => ({ x, y: 1000 + 200 * (i > 1 ? 1 : 0) }));
    const result = envelopeOf(corners, { kind: "chord", leadingEdge_m: 2, length_m: 1.5 }, "kg", "m");
    expect(result).toMatchObject({
      ok: true,
      corners: [{ arm: "2.15 m", mass: "1000 kg" }, { arm: "2.375 m" }, {}],
    });
  });

  it("is refused with a reason", () => {
    const [a, b, c, d] = [
      { x: 80, y: 2000 },
      { x: 95, y: 2000 },
      { x: 95, y: 3000 },
      { x: 80, y: 3000 },
    ] as const;
    expect(envelopeOf([a, b, c, d], { kind: "arm", unit: "in" }, "lb", "in").ok).toBe(true);
    expect(envelopeOf([a, c, b, d], { kind: "arm", unit: "in" }, "lb", "in")).toEqual({
      ok: false,
      says: "The edge from corner 1 to 2 crosses the one from 3 to 4. Expected corners one after the other round the edge.",
    });
    expect(envelopeOf([{ x: 1, y: 1 }], { kind: "arm", unit: "in" }, "lb", "in")).toEqual({
      ok: false,
      says: "An envelope has at least three corners, found 1.",
    });
    expect(envelopeOf([], { kind: "arm", unit: "kg" }, "lb", "in")).toMatchObject({
      says: "Expected a unit of length on the x axis, found kg.",
    });
  });
});

describe("odd cells", () => {
  const table = {
    axes: [
      { name: "pressureAltitude", unit: "ft", values: [0, 2000, 4000] },
      { name: "oat", unit: "°C", values: [0, 20, 40] },
    ],
    unit: "m",
    cells: [
      [200, 220, 240],
      [230, 250, 27],
      [260, 290, 320],
    ],
  };

  it("are those against the way of most, each told once, in words", () => {
    expect(oddCells(table)).toEqual([
      {
        indices: [1, 2],
        says: "At pressure altitude 2000 ft, outside air temperature 40 °C the table has 27 m; beside it stand 240 m, 250 m and 320 m.",
      },
    ]);
  });

  it.each([
    ["ten times too much", 2, 3320],
    ["too little", 1, 31],
    ["two figures changed over", 2, 232],
  ])("are the ones that are wrong, not their neighbours: %s", (_, index, wrong) => {
    // landing over 50 ft of an invented handbook, m
    const sound = [300, 315, 332, 352];
    const trends = { pressureAltitude: "rising" } as const;
    const column = (cells: readonly number[]) => ({
      axes: [{ name: "pressureAltitude", unit: "ft", values: [0, 2000, 4000, 6000] }],
      unit: "m",
      cells,
    });
    expect(oddCells(column(sound), trends)).toEqual([]);
    const spoilt = sound.with(index, wrong);
    const odd = oddCells(column(spoilt), trends);
    expect(odd.map(({ indices }) => indices)).toEqual([[index]]);
  });

  it("are found one by one, wherever one digit of a sound table was typed once too often", () => {
    const sound = [290, 310, 335, 360, 345, 370, 400, 430, 415, 445, 480, 520, 505, 545, 590, 640];
    const trends = { pressureAltitude: "rising", oat: "rising" } as const;
    const grid = (cells: readonly number[]) => ({
      axes: [
        { name: "pressureAltitude", unit: "ft", values: [0, 2000, 4000, 6000] },
        { name: "oat", unit: "°C", values: [0, 10, 20, 30] },
      ],
      unit: "m",
      cells: [0, 4, 8, 12].map((from) => cells.slice(from, from + 4)),
    });
    expect(oddCells(grid(sound), trends)).toEqual([]);
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 14 }), (at) => {
        // the last corner has nobody above it: ten times as much goes the way of all
        const odd = oddCells(grid(sound.with(at, (sound[at] ?? 0) * 10)), trends);
        expect(odd.map(({ indices }) => indices)).toEqual([[Math.floor(at / 4), at % 4]]);
      }),
    );
  });

  it("are none in a sound table", () => {
    expect(
      oddCells({
        ...table,
        cells: [
          [1, 2, 3],
          [2, 3, 4],
          [3, 4, null],
        ],
      }),
    ).toEqual([]);
  });
});

describe("in the form of a book", () => {
  it("a table has its outer values beside its rows", () => {
    const table = bookTable(
      {
        axes: [
          { name: "mass", unit: "kg", values: [900, 1000] },
          { name: "oat", unit: "°C", values: [0, 20] },
        ],
        unit: "m",
        cells: [
          [200, 220],
          [240, null],
        ],
      },
      {
        id: "take-off-roll",
        quantity: "take-off-ground-roll",
        title: 'Roll: "paved", dry',
        flaps: " 15° ",
        speed: "",
      },
    );
    expect(tableYaml(table)).toBe(`- id: take-off-roll
  quantity: take-off-ground-roll
  title: "Roll: \\"paved\\", dry"
  flaps: "15°"
  axes:
    - { name: mass, unit: "kg", values: [900, 1000] }
    - { name: oat, unit: "°C", values: [0, 20] }
  unit: "m"
  cells:
    - [200, 220] # 900 kg
    - [240, null] # 1000 kg
`);
  });

  it("an envelope has its corners as measures", () => {
    expect(envelopeYaml({ id: "normal", name: "Normal", points: [{ arm: "2.05 m", mass: "620 kg" }] })).toBe(
      `- id: normal\n  name: "Normal"\n  points:\n    - { arm: 2.05 m, mass: 620 kg }\n`,
    );
  });
});
