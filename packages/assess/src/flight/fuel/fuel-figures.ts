import type { Book } from "@witnessmark/book";
import type { FlightPlan, PlannedFlight, Status } from "@witnessmark/ledger";
import { type FuelPart, type RequiredFuel, type RequiredFuelInput, requiredFuel } from "../../rules/fuel.ts";
import { rulePacks } from "../../rules/rule-packs.ts";
import type { Citation, Ruling } from "../../rules/ruling.ts";
import { densityOf } from "../density.ts";
import type { InputFault, MissingPart } from "../figures.ts";
import type { LoadFigures } from "../load/figures.ts";
import { nightOfFlight } from "../night-of-flight.ts";
import { type PlannedBurn, plannedBurn } from "../planned-burn.ts";
import type { LastFlightFuel } from "./from-last-flight.ts";
import type { TankReconciled } from "./tank-readings.ts";
import { type WholeFuel, wholeFuel } from "./whole-fuel.ts";

/** What must be in the tanks and what is, from the book, the plan and the rules alone. */
export interface FuelFigures {
  readonly status: Status;
  /** Usable fuel at start-up: what is there, what must be, what is left over. */
  readonly usable_kg: number | undefined;
  readonly required_kg: number | undefined;
  /** What the rule itself asks of it. */
  readonly byRule_kg: number | undefined;
  readonly left_kg: number | undefined;
  readonly parts: readonly FuelPart[];
  readonly reserve?: { readonly time_s: number; readonly fuel_kg: number };
  /** Of the steps of the rule, as text. */
  readonly steps: readonly string[];
  readonly citations: readonly Citation[];
  /** Whether any of the flight is by night; undefined is taken as night. */
  readonly night: boolean | undefined;
  /**
   * What would be needed with all of the trip at the burn of the climb, where the trip is the book's; undefined where
   * the book has no such burn.
   */
  readonly atMost_kg: number | undefined;
  /** From start-up at cruise burn until the usable fuel is gone; after that of the taxi. */
  readonly endurance_s: number | undefined;
  /** Usable fuel at the landing, and how long it lasts at cruise burn. */
  readonly landing_kg: number | undefined;
  readonly landing_s: number | undefined;
  /** Where the totaliser was read: all ways of knowing the fuel, together. */
  readonly whole?: WholeFuel;
  readonly burn: PlannedBurn;
  readonly faults: readonly InputFault[];
  readonly missing: readonly MissingPart[];
}

const day = (iso: string): string | undefined => {
  const at_ms = Date.parse(iso);
  return Number.isNaN(at_ms) ? undefined : new Date(at_ms).toISOString().slice(0, 10);
};

/** Lands where it took off, and was said to stay in sight of that field. */
const isLocal = ({ from, to }: PlannedFlight, { route, alternate }: FlightPlan): boolean =>
  route?.inSightOfField === true &&
  alternate === undefined &&
  from.trim() !== "" &&
  from.trim() === to.trim();

interface Asked {
  readonly ruling: Ruling<RequiredFuel>;
  readonly atMost: Ruling<RequiredFuel>;
}

/** What the rules ask; with the night not known, what they ask by night, which is never less. */
function asked(
  book: Pick<Book, "fuel">,
  flight: PlannedFlight,
  plan: FlightPlan,
  burn: PlannedBurn,
  night: boolean | undefined,
): Asked | undefined {
  const pack = rulePacks.get(plan.rulePack);
  if (pack === undefined) return undefined;
  const rates = book.fuel?.burn;
  const input: RequiredFuelInput = {
    flightRules: plan.flightRules,
    night: night ?? true,
    on: day(flight.offBlocks),
    local: isLocal(flight, plan),
    burns: {
      cruise_kgPerS: rates?.cruise_kgPerS,
      holding_kgPerS: rates?.hold_kgPerS,
      maxContinuousCruise_kgPerS: rates?.maxContinuous_kgPerS,
    },
    trip_kg: burn.trip_kg,
    taxi_kg: burn.taxi_kg,
    contingency_kg: burn.contingency_kg,
    extra_kg: burn.extra_kg,
    alternateNeeded: plan.alternate === undefined ? undefined : true,
    alternate_kg: plan.alternate === undefined && burn.alternate_kg === 0 ? undefined : burn.alternate_kg,
  };
  const ruling = requiredFuel(pack, input);
  const isSame = burn.tripMost_kg === burn.trip_kg;
  if (isSame) return { ruling, atMost: ruling };
  const { tripMost_kg, contingency_1 } = burn;
  const contingency_kg = tripMost_kg === undefined ? undefined : contingency_1 * tripMost_kg;
  return { ruling, atMost: requiredFuel(pack, { ...input, trip_kg: tripMost_kg, contingency_kg }) };
}

/** The climb burns more than the cruise; nothing of it is made up. */
const CLIMB: MissingPart = {
  part: "book-fuel",
  what: "what it burns in the climb or at most power, in the book; or the trip fuel, in the plan",
};

const ROUNDING_KG = 1e-9;

function statusOf(
  usable_kg: number,
  required_kg: number,
  atMost_kg: number | undefined,
  byDay_kg: number,
): Status {
  if (usable_kg < byDay_kg - ROUNDING_KG) return "stop";
  if (usable_kg < required_kg - ROUNDING_KG) return "open"; // enough by day, and nobody knows whether it is day
  if (atMost_kg === undefined) return "open"; // too little is too little, but nobody knows what the climb takes
  return usable_kg < atMost_kg - ROUNDING_KG ? "caution" : "clear";
}

/** What the tanks have less than planned, by what was read on them where the two do not fit. */
const shortByReadings_kg = (read: readonly TankReconciled[], density_kgPerM3: number): number =>
  read
    .filter(({ fits, together, planned_m3 }) => !fits && together.least_kg < planned_m3 * density_kgPerM3)
    .reduce((sum, { together, planned_m3 }) => sum + planned_m3 * density_kgPerM3 - together.least_kg, 0);

/**
 * The fuel of a flight.
 *
 * @param load its figures, for what is planned to be in the tanks
 * @param read what was read on them: where that is less than planned, it counts
 * @param last what there is by arithmetic from the last flight
 */
export function fuelFigures(
  book: Pick<Book, "loading" | "fuel" | "fields">,
  flight: PlannedFlight,
  plan: FlightPlan,
  load: Pick<LoadFigures, "fuel">,
  read: readonly TankReconciled[] = [],
  last?: LastFlightFuel,
): FuelFigures {
  const density = densityOf(book, plan);
  const burn = plannedBurn(book, plan, density.density_kgPerM3);
  const time_s = burn.time_s;
  const night = nightOfFlight(book, flight, time_s);
  const byTanks_kg = minus(load.fuel.usable_kg, shortByReadings_kg(read, density.density_kgPerM3 ?? 0));
  const whole = wholeFuel(book, plan, read, load.fuel.usable_kg, density.density_kgPerM3, last);
  // less than planned by all that is known counts; more never does
  const usable_kg =
    byTanks_kg === undefined || whole === undefined || whole.fits
      ? byTanks_kg
      : Math.min(byTanks_kg, whole.believed_kg);
  const found = asked(book, flight, plan, burn, night);
  const pack: readonly MissingPart[] =
    found === undefined ? [{ part: "rules", what: `rules called "${plan.rulePack}"` }] : [];
  const ruling = found?.ruling;
  const lacks: readonly MissingPart[] =
    ruling === undefined || ruling.known
      ? []
      : ruling.missing.map(({ input, what }) => ({ part: input, what }));
  const missing = [
    ...burn.missing,
    ...pack,
    ...(burn.missing.length > 0 || burn.faults.length > 0 ? [] : lacks),
  ];
  const cruise = book.fuel?.burn.cruise_kgPerS;
  const afterTaxi_kg = minus(usable_kg, burn.taxi_kg);
  const landing_kg = minus(afterTaxi_kg, burn.trip_kg);
  const lasts = (fuel_kg: number | undefined): number | undefined =>
    fuel_kg === undefined || cruise === undefined || cruise <= 0 ? undefined : Math.max(0, fuel_kg) / cruise;
  const base = {
    usable_kg,
    ...(whole === undefined ? {} : { whole }),
    steps: ruling?.steps ?? [],
    citations: ruling?.citations ?? [],
    night,
    endurance_s: lasts(afterTaxi_kg),
    landing_kg,
    landing_s: lasts(landing_kg),
    burn,
    faults: burn.faults,
    missing,
  };
  if (ruling === undefined || !ruling.known || found === undefined) {
    return {
      ...base,
      status: "open",
      required_kg: undefined,
      byRule_kg: undefined,
      left_kg: undefined,
      parts: [],
      atMost_kg: undefined,
    };
  }
  const { required_kg, byRule_kg, parts, reserve } = ruling;
  const atMost_kg = found.atMost.known ? found.atMost.required_kg : undefined;
  const byDay = night === undefined ? asked(book, flight, plan, burn, false)?.ruling : ruling;
  const byDay_kg = byDay?.known === true ? byDay.required_kg : required_kg;
  const isSound = usable_kg !== undefined && burn.faults.length === 0 && missing.length === 0;
  return {
    ...base,
    missing: atMost_kg === undefined ? [...missing, CLIMB] : missing,
    status: isSound ? statusOf(usable_kg, required_kg, atMost_kg, byDay_kg) : "open",
    required_kg,
    byRule_kg,
    left_kg: minus(usable_kg, required_kg),
    parts,
    reserve: { time_s: reserve.time_s, fuel_kg: reserve.fuel_kg },
    atMost_kg,
  };
}

const minus = (from: number | undefined, what: number | undefined): number | undefined =>
  from === undefined || what === undefined ? undefined : from - what;
