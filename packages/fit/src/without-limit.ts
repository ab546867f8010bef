import type { LimitName } from "./breaches.ts";
import type { FitInput, FitLimits } from "./fit-input.ts";
import { opened } from "./opened-envelope.ts";

/** More than any aircraft of this kind weighs. */
const NO_LIMIT_kg = 1e6;

const LIMIT_OF: Readonly<Record<string, keyof FitLimits>> = {
  ramp: "ramp_kg",
  "zero-fuel": "zeroFuel_kg",
  landing: "landing_kg",
  "minimum-flight": "minimumFlight_kg",
  lateral: "lateralMoment_kgm",
  imbalance: "fuelImbalance_kg",
};

/** The same load with one limit taken away, to see whether that one is what stands in the way. */
export function withoutLimit(input: FitInput, { family, id }: LimitName): FitInput {
  const stations = (
    change: (station: FitInput["stations"][number]) => FitInput["stations"][number],
  ): FitInput => ({
    ...input,
    stations: input.stations.map((station) => (station.id === id ? change(station) : station)),
  });
  switch (family) {
    case "station":
      return stations((station) => ({ ...station, max_kg: NO_LIMIT_kg }));
    case "floor":
      return stations(({ floor: _, ...rest }) => rest);
    case "holds":
      return stations(({ holds: _, ...rest }) => rest);
    case "group":
      return { ...input, groups: (input.groups ?? []).filter((group) => group.id !== id) };
    case "take-off":
      return { ...input, limits: { ...input.limits, takeOff_kg: NO_LIMIT_kg } };
    case "fuel":
    case "tanks":
      return input;
    case "forward":
    case "aft":
    case "envelope-top":
    case "envelope-bottom":
      return {
        ...input,
        envelopes: input.envelopes.map((one) => (one.id === id ? opened(one, family) : one)),
      };
    case "ramp":
    case "zero-fuel":
    case "landing":
    case "minimum-flight":
    case "lateral":
    case "imbalance": {
      const left = Object.entries(input.limits).filter(([name]) => name !== LIMIT_OF[family]);
      return { ...input, limits: { takeOff_kg: input.limits.takeOff_kg, ...Object.fromEntries(left) } };
    }
    default:
      return family satisfies never;
  }
}
