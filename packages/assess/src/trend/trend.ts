import type { LineFit } from "@witnessmark/engine";
import type { Status } from "@witnessmark/ledger";
import type { Band } from "../reading/limit-now.ts";
import type { Referred, Shown } from "./refer.ts";

/** One value of a series. */
export interface TrendPoint extends Referred {
  readonly event: string;
  readonly at_ms: number;
  /** As shown, to the step: 5.31. */
  readonly shown: number;
  /** As it was read: `5.31 bar at 4 °C`. */
  readonly asRead: string;
  readonly by: string;
  readonly walk?: string;
}

/** What began a series anew: nothing is fitted across it. */
export interface Restart {
  readonly at_ms: number;
  /** `refilled`, `changed`, `put right` */
  readonly what: string;
  readonly event: string;
}

/** What the readings since the last restart say. */
export type TrendFit =
  | { readonly kind: "too-few"; readonly n: number; readonly needed: number }
  | {
      /**
       * `steady`: the slope's interval holds zero. `perhaps`: it does not, but so clear a slope comes about by chance
       * now and then in a series that is looked at each day. `moving`: it is no chance.
       */
      readonly kind: "steady" | "perhaps" | "moving";
      /** Robust, SI a day, with its interval of 95 %. */
      readonly slope_perDay: number;
      readonly low_perDay: number;
      readonly high_perDay: number;
      /** Least squares without the odd ones, in days after `origin_ms`: for the band, the forecast, the next reading. */
      readonly line: LineFit;
      readonly origin_ms: number;
      /** Places among the points from which on it is fitted, and which were left out as odd. */
      readonly from: number;
      readonly odd: readonly number[];
      /** The last change that chance does not explain. */
      readonly change?: { readonly between_ms: readonly [number, number]; readonly isFitted: boolean };
    };

/** A series, the same at any moment until another reading comes. */
export interface Series {
  /** `reading:<check>`, `oil-use:<point>` */
  readonly id: string;
  readonly kind: "reading" | "oil-use";
  readonly check?: string;
  readonly title: string;
  /** `tyre pressure at 15 °C` */
  readonly quantity: string;
  readonly unit: Shown;
  /** Oldest first; the latest of them when there are many. */
  readonly points: readonly TrendPoint[];
  /** Readings in all, those not here and those that could not be referred included. */
  readonly total: number;
  /** Among the latest: those that could not be referred to the same conditions. */
  readonly notReferred: number;
  readonly restarts: readonly Restart[];
  readonly limits: Band;
  /** The place of the first point after the last restart. */
  readonly from: number;
}

/** A series with what its readings say; worked out when somebody asks. */
export interface FittedSeries extends Series {
  readonly fit: TrendFit;
}

/** When a limit is met, if it goes on so. */
export interface Forecast {
  readonly limit: "low" | "high";
  readonly limitSI: number;
  readonly earliest_ms?: number;
  readonly expected_ms?: number;
  readonly latest_ms?: number;
}

/** A series with what it says today. */
export interface Trend extends FittedSeries {
  readonly sentence: string;
  /** The interval, what was left out, what a slope could hide; for the page of the series. */
  readonly more: readonly string[];
  readonly forecast?: Forecast;
  readonly status: Status;
}
