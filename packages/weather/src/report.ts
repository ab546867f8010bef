import type { Aspect, Problem } from "./aspect.ts";
import type { DayTime } from "./day-time.ts";
import type { Elements } from "./elements.ts";
import type { Group } from "./group.ts";
import type { TemperatureExtreme } from "./groups/forecast-extras.ts";
import type { Remark } from "./remarks/remark.ts";

interface ReportBase {
  /** The report as it was read: in capitals, one space between tokens. */
  readonly text: string;
  readonly tokens: readonly string[];
  /** Every token is in exactly one of these, in order. */
  readonly groups: readonly Group[];
  readonly problems: readonly Problem[];
  /** What may not be called known: the union of what its problems affect. */
  readonly open: readonly Aspect[];
  /** Whether it says whose it is and for when; without that nothing of it may be used. */
  readonly accepted: boolean;
  readonly typeWordMissing?: true;
  readonly station?: string;
  /** When it was observed, or issued. */
  readonly issued?: DayTime;
  readonly corrected?: true;
  readonly amended?: true;
  /** NIL: the report that should have been made is missing. It says nothing of anything. */
  readonly nil?: true;
}

/** A trend of the next two hours at the end of a report. */
export interface Trend {
  readonly change: "BECMG" | "TEMPO";
  /** hhmm, UTC */
  readonly from_UTC?: string;
  readonly until_UTC?: string;
  readonly at_UTC?: string;
  readonly elements: Elements;
}

/** METAR or SPECI. */
export interface Observation extends ReportBase {
  readonly kind: "observation";
  readonly type: "METAR" | "SPECI";
  readonly auto?: true;
  readonly elements: Elements;
  /** NOSIG */
  readonly noSignificantChange?: true;
  readonly trends: readonly Trend[];
  readonly remarks: readonly Remark[];
  readonly seaLevelPressure_Pa?: number;
}

export type PeriodKind = "initial" | "FM" | "BECMG" | "TEMPO" | "PROB" | "PROB TEMPO" | "INTER" | "unclear";

/** One group of a forecast. An "unclear" one begins with words that were not understood: it may hold at any time. */
export interface ForecastPeriod {
  readonly kind: PeriodKind;
  readonly probability_percent?: 30 | 40;
  /** Absent when it was not understood. */
  readonly from?: DayTime;
  readonly to?: DayTime;
  readonly text: string;
  readonly elements: Elements;
  /** What of this group may not be called known. */
  readonly open: readonly Aspect[];
}

/** TAF. */
export interface Forecast extends ReportBase {
  readonly kind: "forecast";
  readonly cancelled?: true;
  readonly validFrom?: DayTime;
  readonly validTo?: DayTime;
  readonly periods: readonly ForecastPeriod[];
  readonly extremes: readonly TemperatureExtreme[];
  /** What stands after RMK, or on amendments, in its own words. */
  readonly remark?: string;
}

export type Report = Observation | Forecast;

/** Whether a report settles an aspect. */
export const isKnown = (report: Report, aspect: Aspect): boolean =>
  report.accepted && !report.nil && !report.open.includes(aspect);
