import { kilograms, minutes } from "./edges.ts";
import type { ReserveBurn, ReserveInput, ReserveTime, RulePack } from "./rule-pack.ts";
import { type Citations, cannotTell, figure, type MissingInput, type Ruling, someMissing } from "./ruling.ts";

/** What the aircraft burns, by what a reserve may be reckoned at. */
export interface Burns {
  readonly cruise_kgPerS?: number | undefined;
  /** At holding speed, 1,500 ft above the field. */
  readonly holding_kgPerS?: number | undefined;
  readonly maxContinuousCruise_kgPerS?: number | undefined;
}

const BURN_WORDS: Readonly<Record<ReserveBurn, { readonly input: keyof Burns; readonly what: string }>> = {
  "normal-cruise": { input: "cruise_kgPerS", what: "the burn in normal cruise" },
  holding: { input: "holding_kgPerS", what: "the burn at holding speed, 1,500 ft above the field" },
  "max-continuous-cruise": {
    input: "maxContinuousCruise_kgPerS",
    what: "the burn at maximum continuous cruise power",
  },
};

export interface FinalReserve extends ReserveTime {
  readonly fuel_kg: number;
}

/** What must be left at the end, as time and as fuel. */
export function finalReserve(
  pack: RulePack,
  input: ReserveInput & { readonly burns?: Burns | undefined },
): Ruling<FinalReserve> {
  const time = pack.finalReserveTime(input);
  if (!time.known) return time;
  const { input: name, what } = BURN_WORDS[time.burn];
  const burn_kgPerS = figure(input.burns?.[name]);
  if (burn_kgPerS === undefined || burn_kgPerS === 0)
    return cannotTell(time.citations, [{ input: name, what }], time.steps);
  const fuel_kg = time.time_s * burn_kgPerS;
  return {
    ...time,
    fuel_kg,
    steps: [...time.steps, `${minutes(time.time_s)} at ${what.slice(4)} is ${kilograms(fuel_kg)}.`],
  };
}

export interface RequiredFuelInput extends ReserveInput {
  readonly burns?: Burns | undefined;
  /** From take-off to landing at the destination. */
  readonly trip_kg?: number | undefined;
  readonly taxi_kg?: number | undefined;
  readonly contingency_kg?: number | undefined;
  /** From the destination to the alternate. */
  readonly alternate_kg?: number | undefined;
  readonly extra_kg?: number | undefined;
  /** What `alternateNeeded` has answered; without it an instrument flight cannot be reckoned. */
  readonly alternateNeeded?: boolean | undefined;
}

export type FuelPartId = "taxi" | "trip" | "contingency" | "alternate" | "final-reserve" | "extra";

export interface FuelPart {
  readonly id: FuelPartId;
  readonly fuel_kg: number;
  /** Asked by the rule, or planned by the pilot on top of it. */
  readonly askedBy: "rule" | "plan";
}

export interface RequiredFuel {
  /** All of it together, at engine start; usable fuel. Round up. */
  readonly required_kg: number;
  /** What the rule itself asks. */
  readonly byRule_kg: number;
  readonly reserve: FinalReserve;
  readonly parts: readonly FuelPart[];
}

/** What the pilot plans besides: left out is nothing, but a figure that is none is not nothing. */
function planned(input: RequiredFuelInput, lacks: MissingInput[]): readonly FuelPart[] {
  const plans = [
    ["taxi", "taxi_kg", input.taxi_kg],
    ["contingency", "contingency_kg", input.contingency_kg],
    ["extra", "extra_kg", input.extra_kg],
  ] as const;
  return plans.flatMap(([id, name, given_kg]) => {
    if (given_kg === undefined) return [];
    const fuel_kg = figure(given_kg);
    if (fuel_kg === undefined) {
      lacks.push({ input: name, what: `the ${id} fuel (${given_kg} is no figure)` });
      return [];
    }
    return [{ id, fuel_kg, askedBy: "plan" as const }];
  });
}

/** The fuel to an alternate: asked by the rule, or carried because the pilot wants one. */
function toAlternate(input: RequiredFuelInput, lacks: MissingInput[]): readonly FuelPart[] {
  const isAsked = input.flightRules === "IFR" ? input.alternateNeeded : false;
  if (isAsked === undefined) {
    lacks.push({ input: "alternateNeeded", what: "whether an alternate is needed" });
    return [];
  }
  if (input.alternate_kg === undefined && !isAsked) return [];
  const fuel_kg = figure(input.alternate_kg);
  if (fuel_kg === undefined) {
    lacks.push({ input: "alternate_kg", what: "the fuel to the alternate" });
    return [];
  }
  return [{ id: "alternate", fuel_kg, askedBy: isAsked ? "rule" : "plan" }];
}

const sum = (parts: readonly FuelPart[]): number =>
  parts.reduce((total_kg, { fuel_kg }) => total_kg + fuel_kg, 0);

const lineOf = ({ id, fuel_kg, askedBy }: FuelPart): string =>
  `${id.replace("-", " ")}: ${kilograms(fuel_kg)}${askedBy === "plan" ? ", planned on top of the rule" : ""}.`;

/** The fuel that must be aboard: trip, alternate where one is needed and final reserve by the rule, the rest as planned. */
export function requiredFuel(pack: RulePack, input: RequiredFuelInput): Ruling<RequiredFuel> {
  const reserve = finalReserve(pack, input);
  const lacks: MissingInput[] = reserve.known ? [] : [...reserve.missing];
  const trip_kg = figure(input.trip_kg);
  if (trip_kg === undefined) lacks.push({ input: "trip_kg", what: "the trip fuel" });
  const others = [...planned(input, lacks), ...toAlternate(input, lacks)];
  const missing = someMissing(lacks);
  const citations: Citations = reserve.citations;
  if (missing !== undefined || trip_kg === undefined || !reserve.known)
    return cannotTell(citations, missing ?? [{ input: "trip_kg", what: "the trip fuel" }], reserve.steps);
  const parts: readonly FuelPart[] = [
    { id: "trip", fuel_kg: trip_kg, askedBy: "rule" },
    { id: "final-reserve", fuel_kg: reserve.fuel_kg, askedBy: "rule" },
    ...others,
  ];
  const required_kg = sum(parts);
  const byRule_kg = sum(parts.filter(({ askedBy }) => askedBy === "rule"));
  return {
    known: true,
    required_kg,
    byRule_kg,
    reserve,
    parts,
    citations,
    text: `${kilograms(required_kg)} of usable fuel at engine start, ${kilograms(byRule_kg)} of it by the rule.`,
    steps: [...reserve.steps, ...parts.map(lineOf)],
  };
}
