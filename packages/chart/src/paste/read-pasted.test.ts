import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type PasteSaid, readPasted } from "./read-pasted.ts";

const distances: PasteSaid = { cells: "length", unit: "m" };
const tableOf = (text: string, said: PasteSaid = distances) => {
  const result = readPasted(text, said);
  if (!result.ok) throw new Error(JSON.stringify(result.faults));
  return result.table;
};
const faultsOf = (text: string, said: PasteSaid = distances) => {
  const result = readPasted(text, said);
  return result.ok ? [] : result.faults;
};

const WANTED = {
  axes: [
    { name: "pressureAltitude", unit: "ft", values: [0, 2000] },
    { name: "oat", unit: "°C", values: [-20, 0, 20] },
  ],
  unit: "m",
  cells: [
    [210, 240, 275],
    [255, 1290.5, null],
  ],
};

describe("a pasted table", () => {
  it.each([
    [
      "from a spreadsheet",
      "Pressure altitude ft \\ OAT °C\t-20\t0\t20\n0\t210\t240\t275\n2000\t255\t1290.5\t—",
    ],
    [
      "with a decimal comma",
      "Pressure altitude (ft) / OAT (°C);-20;0;20\n0;210;240;275\n2000;255;1.290,5;n/a",
    ],
    ["as CSV with quotes", 'PA [ft] \\ OAT [°C],-20,0,20\r\n0,210,240,275\r\n"2,000",255,"1,290.5",'],
    [
      "with rows and columns in any order",
      "PA ft | OAT °C\t20\t-20\t0\n2 000\t-\t255\t1 290.5\n0\t275\t210\t240",
    ],
    [
      "set with spaces",
      "                OAT °C\nPressure altitude, ft    −20    0    20\n0    210    240    275\n2,000    255    1,290.5    x",
    ],
    [
      "with units in its cells",
      "Pressure altitude\\OAT\t-20 °C\t0 °C\t20 °C\n0 ft\t210 m\t240\t275\n2000 ft\t255\t1290.5\t-",
    ],
    [
      "with its names in a row above",
      "PA (ft)\tOAT (°C)\n\t-20\t0\t20\n0\t210\t240\t275\n2000\t255\t1290.5\t-",
    ],
    [
      "with bars about it and a line under its headings",
      "| Pressure altitude ft \\ OAT °C | -20 | 0 | 20 |\n| --- | ---: | :---: | --- |\n| 0 | 210 | 240 | 275 |\n| 2000 | 255 | 1290.5 | - |",
    ],
    [
      "under a title, with what is across told by its units alone",
      "Landing distance over 50 ft, m:\n\n| pressure altitude | -20 °C | 0 °C | 20 °C |\n|---|---|---|---|\n| 0 ft | 210 | 240 | 275 |\n| 2000 ft | 255 | 1290.5 | |",
    ],
    [
      "as a list with a row of units",
      "OAT;Pressure altitude;Ground roll\n°C;ft;m\n20;0;275\n0;0;240\n-20;0;210\n-20;2000;255\n0;2000;1290,5\n20;2000;",
    ],
    [
      "as a list",
      "OAT °C;Pressure altitude (ft);Ground roll (m)\n20;0;275\n0;0;240\n-20;0;210\n-20;2000;255\n0;2000;1290,5\n20;2000;",
    ],
  ])("is read %s", (_, text) => {
    const said = { ...distances, units: { pressureAltitude: "ft" } } as const; // one of them has it in its cells only
    expect(tableOf(text, said)).toEqual(WANTED);
  });

  it("has outer axes in columns before the grid, with gaps for merged cells", () => {
    const table = tableOf(
      "Weight (lb)\tPA (ft) \\ Tailwind (kt)\t10\t0\n2000\t0\t150\t100\n\t1000\t160\t110\n2400\t0\t190\t130\n\t1000\t200\t140",
    );
    expect(table.axes).toEqual([
      { name: "mass", unit: "lb", values: [2000, 2400] },
      { name: "pressureAltitude", unit: "ft", values: [0, 1000] },
      { name: "headwind", unit: "kt", values: [-10, 0] },
    ]);
    expect(table.cells).toEqual([
      [
        [150, 100],
        [160, 110],
      ],
      [
        [190, 130],
        [200, 140],
      ],
    ]);
  });

  it("comes back whatever the order of its rows", () => {
    const rows = ["20;0;275", "0;0;240", "-20;0;210", "-20;2000;255", "0;2000;1290,5", "20;2000;"];
    fc.assert(
      fc.property(fc.shuffledSubarray(rows, { minLength: rows.length }), (shuffled) => {
        expect(tableOf(["OAT °C;Pressure altitude (ft);Ground roll (m)", ...shuffled].join("\n"))).toEqual(
          WANTED,
        );
      }),
    );
  });

  it("never throws, whatever is pasted", () => {
    const bits = fc.constantFrom(
      "PA ft",
      "OAT °C",
      "\t",
      "\n",
      ";",
      ",",
      "1,5",
      "2.000",
      "-",
      '"',
      " ",
      "12",
      "mass kg",
      "x ",
    );
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          fc.array(bits, { maxLength: 40 }).map((all) => all.join("")),
        ),
        (text) => {
          const result = readPasted(text, distances);
          if (!result.ok) expect(result.faults.length).toBeGreaterThan(0);
        },
      ),
      { numRuns: 500 },
    );
  });
});

describe("what is wrong with a pasted table is told by row and column", () => {
  it.each([
    ["", 0, 0, "Nothing is pasted yet."],
    ["PA ft \\ OAT °C\t0\t20\n0\t210\tabout 240", 2, 3, "Expected a number or nothing, found “about 240”."],
    [
      "PA ft \\ OAT °C\t0\t20\n\t210\t240",
      2,
      1,
      "Expected a number for the pressure altitude, found nothing.",
    ],
    [
      "Height ft \\ OAT °C\t0\t20\n0\t210\t240",
      1,
      1,
      "Expected the name of an axis (mass, pressure altitude, temperature, headwind or slope), found “Height ft \\ OAT °C”.",
    ],
    [
      "PA \\ OAT °C\t0\t20\n0\t210\t240",
      1,
      1,
      "Expected a unit with the pressure altitude, such as ft, found none.",
    ],
    ["PA ft\t0\t20\n0\t210\t240", 1, 2, "The values across (0, 20) have no name. Say which axis they are."],
    [
      "PA ft \\ OAT °C\t0\t20\n0\t1,210\t1,240",
      2,
      2,
      "1,210 can be read in two ways. Say whether the decimal sign is a point or a comma.",
    ],
    [
      "PA ft;OAT °C;m\n0;20;210\n0;20;215",
      3,
      3,
      "Expected one figure for each place, found 215 here and 210 in row 2, column 3, for the same values.",
    ],
    [
      "PA ft \\ OAT °C\t0\t20\n0\t210\t240\t260",
      2,
      4,
      "Expected nothing here, for no value stands over it; found 260.",
    ],
    [
      "PA ft;OAT °C;roll (m);total (m)\n0;20;210;400",
      1,
      3,
      "Expected one column of figures, found 2: roll (m) (column 3), total (m) (column 4). Say which one, or spell the names of the axes out.",
    ],
  ])("%j: row %i, column %i", (text, row, column, says) => {
    expect(faultsOf(text)[0]).toEqual({ row, column, says });
  });

  it("asks for the unit of the figures where nothing says it", () => {
    expect(faultsOf("PA ft \\ OAT °C\t0\t20\n0\t210\t240", { cells: "length" })[0]?.says).toBe(
      "Expected the unit of the figures (a length), found none. Say which it is.",
    );
  });

  it("takes the sign, the column and the axis that a person says", () => {
    expect(
      tableOf("PA ft \\ OAT °C\t0\t20\n0\t1,210\t1,240", { ...distances, decimal: "comma" }).cells,
    ).toEqual([[1.21, 1.24]]);
    expect(
      tableOf("PA ft;OAT °C;roll (m);total (m)\n0;20;210;400", { ...distances, column: 4 }).cells,
    ).toEqual([[400]]);
    expect(
      tableOf("PA ft\t0\t20\n0\t210\t240", { ...distances, across: "oat", units: { oat: "°C" } }).axes[1],
    ).toEqual({
      name: "oat",
      unit: "°C",
      values: [0, 20],
    });
  });
});
