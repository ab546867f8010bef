import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { interpolateTable } from "../table/interpolate-table.ts";
import type { Table } from "../table/table.ts";
import { trendFaults } from "../table/table-trend.ts";
import { fromSI, toSI } from "../units/convert.ts";
import { roundToSafeSide } from "../units/round.ts";
import { climbBetween } from "./climb.ts";
import { type DistanceFactor, type DistanceFigures, distanceChain } from "./distance-chain.ts";
import { EUROPEAN_SLOPE_RULE, slopeFactor, windNoteFactor } from "./factor-rules.ts";
import {
  LEAFLET_7_VARIATIONS,
  safetyFactors,
  surfaceFactors,
  TURBOPROP_CONDITION_FACTORS,
} from "./published-factors.ts";
import { massTakeOffRule } from "./rules-of-thumb.ts";

interface PrintedTable {
  readonly pressureAltitudes_ft: readonly number[];
  readonly temperatures_degC: readonly number[];
  readonly totalOver50ft_ft: Readonly<Record<string, readonly (readonly (number | null)[])[]>>;
}
interface RunwayCase {
  readonly id: string;
  readonly inputs: Readonly<Record<string, number | string>> & { readonly table?: PrintedTable };
  readonly expected: Readonly<Record<string, unknown>>;
  readonly tolerance: Readonly<Record<string, number>>;
}
// a file of this repository, of which the shape is known
const filed = JSON.parse(
  readFileSync(new URL("../../../../reference/decoded/runway.json", import.meta.url), "utf8"),
) as { readonly cases: readonly RunwayCase[] };

const caseOf = (id: string): RunwayCase => {
  const found = filed.cases.find((one) => one.id === id);
  if (found === undefined) throw new Error(`reference/decoded/runway.json has no case ${id}`);
  return found;
};
const agrees = ({ expected, tolerance }: RunwayCase, name: string, computed: number | undefined): void => {
  expect(typeof expected[name], name).toBe("number");
  expect(Math.abs((computed ?? Number.NaN) - Number(expected[name])), name).toBeLessThanOrEqual(
    (tolerance[name] ?? 0) + 1e-9,
  );
};

/** FAA-H-8083-25C fig. 11-24 in SI units: weight by pressure altitude by temperature. */
function tableOf(printed: PrintedTable): Table {
  const weights_lb = Object.keys(printed.totalOver50ft_ft)
    .map(Number)
    .sort((a, b) => a - b);
  return {
    axes: [
      { name: "mass_kg", values: weights_lb.map((weight) => toSI(weight, "lb")) },
      { name: "pressureAltitude_m", values: printed.pressureAltitudes_ft.map((feet) => toSI(feet, "ft")) },
      { name: "oat_K", values: printed.temperatures_degC.map((temperature) => toSI(temperature, "degC")) },
    ],
    cells: weights_lb
      .flatMap((weight) => printed.totalOver50ft_ft[String(weight)] ?? [])
      .flat()
      .map((feet) => (feet === null ? null : toSI(feet, "ft"))),
  };
}
const pointOf = ({ inputs }: RunwayCase): Record<string, number> => ({
  mass_kg: toSI(Number(inputs["weight_lb"]), "lb"),
  pressureAltitude_m: toSI(Number(inputs["pressureAltitude_ft"]), "ft"),
  oat_K: toSI(Number(inputs["temperature_degC"]), "degC"),
});
const tableIn = ({ inputs, id }: RunwayCase): Table => {
  if (inputs.table === undefined) throw new Error(`${id} has no table`);
  return tableOf(inputs.table);
};
const COLDER_AND_LOWER = { pressureAltitude_m: "below", oat_K: "below" } as const;

const read_ft = (one: RunwayCase, mode: "linear" | "next-worse"): number | undefined => {
  const answer = interpolateTable(tableIn(one), pointOf(one), { mode, harmless: COLDER_AND_LOWER });
  return answer.ok ? fromSI(answer.value, "ft") : undefined;
};

const step = (
  stage: DistanceFactor["stage"],
  factor_1: number,
  of: DistanceFactor["of"] = "each",
): DistanceFactor => ({
  stage,
  id: `${stage}-${factor_1}`,
  title: stage,
  factor_1,
  of,
});
const endOf = (start: DistanceFigures, factors: readonly DistanceFactor[]): DistanceFigures => {
  const chain = distanceChain(start, factors);
  if (!chain.ok) throw new Error(`no figure: ${chain.missing}`);
  return chain.end;
};
const noteFactor = (
  along_kt: number,
  kind: "headwind" | "tailwind",
  share_1: number,
  per_kt: number,
  most_kt: number,
) =>
  windNoteFactor(toSI(along_kt, "kt"), {
    [kind]: { share_1, per_mPerS: toSI(per_kt, "kt"), most_mPerS: toSI(most_kt, "kt") },
  });
const factorOf = (answer: ReturnType<typeof windNoteFactor>): number => {
  if (!answer.ok) throw new Error(`no factor: ${answer.why}`);
  return answer.factor_1;
};

describe("a printed take-off table", () => {
  it("gives a printed cell as it is printed", () => {
    const one = caseOf("takeoff-table-cell-phak-sp3");
    for (const mode of ["linear", "next-worse"] as const) agrees(one, "totalOver50ft_ft", read_ft(one, mode));
  });

  it.each([
    "takeoff-bilinear-2400-1500-15",
    "takeoff-bilinear-2400-4200-12",
    "takeoff-trilinear-2300-3000-30",
  ])("is read between its cells, and at the next worse: %s", (id) => {
    const one = caseOf(id);
    agrees(one, "interpolatedTotalOver50ft_ft", read_ft(one, "linear"));
    agrees(one, "nextWorseCell_ft", read_ft(one, "next-worse"));
  });

  it.each(["takeoff-no-extrapolation-1", "takeoff-no-extrapolation-3", "takeoff-no-extrapolation-5"])(
    "has no figure: %s",
    (id) => {
      const one = caseOf(id);
      expect(one.expected).toEqual({ answer: "open" });
      for (const mode of ["linear", "next-worse"] as const) expect(read_ft(one, mode)).toBeUndefined();
    },
  );

  it("lets the edge cell stand on the harmless side", () => {
    const one = caseOf("takeoff-clamp-good-side-1");
    agrees(one, "totalOver50ft_ft", read_ft(one, "linear"));
  });

  it("never shortens with mass, height or temperature, as printed and between the cells", () => {
    const one = caseOf("takeoff-table-cell-phak-sp3");
    const table = tableIn(one);
    expect(trendFaults(table, { mass_kg: "rising", pressureAltitude_m: "rising", oat_K: "rising" })).toEqual(
      [],
    );
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(
        share,
        share,
        share,
        share,
        fc.constantFrom(0, 1, 2),
        (mass, height, temperature, more, which) => {
          const at = (shares: readonly number[]): Record<string, number> =>
            Object.fromEntries(
              table.axes.map(({ name, values }, axis) => {
                const [low = 0, high = low] = [values[0], values.at(-1)];
                return [name, Math.min(high, low + (high - low) * (shares[axis] ?? 0))];
              }),
            );
          const shares = [mass, height, temperature];
          const own = shares[which] ?? 0;
          const [here, worse] = [shares, shares.with(which, own + (1 - own) * more)].map((point) =>
            interpolateTable(table, at(point), { mode: "linear" }),
          );
          // Worse conditions may leave the table; they never come back onto it with less.
          if (here?.ok === true && worse?.ok === true)
            expect(worse.value).toBeGreaterThanOrEqual(here.value - 1e-9);
        },
      ),
    );
  });
});

describe("a printed landing table", () => {
  it("is read between two heights", () => {
    const one = caseOf("landing-interpolation-phak-sp11");
    const { pressureAltitudes_ft, totalOver50ft_ft } = one.inputs as unknown as {
      readonly pressureAltitudes_ft: readonly number[];
      readonly totalOver50ft_ft: readonly number[];
    }; // a case of the file read above, of which the shape is known
    const table: Table = {
      axes: [{ name: "pressureAltitude_ft", values: pressureAltitudes_ft }],
      cells: totalOver50ft_ft,
    };
    const answer = interpolateTable(
      table,
      { pressureAltitude_ft: Number(one.inputs["pressureAltitude_ft"]) },
      { mode: "linear" },
    );
    agrees(one, "totalOver50ft_ft", answer.ok ? answer.value : undefined);
  });
});

describe("a table's notes", () => {
  it("count a tailwind in proportion", () => {
    const one = caseOf("takeoff-tailwind-phak-note2");
    const factor_1 = factorOf(noteFactor(-4, "tailwind", 0.1, 2, 10));
    const end = endOf({ groundRoll_m: 1325, total_m: 2480 }, [step("wind", factor_1)]);
    agrees(one, "groundRoll_ft", end.groundRoll_m);
    agrees(one, "totalOver50ft_ft", end.total_m);
  });

  it("have no figure for a tailwind beyond them, and one at their end", () => {
    expect(caseOf("takeoff-tailwind-beyond-note2").expected).toEqual({ answer: "open" });
    expect(noteFactor(-11, "tailwind", 0.1, 2, 10)).toMatchObject({ ok: false, why: "beyond the rule" });
    expect(factorOf(noteFactor(-10, "tailwind", 0.1, 2, 10))).toBeCloseTo(1.5, 12);
    expect(windNoteFactor(-1, {})).toEqual({ ok: false, why: "no rule", asked: -1 });
  });

  it("count a headwind in proportion, to their end and no further", () => {
    const one = caseOf("landing-headwind-note1");
    agrees(
      one,
      "totalOver50ft_ft",
      Number(one.inputs["totalOver50ft_ft"]) * factorOf(noteFactor(8, "headwind", 0.1, 4, 20)),
    );
    expect(factorOf(noteFactor(18, "headwind", 0.1, 9, 30))).toBeCloseTo(0.8, 12); // 18 kt at 10 % for 9 kt: 20 %
    expect(factorOf(noteFactor(40, "headwind", 0.1, 4, 20))).toBeCloseTo(0.5, 12);
    expect(windNoteFactor(5, {})).toEqual({ ok: true, factor_1: 1 });
  });

  it("refuse a note that would make a distance vanish", () => {
    expect(() => noteFactor(8, "headwind", 0.1, 2, 30)).toThrow("headwind: expected a share of zero or more");
  });

  it("can add a share of the total to both figures", () => {
    const one = caseOf("landing-grass-note3");
    const end = endOf({ groundRoll_m: 445, total_m: 1075 }, [step("surface", 1.2, "total")]);
    agrees(one, "groundRoll_ft", end.groundRoll_m);
    agrees(one, "totalOver50ft_ft", end.total_m);
  });

  it("can add a share of the ground roll to both", () => {
    // FAA-H-8083-25C fig. 11-24 note: dry grass, 15 % of the ground roll; worked by hand
    expect(endOf({ groundRoll_m: 1000, total_m: 1800 }, [step("surface", 1.15, "ground-roll")])).toEqual({
      groundRoll_m: 1000 + 1000 * (1.15 - 1),
      total_m: 1800 + 1000 * (1.15 - 1),
    });
  });
});

describe("a slope", () => {
  it("lengthens a take-off up it by 5 % for each 1 %", () => {
    const one = caseOf("takeoff-upslope-5pct-per-1pct");
    const factor_1 = factorOf(slopeFactor(0.016, "take-off", EUROPEAN_SLOPE_RULE));
    agrees(one, "takeoffDistance_m", endOf({ total_m: 400 }, [step("slope", factor_1)]).total_m);
  });

  it("gives no credit, whichever way it helps", () => {
    expect(slopeFactor(-0.016, "take-off", EUROPEAN_SLOPE_RULE)).toEqual({ ok: true, factor_1: 1 });
    expect(slopeFactor(0.016, "landing", EUROPEAN_SLOPE_RULE)).toEqual({ ok: true, factor_1: 1 });
    expect(factorOf(slopeFactor(-0.01, "landing", EUROPEAN_SLOPE_RULE))).toBeCloseTo(1.05, 12);
  });

  it("has no figure beyond 2 %", () => {
    expect(slopeFactor(0.021, "take-off", EUROPEAN_SLOPE_RULE)).toMatchObject({ ok: false, nearest: 0.02 });
    expect(slopeFactor(-0.021, "landing", EUROPEAN_SLOPE_RULE)).toMatchObject({ ok: false, nearest: -0.02 });
    expect(slopeFactor(toSI(2, "percent"), "take-off", EUROPEAN_SLOPE_RULE)).toMatchObject({ ok: true });
    expect(() => slopeFactor(Number.NaN, "landing", EUROPEAN_SLOPE_RULE)).toThrow(
      "slope_1: expected a finite number",
    );
  });
});

describe("a chain of factors", () => {
  it("multiplies: the leaflet's take-off", () => {
    const one = caseOf("ssl7-chain-takeoff");
    const end = endOf({ total_m: 390 }, [
      step("surface", 1.2),
      step("slope", 1.1),
      step("surface", 1.1),
      step("safety", 1.33),
    ]);
    agrees(one, "distanceNeeded_m", end.total_m);
  });

  it("multiplies dry grass and the class B safety factor", () => {
    const one = caseOf("takeoff-classb-no-stopway");
    const factors = [
      ...(surfaceFactors("european-class-b", "take-off", "grass", "dry") ?? []),
      ...safetyFactors("european-class-b", "take-off"),
    ];
    agrees(one, "minTora_m", endOf({ total_m: 520 }, factors).total_m);
  });

  it("keeps a landing within 70 % of the runway, rounded up", () => {
    const one = caseOf("landing-70pct-lda");
    const { total_m } = endOf({ total_m: 500 }, safetyFactors("european-class-b", "landing"));
    agrees(one, "requiredLda_m", roundToSafeSide(total_m ?? 0, 1, "up"));
  });

  it("is longer than the handbook's story, which adds where it should multiply", () => {
    const one = caseOf("landing-scenario-phak");
    const chain = distanceChain({ total_m: Number(one.inputs["plannedDistance_ft"]) }, [
      step("safety", 1.2),
      step("wind", 1.2),
    ]);
    expect(chain.ok).toBe(true);
    if (!chain.ok) return;
    agrees(one, "afterSpeed_ft", chain.steps[0]?.after.total_m);
    // Printed: 2,240 after the wind and 260 ft to spare. Multiplied: 2,304 and 196.
    const needed = (chain.end.total_m ?? 0) + Number(one.inputs["touchdownLong_ft"]);
    expect(chain.end.total_m).toBeCloseTo(2304, 9);
    expect(chain.end.total_m).toBeGreaterThan(Number(one.expected["afterTailwind_ft"]));
    expect(Number(one.inputs["runway_ft"]) - needed).toBeCloseTo(196, 9);
    expect(Number(one.inputs["runway_ft"]) - needed).toBeLessThan(Number(one.expected["spare_ft"]));
  });

  it("goes wind, surface, slope, safety, whatever the order given, and keeps each step", () => {
    const given = [
      step("safety", 1.25),
      step("slope", 1.05),
      step("surface", 1.15, "ground-roll"),
      step("wind", 1.2),
    ];
    const chain = distanceChain({ groundRoll_m: 300, total_m: 500 }, given);
    expect(chain.ok).toBe(true);
    if (!chain.ok) return;
    expect(chain.steps.map(({ factor }) => factor.stage)).toEqual(["wind", "surface", "slope", "safety"]);
    expect(chain.steps[0]).toMatchObject({
      before: { groundRoll_m: 300, total_m: 500 },
      after: { groundRoll_m: 360, total_m: 600 },
    });
    expect(chain.steps[1]?.after.total_m).toBeCloseTo(600 + 0.15 * 360, 9); // of the roll as the wind has left it
    chain.steps.forEach(({ before }, index) => {
      expect(before).toEqual(index === 0 ? chain.start : chain.steps[index - 1]?.after);
    });
    expect(chain.end).toEqual(chain.steps.at(-1)?.after);
    expect(distanceChain({ groundRoll_m: 300, total_m: 500 }, given.toReversed())).toMatchObject({
      end: chain.end,
    });
  });

  it("says what is missing for a factor of the ground roll where there is only a total", () => {
    expect(distanceChain({ total_m: 500 }, [step("surface", 1.15, "ground-roll")])).toMatchObject({
      ok: false,
      missing: "ground-roll",
    });
  });

  it("never ends shorter for a greater factor", () => {
    const factor = fc.double({ min: 1, max: 3, noNaN: true });
    fc.assert(
      fc.property(
        factor,
        factor,
        factor,
        fc.constantFrom("each", "ground-roll", "total"),
        (a, b, more, of) => {
          const start = { groundRoll_m: 300, total_m: 500 };
          const less = endOf(start, [step("wind", a), step("surface", b, of)]);
          const greater = endOf(start, [step("wind", a), step("surface", Math.min(10, b * more), of)]);
          expect(greater.total_m).toBeGreaterThanOrEqual((less.total_m ?? 0) - 1e-9);
          expect(greater.groundRoll_m).toBeGreaterThanOrEqual((less.groundRoll_m ?? 0) - 1e-9);
        },
      ),
    );
  });

  it.each([
    [
      "a factor written as a percentage",
      () => distanceChain({ total_m: 1 }, [step("surface", 20)]),
      "factor_1: expected a factor above 0, at most 10, received 20 (surface-20); a factor is 1.2 for 20 % more",
    ],
    [
      "a factor of zero",
      () => distanceChain({ total_m: 1 }, [step("surface", 0)]),
      "factor_1: expected a factor above 0",
    ],
    [
      "a factor that is no number",
      () => distanceChain({ total_m: 1 }, [step("surface", Number.NaN)]),
      "factor_1: expected a factor above 0",
    ],
    [
      "a distance below zero",
      () => distanceChain({ total_m: -1 }, []),
      "total_m: expected a distance of zero or more, received -1 m",
    ],
    [
      "no figure at all",
      () => distanceChain({}, []),
      "groundRoll_m, total_m: expected at least one figure of the table, received none",
    ],
  ])("refuses %s", (_what, call, message) => {
    expect(call).toThrow(message);
  });
});

describe("published factors", () => {
  it("hold what the leaflet prints", () => {
    const dry = caseOf("ssl7-dry-grass");
    const grass = (phase: "take-off" | "landing") =>
      surfaceFactors("leaflet-7", phase, "grass", "dry")?.[0]?.factor_1;
    agrees(dry, "takeoffFactor_1", grass("take-off"));
    agrees(dry, "landingFactor_1", grass("landing"));
    const safety = caseOf("ssl7-safety");
    agrees(safety, "takeoffFactor_1", safetyFactors("leaflet-7", "take-off")[0]?.factor_1);
    agrees(safety, "landingFactor_1", safetyFactors("leaflet-7", "landing")[0]?.factor_1);
  });

  it.each([
    ["ssl7-weight-10pct", "mass-10-percent-more"],
    ["ssl7-temperature-10c", "temperature-10-degC-more"],
    ["ssl7-slope-2pct", "slope-2-percent-against"],
    ["ssl7-tailwind-10pct", "tailwind-10-percent"],
  ])("hold the leaflet's variation %s", (id, ours) => {
    const one = caseOf(id);
    const found = LEAFLET_7_VARIATIONS.find((variation) => variation.id === ours);
    agrees(one, "takeoffFactor_1", found?.takeOffFactor_1);
    agrees(one, "landingFactor_1", found?.landingFactor_1);
  });

  it("warn of very short wet grass", () => {
    const one = caseOf("landing-very-short-wet-grass");
    agrees(one, "factorUpTo_1", surfaceFactors("european-class-b", "landing", "grass", "wet")?.[0]?.factor_1);
  });

  it("hold the factors by runway condition code", () => {
    const one = caseOf("safo19001-turboprop-ldf");
    expect(TURBOPROP_CONDITION_FACTORS.map(({ factor_1 }) => factor_1)).toEqual(one.expected["factors_1"]);
  });

  it("say nothing of snow, slush or ice where nothing is published, and nothing is needed on a dry runway", () => {
    for (const condition of ["snow", "slush", "ice", "standing-water"] as const)
      expect(surfaceFactors("european-class-b", "landing", "paved", condition)).toBeUndefined();
    expect(surfaceFactors("european-class-b", "landing", "paved", "dry")).toEqual([]);
  });
});

describe("the rule of mass and take-off distance", () => {
  it("catches percentages that were reckoned of the larger figure", () => {
    const { inputs, expected } = caseOf("trap-percent-of-larger-phak");
    const massRatio_1 = Number(inputs["weightTo_lb"]) / Number(inputs["weightFrom_lb"]);
    const least_1 = massTakeOffRule.compute({ massRatio_1 });
    expect(100 * (massRatio_1 - 1)).toBeCloseTo(Number(expected["weightIncrease_pct"]), 2);
    expect(least_1).toBeLessThanOrEqual(1 + Number(expected["distanceIncrease_pct"]) / 100);
    expect(least_1).toBeGreaterThan(1.23); // what the handbook prints is less than the physics allows
  });
});

describe("readings of a climb chart", () => {
  it("are taken from each other", () => {
    const one = caseOf("climb-chart-phak-sp4");
    const at = (name: string) => {
      const { fuel_gal, time_min, distance_NM } = one.inputs[name] as unknown as Record<string, number>; // known shape
      return {
        fuel_kg: fuel_gal ?? 0,
        time_s: toSI(time_min ?? 0, "min"),
        distance_m: toSI(distance_NM ?? 0, "NM"),
      };
    };
    const climb = climbBetween(at("atCruise"), at("atDeparture"));
    agrees(one, "fuel_gal", climb.fuel_kg);
    agrees(one, "time_min", fromSI(climb.time_s, "min"));
    agrees(one, "distance_NM", fromSI(climb.distance_m, "NM"));
  });
});
