import { roundToSafeSide } from "@witnessmark/engine";
import { type Breach, breachesOf, type LimitName } from "./breaches.ts";
import { type Conflict, conflictOf, limitNames } from "./conflict.ts";
import { FitError } from "./fit-error.ts";
import { type FitInput, massStep_kg } from "./fit-input.ts";
import { type MassAtStation, massAtStation } from "./mass-at-station.ts";
import { thenFull } from "./most-fuel.ts";
import { withoutLimit } from "./without-limit.ts";

export type MostAtStation =
  | {
      readonly status: "found";
      readonly station: string;
      /** More, beside what is there; rounded down. */
      readonly most_kg: number;
      /** Above zero where the flight is within its limits only with so much more there. */
      readonly least_kg: number;
      readonly endedBy: readonly [LimitName, ...LimitName[]];
      /** `then landing mass is full`. */
      readonly says: string;
    }
  | NothingAtStation;

export interface NothingAtStation {
  readonly status: "none";
  readonly station: string;
  /** What the load breaks as it is. */
  readonly because: readonly Breach[];
  /** Single limits without which there is an answer. */
  readonly conflicts: readonly Conflict[];
  readonly says: string;
}

export type Ballast =
  | {
      readonly status: "found";
      readonly station: string;
      /** The least that is needed, rounded up; zero where the load needs none. */
      readonly needed_kg: number;
      /** The most that may lie there without leaving the limits again. */
      readonly most_kg: number;
      readonly says: string;
    }
  | NothingAtStation;

/** The rounded mass nearest to one end of what is allowed that the engine confirms. */
function rounded(input: FitInput, station: string, found: MassAtStation, end: "least" | "most"): number {
  const step = massStep_kg(input);
  const sign = end === "most" ? -1 : 1;
  const intervals = end === "most" ? [...found.allowed].reverse() : found.allowed;
  for (const { low, high } of intervals) {
    const first = end === "most" ? roundToSafeSide(high, step, "down") : roundToSafeSide(low, step, "up");
    for (const mass_kg of [first, Number((first + sign * step).toPrecision(15))]) {
      if (mass_kg < 0 || mass_kg < low - 1e-9 || mass_kg > high + 1e-9) continue;
      if (breachesOf(input, { station, mass_kg }).length === 0) return mass_kg;
    }
    // Less than a step of freedom: what is there is the answer, unrounded.
    for (const mass_kg of [end === "most" ? high : low, (low + high) / 2]) {
      if (breachesOf(input, { station, mass_kg }).length === 0) return mass_kg;
    }
  }
  throw new FitError("unconfirmed", `no mass in ${station} that the engine confirms; report the load`);
}

/** The limits that are passed by a little more than the most. */
function ends(input: FitInput, station: string, found: MassAtStation): readonly [LimitName, ...LimitName[]] {
  const high = found.allowed.at(-1)?.high ?? 0;
  const caps = found.caps.filter((cap) => cap.high <= high + 1e-9).map(({ name }) => name);
  const [first, ...others] = caps;
  if (first !== undefined) return [first, ...others];
  for (const more of [1e-6, 1e-3, massStep_kg(input)]) {
    const [worst, ...rest] = breachesOf(input, { station, mass_kg: high + more });
    if (worst !== undefined) return [nameOf(worst), ...rest.map(nameOf)];
  }
  throw new FitError("unconfirmed", `${station}: ${high} kg is not the most; report the load`);
}

const nameOf = ({ family, id, name }: LimitName): LimitName => ({ family, id, name });

function nothing(input: FitInput, station: string): NothingAtStation {
  const because = breachesOf(input);
  const used = [...new Set([station, ...input.items.map(({ at }) => at)])];
  const conflicts = limitNames(input, used).flatMap((limit) => {
    const { allowed } = massAtStation(withoutLimit(input, limit), station);
    const tried = allowed
      .flatMap(({ low, high }) => [low, high])
      .flatMap((mass_kg) => conflictOf(limit, input, { station, mass_kg }) ?? []);
    const most = (one: Conflict): number => Math.max(...one.breaches.map(({ by }) => by));
    return tried.sort((a, b) => most(a) - most(b)).slice(0, 1);
  });
  const reasons = because.map(({ says }) => says);
  return {
    status: "none",
    station,
    because,
    conflicts,
    says: `nothing put there brings the flight within its limits: ${reasons.join("; ")}`,
  };
}

/** Whether something is broken that no mass at one station can mend. */
const beyondMending = (input: FitInput): boolean =>
  breachesOf(input).some(({ family }) =>
    ["station", "floor", "group", "holds", "imbalance", "fuel"].includes(family),
  );

/**
 * The most that still fits in one place, everything else staying as it is.
 *
 * @throws {FitError} `unconfirmed`
 */
export function mostAtStation(input: FitInput, station: string): MostAtStation {
  const found = massAtStation(input, station);
  if (found.allowed.length === 0 || beyondMending(input)) return nothing(input, station);
  const endedBy = ends(input, station, found);
  const [first] = found.allowed;
  return {
    status: "found",
    station,
    most_kg: rounded(input, station, found, "most"),
    least_kg: first === undefined || first.low === 0 ? 0 : rounded(input, station, found, "least"),
    endedBy,
    says: thenFull(endedBy[0]),
  };
}

/**
 * The least ballast at a station that brings the whole flight within its limits.
 *
 * @throws {FitError} `unconfirmed`
 */
export function ballastAt(input: FitInput, station: string): Ballast {
  const found = massAtStation(input, station);
  if (found.allowed.length === 0 || beyondMending(input)) return nothing(input, station);
  const needed_kg = rounded(input, station, found, "least");
  const most_kg = rounded(input, station, { ...found, allowed: found.allowed.slice(0, 1) }, "most");
  return {
    status: "found",
    station,
    needed_kg,
    most_kg,
    says: needed_kg === 0 ? "no ballast is needed" : `${needed_kg} kg of ballast brings it within its limits`,
  };
}
