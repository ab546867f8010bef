export type { Arrangement, Way } from "./arrange.ts";
export type { Breach, LimitFamily, LimitName } from "./breaches.ts";
export type { Conflict } from "./conflict.ts";
export type { Move } from "./fewest-moves.ts";
export { FitError, type FitErrorCode } from "./fit-error.ts";
export type {
  FitEnvelope,
  FitGroup,
  FitInput,
  FitItem,
  FitLimits,
  FitStation,
  FitTank,
} from "./fit-input.ts";
export type { LastResort } from "./last-resort.ts";
export type { WasmPlace } from "./load-highs.ts";
export type { Ballast, MostAtStation, NothingAtStation } from "./most-at-station.ts";
export type { MostFuel, TankTarget } from "./most-fuel.ts";
export { type Fit, type NotAnswered, openFit } from "./open-fit.ts";
export type { OtherWays } from "./other-ways.ts";
export type { Patience, StopReason } from "./stop.ts";
