import { roundToSafeSide } from "@witnessmark/engine";
import { type Breach, breachesOf, type LimitName } from "./breaches.ts";
import { type Conflict, conflictOf, limitNames } from "./conflict.ts";
import { FitError } from "./fit-error.ts";
import { type FitInput, volumeStep_m3 } from "./fit-input.ts";
import { flightOf, withVolumes } from "./flight.ts";
import { type FuelRange, filled, fuelRange, volumesAt } from "./fuel-range.ts";
import { withoutLimit } from "./without-limit.ts";

/** One tank of the answer. */
export interface TankTarget {
  readonly tank: string;
  /** Everything in it, with what cannot be used; rounded down. */
  readonly volume_m3: number;
  /** Beside what is in it now; below zero where some has to come out. */
  readonly more_m3: number;
}

export type MostFuel =
  | {
      readonly status: "found";
      /** Usable. */
      readonly fuel_kg: number;
      readonly tanks: readonly TankTarget[];
      /** All tanks together; below zero where there is too much now. */
      readonly more_m3: number;
      readonly more_kg: number;
      readonly endedBy: LimitName;
      /** `then take-off mass is full`. */
      readonly says: string;
    }
  | {
      readonly status: "none";
      /** The most that the limits allow and the least that the flight needs; undefined where not even dry tanks fit. */
      readonly short?: { readonly most_kg: number; readonly least_kg: number };
      readonly endedBy: LimitName;
      /** What else is broken, whatever the fuel. */
      readonly because: readonly Breach[];
      /** Single limits without which there is an answer. */
      readonly conflicts: readonly Conflict[];
      readonly says: string;
    };

/** Words for the limit that ends it. */
export function thenFull({ family, name }: LimitName): string {
  switch (family) {
    case "station":
    case "group":
      return `then ${name.replace("the limit of ", "")} is full`;
    case "floor":
    case "ramp":
    case "take-off":
    case "landing":
    case "zero-fuel":
    case "holds":
      return `then ${name} is full`;
    case "tanks":
      return "then the tanks are full";
    case "minimum-flight":
    case "lateral":
    case "imbalance":
    case "fuel":
    case "forward":
    case "aft":
    case "envelope-top":
    case "envelope-bottom":
      return `then ${name} is reached`;
    default:
      return family satisfies never;
  }
}

const capOf = ({ caps }: FuelRange): FuelRange["caps"][number] => {
  const [first] = caps;
  if (first === undefined) throw new Error("a range of fuel without the tanks' own limit"); // fuelRange gives it
  return first;
};

/** The contents of the tanks for so much fuel, rounded down and confirmed; undefined where the engine refuses them. */
function target(input: FitInput, full: FitInput, fuel_kg: number): FitInput | undefined {
  const step = volumeStep_m3(input);
  const exact = volumesAt(full, fuel_kg);
  const least = Object.fromEntries(input.tanks.map(({ id, unusable_m3 }) => [id, unusable_m3]));
  const rounded = Object.fromEntries(
    Object.entries(exact).map(([id, volume]) => [
      id,
      Math.max(Math.min(volume, least[id] ?? 0), Math.min(volume, roundToSafeSide(volume, step, "down"))),
    ]),
  );
  // Where not one step of freedom is left, the unrounded contents are the answer, a hair below the limit.
  const tries = [rounded, exact, volumesAt(full, fuel_kg * (1 - 1e-11))];
  return tries.map((volumes) => withVolumes(input, volumes)).find((one) => breachesOf(one).length === 0);
}

/**
 * The most fuel with this load, the tanks filled in the reverse of the order in which they are burnt, whatever is in
 * them now.
 *
 * @throws {FitError} `unconfirmed`
 */
export function mostFuel(input: FitInput): MostFuel {
  const full = filled(input);
  const range = fuelRange(full);
  const { name, most_kg } = capOf(range);
  const elsewhere = breachesOf(input).filter(({ family }) =>
    ["station", "floor", "group", "holds"].includes(family),
  );
  if (elsewhere.length > 0 || most_kg < range.least_kg * (1 - 1e-12)) {
    return noFuel(input, range, elsewhere);
  }
  const answer = target(input, full, most_kg);
  if (answer === undefined) {
    throw new FitError("unconfirmed", `${most_kg} kg of fuel, which the engine refuses; report the load`);
  }
  const tanks = answer.tanks.map(({ id, volume_m3 }): TankTarget => {
    const now = input.tanks.find((tank) => tank.id === id)?.volume_m3 ?? 0;
    return { tank: id, volume_m3, more_m3: volume_m3 - now };
  });
  const fuel_kg = flightOf(answer).ramp.fuel_kg;
  return {
    status: "found",
    fuel_kg,
    tanks,
    more_m3: tanks.reduce((sum, { more_m3 }) => sum + more_m3, 0),
    more_kg: fuel_kg - flightOf(input).ramp.fuel_kg,
    endedBy: name,
    says: thenFull(name),
  };
}

function noFuel(input: FitInput, range: FuelRange, because: readonly Breach[]): MostFuel {
  const { name, most_kg } = capOf(range);
  const used = input.items.map(({ at }) => at);
  const conflicts = limitNames(input, used).flatMap((limit) => {
    const open = filled(withoutLimit(input, limit));
    const without = fuelRange(open);
    const cap = capOf(without);
    if (cap.most_kg < without.least_kg) return [];
    // The least that the flight needs passes the limit by least.
    return conflictOf(limit, withVolumes(input, volumesAt(filled(input), without.least_kg))) ?? [];
  });
  const says =
    because.length > 0
      ? because.map((one) => one.says).join("; ")
      : most_kg < 0
        ? `no fuel can be taken: ${name.name} is passed without it`
        : `the flight needs ${range.least_kg.toFixed(1)} kg, and at ${most_kg.toFixed(1)} kg ${thenFull(name).slice(5)}`;
  return {
    status: "none",
    ...(most_kg >= 0 ? { short: { most_kg, least_kg: range.least_kg } } : {}),
    endedBy: name,
    because,
    conflicts,
    says,
  };
}
