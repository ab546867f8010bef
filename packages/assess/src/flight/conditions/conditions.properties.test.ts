import type { FlightPlan, PlannedField, TypedConditions } from "@witnessmark/ledger";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fieldFigures } from "./field-figures.ts";
import { at, flightWith, one, turboprop, verdictsOf } from "./testing/island.ts";

/** How far from clear: a limit that is tightened, or weather that is worse, never brings a lower one. */
const BADNESS = { clear: 0, caution: 1, stop: 2, open: 3 } as const;

interface Given {
  readonly oat_degC: number;
  readonly mass_kg: number;
  readonly headwind_kt: number;
  readonly crosswind_kt: number;
  readonly qnh_hPa: number;
}

const given: fc.Arbitrary<Given> = fc.record({
  oat_degC: fc.integer({ min: -30, max: 45 }),
  mass_kg: fc.integer({ min: 2000, max: 2800 }),
  headwind_kt: fc.integer({ min: -12, max: 30 }),
  crosswind_kt: fc.integer({ min: 0, max: 25 }),
  qnh_hPa: fc.integer({ min: 940, max: 1050 }),
});

const RUNWAY_deg = 290;

function typedOf({ oat_degC, headwind_kt, crosswind_kt, qnh_hPa }: Given): TypedConditions {
  const off_deg = (Math.atan2(crosswind_kt, headwind_kt) * 180) / Math.PI;
  return {
    observedAt: "2026-11-12T08:00:00Z",
    windFrom: { value: (RUNWAY_deg + off_deg + 360) % 360, unit: "deg" },
    windSpeed: { value: Math.hypot(crosswind_kt, headwind_kt), unit: "kt" },
    oat: { value: oat_degC, unit: "degC" },
    dewPoint: { value: oat_degC - 2, unit: "degC" },
    qnh: { value: qnh_hPa, unit: "hPa" },
    visibility: { value: 10, unit: "km" },
    ceiling: { value: 2200, unit: "ft" },
  };
}

const fieldOf = (conditions: Given): PlannedField => ({
  code: "ZZQN",
  runway: "29",
  condition: "dry",
  typed: typedOf(conditions),
});

const needed = (conditions: Given): number | undefined => {
  const flight = flightWith({ destination: fieldOf(conditions) });
  const masses = { landing_kg: conditions.mass_kg };
  const figures = fieldFigures(turboprop, flight, "destination", at("08:05"), { masses });
  return figures?.distance.value?.nearest.needed_m;
};

/** More or the same; a figure that the table no longer has is worse than any. */
const notBetter = (worse: number | undefined, than: number | undefined): boolean =>
  worse === undefined || (than !== undefined && worse >= than - 1e-6);

const landing = (plan: Partial<FlightPlan>, mass_kg: number) =>
  verdictsOf(flightWith(plan), { masses: { landing_kg: mass_kg, takeOff_kg: mass_kg } });

describe("a landing", () => {
  it("is never longer with more headwind or less tailwind", () => {
    fc.assert(
      fc.property(given, fc.integer({ min: 1, max: 15 }), (conditions, more) => {
        const windier = { ...conditions, headwind_kt: conditions.headwind_kt + more };
        return notBetter(needed(conditions), needed(windier));
      }),
    );
  });

  it("is never shorter when it is hotter, heavier, or the pressure lower", () => {
    fc.assert(
      fc.property(given, fc.integer({ min: 1, max: 20 }), (conditions, more) => {
        const than = needed(conditions);
        return (
          notBetter(needed({ ...conditions, oat_degC: conditions.oat_degC + more }), than) &&
          notBetter(needed({ ...conditions, mass_kg: conditions.mass_kg + more * 10 }), than) &&
          notBetter(needed({ ...conditions, qnh_hPa: conditions.qnh_hPa - more }), than)
        );
      }),
    );
  });

  it("is never clear off the table: above 40 °C, above 2740 kg", () => {
    fc.assert(
      fc.property(given, fc.boolean(), fc.integer({ min: 1, max: 15 }), (conditions, hot, beyond) => {
        const off = hot
          ? { ...conditions, oat_degC: 40 + beyond }
          : { ...conditions, mass_kg: 2740 + beyond };
        const all = landing({ destination: fieldOf(off) }, off.mass_kg);
        expect(one(all, "runway:destination:landing").status).toBe("open");
      }),
    );
  });
});

describe("no verdict improves", () => {
  const statusesOf = (all: ReturnType<typeof verdictsOf>): ReadonlyMap<string, keyof typeof BADNESS> =>
    new Map(all.map(({ id, status }) => [id, status]));

  it("when a limit of the pilot's own is tightened, or asked for at all", () => {
    const limit = fc.option(fc.integer({ min: 0, max: 30 }), { nil: undefined });
    const factor = fc.option(fc.integer({ min: 100, max: 200 }), { nil: undefined });
    fc.assert(
      fc.property(
        given,
        limit,
        factor,
        fc.integer({ min: 0, max: 10 }),
        (conditions, crosswind, factor_percent, by) => {
          const own = (
            kt: number | undefined,
            percent: number | undefined,
            height_ft: number,
          ): FlightPlan["own"] => ({
            ...(kt === undefined ? {} : { crosswind: { value: kt, unit: "kt" } }),
            ...(percent === undefined ? {} : { landingFactor_1: percent / 100 }),
            ceiling: { value: height_ft, unit: "ft" },
            visibility: { value: height_ft * 5, unit: "m" },
          });
          const destination = fieldOf(conditions);
          const loose = own(crosswind, factor_percent, 1000);
          const tight = own(
            Math.max(0, (crosswind ?? 30) - by),
            (factor_percent ?? 100) + by,
            1000 + by * 200,
          );
          const before = statusesOf(
            landing({ destination, ...(loose === undefined ? {} : { own: loose }) }, conditions.mass_kg),
          );
          const after = statusesOf(
            landing({ destination, ...(tight === undefined ? {} : { own: tight }) }, conditions.mass_kg),
          );
          for (const [id, status] of before) {
            const now = after.get(id);
            expect(now, id).toBeDefined();
            if (now === undefined || status === "open") continue;
            expect(BADNESS[now], `${id}: ${status} became ${now}`).toBeGreaterThanOrEqual(BADNESS[status]);
          }
        },
      ),
    );
  });

  it("when something of the weather is not known any more", () => {
    const parts = ["windSpeed", "oat", "dewPoint", "qnh", "visibility", "ceiling"] as const;
    fc.assert(
      fc.property(given, fc.constantFrom(...parts), (conditions, part) => {
        const destination = fieldOf(conditions);
        const { [part]: taken, ...typed } = typedOf(conditions);
        expect(taken).toBeDefined();
        const before = statusesOf(landing({ destination }, conditions.mass_kg));
        const after = statusesOf(landing({ destination: { ...destination, typed } }, conditions.mass_kg));
        for (const [id, status] of after) {
          if (status !== "clear") continue;
          expect(before.get(id), id).toBe("clear");
        }
      }),
    );
  });
});

describe("any text of a report", () => {
  it("is answered: nothing throws, and every verdict has words", () => {
    const token = fc.constantFrom(
      "METAR",
      "ZZQN",
      "120750Z",
      "24014G22KT",
      "VRB04KT",
      "00000KT",
      "///15KT",
      "9999",
      "0200",
      "FG",
      "-RA",
      "+TSRA",
      "BKN022",
      "OVC///",
      "VV///",
      "CAVOK",
      "05/03",
      "M10/M12",
      "//////",
      "Q1008",
      "Q2992",
      "A2992",
      "NOSIG",
      "TEMPO",
      "BECMG",
      "20030KT",
      "RMK",
      "NIL",
      "180V300",
      "P99KT",
      "XX",
      "TAF",
      "1206/1306",
    );
    fc.assert(
      fc.property(fc.array(token, { minLength: 1, maxLength: 14 }), fc.boolean(), (tokens, whole) => {
        const text = whole ? `METAR ZZQN 120750Z ${tokens.join(" ")}` : tokens.join(" ");
        const report = { text, receivedAt: "2026-11-12T08:00:00Z" };
        const all = landing(
          { destination: { code: "ZZQN", runway: "29", condition: "wet", metar: report, taf: report } },
          2500,
        );
        for (const verdict of all) expect(verdict.says, verdict.id).not.toMatch(/NaN|undefined|Infinity/);
        for (const verdict of all) expect(verdict.says.length, verdict.id).toBeGreaterThan(0);
        expect(new Set(all.map(({ id }) => id)).size).toBe(all.length);
      }),
    );
  });
});
