import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { interpolateTable } from "./interpolate-table.ts";
import { axisValuesOfCell, type Table, tableFaults } from "./table.ts";
import { trendFaults } from "./table-trend.ts";

interface LibraryCase {
  readonly id: string;
  readonly inputs: {
    readonly axes: Table["axes"];
    readonly cells: readonly number[];
    readonly points: readonly (readonly number[])[];
  };
  readonly expected: { readonly values: readonly number[] };
  readonly tolerance: { readonly relative_1: number };
}

const library: { readonly cases: readonly LibraryCase[] } = JSON.parse(
  readFileSync(new URL("../../../../reference/decoded/table-interpolation.json", import.meta.url), "utf8"),
);

const pointOn = ({ axes }: Table, values: readonly number[]): Record<string, number> =>
  Object.fromEntries(axes.map(({ name }, at) => [name, values[at] ?? Number.NaN]));

/** Take-off distance over 50 ft, 2,400 lb, 6,000 to 8,000 ft: FAA-H-8083-25C fig. 11-24; `null` = printed dashes. */
const PRINTED: Table = {
  axes: [
    { name: "pressureAltitude_ft", values: [6000, 7000, 8000] },
    { name: "temperature_degC", values: [0, 10, 20, 30, 40] },
  ],
  cells: [
    [2755, 3015, 3300, 3620, 3990],
    [3140, 3450, 3805, 4220, null],
    [3615, 4015, 4480, null, null],
  ].flat(),
};
const at = (pressureAltitude_ft: number, temperature_degC: number): Record<string, number> => ({
  pressureAltitude_ft,
  temperature_degC,
});
const linear = { mode: "linear" } as const;

/** Tables of two to five dimensions whose cells rise along every axis, without a hole. */
const risingTable = fc
  .array(fc.array(fc.integer({ min: 1, max: 50 }), { minLength: 2, maxLength: 4 }), {
    minLength: 2,
    maxLength: 5,
  })
  .chain((gaps) => {
    const axes = gaps.map((own, axis) => ({
      name: `axis${axis}_m`,
      values: own.map((_gap, to) => own.slice(0, to + 1).reduce((sum, gap) => sum + gap, -10)),
    }));
    const count = axes.reduce((product, { values }) => product * values.length, 1);
    return fc.record({
      axes: fc.constant(axes),
      // A sum of rising shares, one an axis, rises along each of them.
      shares: fc.array(fc.array(fc.integer({ min: 0, max: 300 }), { minLength: 4, maxLength: 4 }), {
        minLength: 5,
        maxLength: 5,
      }),
      count: fc.constant(count),
    });
  })
  .map(({ axes, shares, count }) => {
    const cells = Array.from({ length: count }, (_none, index) => {
      let rest = index;
      let sum = 100;
      for (const [axis, { values }] of [...axes.entries()].reverse()) {
        const on = rest % values.length;
        rest = Math.floor(rest / values.length);
        sum += (shares[axis] ?? []).slice(0, on + 1).reduce((total, share) => total + share, 0);
      }
      return sum;
    });
    return { axes, cells } satisfies Table;
  });

const shareOf01 = fc.double({ min: 0, max: 1, noNaN: true });
const within = ({ axes }: Table, shares: readonly number[]): Record<string, number> =>
  Object.fromEntries(
    axes.map(({ name, values }, axis) => {
      const [low = 0, high = low] = [values[0], values.at(-1)];
      return [name, Math.min(high, low + (high - low) * (shares[axis] ?? 0))];
    }),
  );
const fiveShares = fc.array(shareOf01, { minLength: 5, maxLength: 5 });

const figureOf = (table: Table, point: Record<string, number>, mode: "linear" | "next-worse"): number => {
  const answer = interpolateTable(table, point, { mode });
  if (!answer.ok) throw new Error(`no figure: ${JSON.stringify(answer)}`);
  return answer.value;
};

describe("linear interpolation in a table", () => {
  it("has library cases of one to five dimensions to be checked against", () => {
    expect(library.cases.map(({ inputs }) => inputs.axes.length)).toEqual([1, 2, 3, 4, 5]);
  });

  // SciPy's RegularGridInterpolator; version and seed beside the values
  it.each(library.cases)("$id agrees with a general-purpose library", ({ inputs, expected, tolerance }) => {
    const table = { axes: inputs.axes, cells: inputs.cells };
    expect(inputs.points.length).toBeGreaterThanOrEqual(16);
    inputs.points.forEach((point, index) => {
      const want = expected.values[index] ?? Number.NaN;
      const got = figureOf(table, pointOn(table, point), "linear");
      expect(Math.abs(got - want)).toBeLessThanOrEqual(tolerance.relative_1 * Math.abs(want));
    });
  });

  it("gives the printed cell on a printed value, though its neighbour has no figure", () => {
    expect(interpolateTable(PRINTED, at(7000, 30), linear)).toMatchObject({
      ok: true,
      value: 4220,
      corners: [{ cell: 4220, weight_1: 1 }],
    });
  });

  it("takes a value that a change of unit has moved by a billionth as the printed one", () => {
    expect(interpolateTable(PRINTED, at(7000 * (1 + 1e-14), 30 - 1e-13), linear)).toMatchObject({
      value: 4220,
    });
  });

  it("can say where each of its cells lies", () => {
    const answer = interpolateTable(PRINTED, at(6500, 12), linear);
    expect(answer.ok ? answer.corners.map(({ index }) => axisValuesOfCell(PRINTED, index)) : []).toEqual([
      at(6000, 10),
      at(6000, 20),
      at(7000, 10),
      at(7000, 20),
    ]);
    expect(() => axisValuesOfCell(PRINTED, 15)).toThrow("the table has no cell 15");
  });

  it("names the cells that an answer rests on, with shares that add up", () => {
    fc.assert(
      fc.property(risingTable, fiveShares, (table, shares) => {
        const answer = interpolateTable(table, within(table, shares), linear);
        expect(answer.ok).toBe(true);
        if (!answer.ok) return;
        expect(answer.corners.reduce((sum, { weight_1 }) => sum + weight_1, 0)).toBeCloseTo(1, 12);
        const mean = answer.corners.reduce((sum, { weight_1, cell }) => sum + weight_1 * cell, 0);
        expect(answer.value).toBeCloseTo(mean, 8);
      }),
    );
  });

  it("never falls along an axis on which the printed cells never fall", () => {
    fc.assert(
      fc.property(risingTable, fiveShares, shareOf01, fc.nat({ max: 4 }), (table, shares, more, which) => {
        const axis = which % table.axes.length;
        const own = shares[axis] ?? 0;
        const heavier = shares.with(axis, own + (1 - own) * more);
        for (const mode of ["linear", "next-worse"] as const) {
          const less = figureOf(table, within(table, shares), mode);
          expect(figureOf(table, within(table, heavier), mode)).toBeGreaterThanOrEqual(less - 1e-9);
        }
      }),
    );
  });
});

describe("the next worse cell", () => {
  it("is the longest of the cells around", () => {
    expect(interpolateTable(PRINTED, at(6500, 12), { mode: "next-worse" })).toMatchObject({
      ok: true,
      value: 3805,
    });
  });

  it("is the least of them where less is worse", () => {
    expect(interpolateTable(PRINTED, at(6500, 12), { mode: "next-worse", worse: "less" })).toMatchObject({
      value: 3015,
    });
  });

  it("never flatters the linear answer", () => {
    fc.assert(
      fc.property(risingTable, fiveShares, (table, shares) => {
        const point = within(table, shares);
        expect(figureOf(table, point, "next-worse")).toBeGreaterThanOrEqual(figureOf(table, point, "linear"));
      }),
    );
  });
});

describe("where the table has no figure", () => {
  it.each([
    // what is asked, and what the table covers nearest to it
    [
      "hotter than the last column",
      at(6500, 45),
      { why: "off-table", axis: "temperature_degC", asked: 45, nearest: 30 },
    ],
    [
      "higher than the last row",
      at(8500, 10),
      { why: "off-table", axis: "pressureAltitude_ft", asked: 8500, nearest: 8000 },
    ],
    [
      "lower than the first row",
      at(5900, 10),
      { why: "off-table", axis: "pressureAltitude_ft", asked: 5900, nearest: 6000 },
    ],
    ["printed dashes", at(8000, 30), { why: "no-figure", axis: "temperature_degC", asked: 30, nearest: 20 }],
    [
      "a missing corner",
      at(7500, 25),
      { why: "no-figure", axis: "temperature_degC", asked: 25, nearest: 20 },
    ],
  ])("%s is refused, with the nearest value that is covered", (_what, point, expected) => {
    for (const mode of ["linear", "next-worse"] as const)
      expect(interpolateTable(PRINTED, point, { mode })).toEqual({ ok: false, ...expected });
  });

  it("names a nearest value that is then answered", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5000, max: 9000, noNaN: true }),
        fc.double({ min: -20, max: 60, noNaN: true }),
        (altitude, temperature) => {
          const point = at(altitude, temperature);
          const answer = interpolateTable(PRINTED, point, linear);
          if (answer.ok || answer.nearest === undefined) return;
          const again = interpolateTable(PRINTED, { ...point, [answer.axis]: answer.nearest }, linear);
          // Another axis may still be off the table; the one that was named no longer is.
          expect(again.ok || (again.axis !== answer.axis && again.why === "off-table")).toBe(true);
        },
      ),
    );
  });

  it("says nothing of a nearest value where the whole row is empty", () => {
    const empty: Table = {
      axes: [
        { name: "mass_kg", values: [1000, 1100] },
        { name: "oat_K", values: [280, 290] },
      ],
      cells: [null, null, null, null],
    };
    expect(interpolateTable(empty, { mass_kg: 1050, oat_K: 280 }, linear)).toEqual({
      ok: false,
      why: "no-figure",
      axis: "mass_kg",
      asked: 1050,
    });
  });

  it("gives nothing off the table, whatever the table and the point", () => {
    fc.assert(
      fc.property(
        risingTable,
        fiveShares,
        fc.nat({ max: 4 }),
        fc.double({ min: 1e-3, max: 1e6, noNaN: true }),
        fc.boolean(),
        (table, shares, which, beyond, below) => {
          const axis = table.axes[which % table.axes.length];
          const [low = 0, high = low] = [axis?.values[0], axis?.values.at(-1)];
          const name = axis?.name ?? "";
          const asked = below ? low - beyond : high + beyond;
          for (const mode of ["linear", "next-worse"] as const) {
            expect(interpolateTable(table, { ...within(table, shares), [name]: asked }, { mode })).toEqual({
              ok: false,
              why: "off-table",
              axis: name,
              asked,
              nearest: below ? low : high,
            });
          }
        },
      ),
    );
  });
});

describe("an end that the caller has said is harmless", () => {
  const colder = {
    mode: "linear",
    harmless: { temperature_degC: "below", pressureAltitude_ft: "below" },
  } as const;

  it("lets the edge cell stand, and says so", () => {
    expect(interpolateTable(PRINTED, at(6000, -15), colder)).toMatchObject({
      ok: true,
      value: 2755,
      edges: [{ axis: "temperature_degC", asked: -15, used: 0 }],
    });
  });

  it("does not open the other end", () => {
    expect(interpolateTable(PRINTED, at(6000, 41), colder)).toMatchObject({
      ok: false,
      axis: "temperature_degC",
    });
  });

  it("never goes beyond the edge cell", () => {
    fc.assert(
      fc.property(fc.double({ min: -80, max: 0, noNaN: true }), (temperature) => {
        expect(interpolateTable(PRINTED, at(7000, temperature), colder)).toMatchObject({ value: 3140 });
      }),
    );
  });

  it("does not make up a figure for an empty cell", () => {
    const hotHarmless = { mode: "linear", harmless: { temperature_degC: "above" } } as const;
    expect(interpolateTable(PRINTED, at(8000, 50), hotHarmless)).toMatchObject({
      ok: false,
      why: "no-figure",
    });
  });
});

describe("bad input", () => {
  it.each([
    [
      "an axis without a value",
      {},
      "pressureAltitude_ft: expected a value for each axis of the table, received nothing",
    ],
    [
      "a value that is no number",
      at(Number.NaN, 0),
      "pressureAltitude_ft: expected a finite number, received NaN",
    ],
  ])("refuses %s", (_what, point, message) => {
    expect(() => interpolateTable(PRINTED, point, linear)).toThrow(message);
  });

  it.each([
    [
      "axes that do not ascend",
      { axes: [{ name: "a_m", values: [0, 0] }], cells: [1, 2] },
      "a_m, value 2: expected more than 0, received 0",
    ],
    [
      "too few cells",
      { axes: [{ name: "a_m", values: [0, 1] }], cells: [1] },
      "cells: expected 2 (one for each corner of the axes), received 1",
    ],
    [
      "a cell that is no number",
      { axes: [{ name: "a_m", values: [0, 1] }], cells: [1, Number.NaN] },
      "cell 2: expected a number or no figure, received NaN",
    ],
    ["no axis", { axes: [], cells: [1] }, "axes: expected 1 to 5, received 0"],
    [
      "an empty axis",
      { axes: [{ name: "a_m", values: [] }], cells: [] },
      "a_m: expected at least one value, received none",
    ],
  ])("refuses a table with %s", (_what, table, fault) => {
    expect(tableFaults(table)).toEqual([fault]);
    expect(() => interpolateTable(table, { a_m: 0 }, linear)).toThrow(fault);
  });

  it("finds an axis that stands twice", () => {
    const twice = {
      axes: [
        { name: "a_m", values: [0] },
        { name: "a_m", values: [0] },
      ],
      cells: [1],
    };
    expect(tableFaults(twice)[0]).toBe("a_m: expected each axis once, received it 2 times");
  });
});

describe("the trend of a table", () => {
  it("has nothing to say of a printed table that rises with height and temperature", () => {
    expect(trendFaults(PRINTED, { pressureAltitude_ft: "rising", temperature_degC: "rising" })).toEqual([]);
  });

  it("finds a misprint, and names both cells", () => {
    const misprint = { ...PRINTED, cells: PRINTED.cells.with(6, 3050) }; // 7,000 ft, 10 °C: 3,450 printed
    expect(trendFaults(misprint, { pressureAltitude_ft: "rising", temperature_degC: "rising" })).toEqual([
      {
        axis: "temperature_degC",
        expected: "rising",
        at: at(7000, 0),
        to: 10,
        cell: 3140,
        nextCell: 3050,
      },
    ]);
  });

  it("looks across an empty cell", () => {
    const hole: Table = { axes: [{ name: "headwind_mPerS", values: [0, 5, 10] }], cells: [400, null, 450] };
    expect(trendFaults(hole, { headwind_mPerS: "falling" })).toMatchObject([
      { cell: 400, nextCell: 450, to: 10 },
    ]);
  });

  it("passes every table that rises on every axis", () => {
    fc.assert(
      fc.property(risingTable, (table) => {
        const trends = Object.fromEntries(table.axes.map(({ name }) => [name, "rising" as const]));
        expect(trendFaults(table, trends)).toEqual([]);
      }),
    );
  });
});
