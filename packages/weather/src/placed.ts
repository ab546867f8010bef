import { type Aspect, EVERYTHING, impossible, joinAspects, type Problem } from "./aspect.ts";
import { dayTimeText } from "./day-time.ts";
import { problemOf } from "./group.ts";
import { durationText, instantNear, isoMinute } from "./instant.ts";
import type { Forecast, ForecastPeriod, Observation, Report } from "./report.ts";

/** Clocks differ, and stations send a little early: this far ahead of the clock is no report of the future. */
export const CLOCK_ERROR_MS = 5 * 60_000;

/** A report with its full date. The month and year come from when it was received. */
export interface PlacedObservation {
  readonly kind: "observation";
  readonly report: Observation;
  readonly observed_ms: number;
  readonly problems: readonly Problem[];
  readonly open: readonly Aspect[];
}

export interface PlacedPeriod extends ForecastPeriod {
  /** Its index in `report.periods`. */
  readonly index: number;
  /** An unclear period covers the whole forecast. */
  readonly from_ms: number;
  readonly to_ms: number;
}

export interface PlacedForecast {
  readonly kind: "forecast";
  readonly report: Forecast;
  readonly issued_ms: number;
  readonly from_ms: number;
  readonly to_ms: number;
  readonly periods: readonly PlacedPeriod[];
  readonly problems: readonly Problem[];
  readonly open: readonly Aspect[];
}

export type Placed = PlacedObservation | PlacedForecast;
/** A report that cannot be placed in time, and why. Nothing of it may be used. */
export interface Unplaced {
  readonly kind: "unplaced";
  readonly report: Report;
  readonly problems: readonly Problem[];
  readonly open: readonly Aspect[];
}

const unplaced = (report: Report, problems: readonly Problem[]): Unplaced => ({
  kind: "unplaced",
  report,
  problems,
  open: EVERYTHING,
});

const noSuchDay = (group: string, reference_ms: number): Problem =>
  problemOf(
    group,
    impossible(
      `no such day lies near ${isoMinute(reference_ms)}, when it was received: its date is not known`,
      ...EVERYTHING,
    ),
  );

const inFuture = (group: string, instant_ms: number, reference_ms: number): Problem =>
  problemOf(
    group,
    impossible(
      `its time, ${isoMinute(instant_ms)}, lies ${durationText(instant_ms - reference_ms)} after it was received: the day, the month or the clock is wrong`,
      ...EVERYTHING,
    ),
  );

/** Days longer than a forecast lasts; the longest are of 30 hours, and of 36 in a few States. */
const LONGEST_FORECAST_MS = 36 * 3_600_000;

function placePeriods(
  report: Forecast,
  from_ms: number,
  to_ms: number,
  problems: Problem[],
): readonly PlacedPeriod[] {
  let last_ms = from_ms;
  return report.periods.map((period, index): PlacedPeriod => {
    const whole = { ...period, index, from_ms, to_ms };
    if (period.kind === "unclear") return whole;
    const starts_ms = period.from === undefined ? from_ms : instantNear(period.from, from_ms);
    const ends_ms = period.to === undefined ? to_ms : instantNear(period.to, from_ms);
    const fault = (says: string): PlacedPeriod => {
      const affects = joinAspects(["validity", "wind", "gust", "visibility", "ceiling", "weather"]);
      problems.push(
        problemOf(period.text, impossible(`${says}: it may hold at any time`, ...affects), index),
      );
      return { ...whole, kind: "unclear", open: joinAspects([...period.open, ...affects]) };
    };
    if (starts_ms === undefined || ends_ms === undefined) return fault("a day that is not near the forecast");
    if (starts_ms < from_ms || ends_ms > to_ms) return fault("outside the validity of the forecast");
    if (period.kind === "FM") {
      if (starts_ms < last_ms) return fault("earlier than the group before it");
      last_ms = starts_ms;
    }
    if (ends_ms < starts_ms) return fault("it ends before it starts");
    return { ...whole, from_ms: starts_ms, to_ms: ends_ms };
  });
}

function placeForecast(report: Forecast, received_ms: number): PlacedForecast | Unplaced {
  const { issued, validFrom, validTo } = report;
  if (issued === undefined || validFrom === undefined || validTo === undefined)
    return unplaced(report, report.problems);
  const issued_ms = instantNear(issued, received_ms);
  const time = `${dayTimeText(issued)}Z`;
  if (issued_ms === undefined) return unplaced(report, [...report.problems, noSuchDay(time, received_ms)]);
  if (issued_ms > received_ms + CLOCK_ERROR_MS)
    return unplaced(report, [...report.problems, inFuture(time, issued_ms, received_ms)]);
  const [from_ms, to_ms] = [instantNear(validFrom, issued_ms), instantNear(validTo, issued_ms)];
  if (
    from_ms === undefined ||
    to_ms === undefined ||
    to_ms <= from_ms ||
    to_ms - from_ms > LONGEST_FORECAST_MS
  ) {
    const says = "a validity that does not fit the time of issue";
    return unplaced(report, [...report.problems, problemOf("", impossible(says, ...EVERYTHING))]);
  }
  const more: Problem[] = [];
  const periods = placePeriods(report, from_ms, to_ms, more);
  const problems = [...report.problems, ...more];
  const open = joinAspects([...report.open, ...more.flatMap(({ affects }) => affects)]);
  return { kind: "forecast", report, issued_ms, from_ms, to_ms, periods, problems, open };
}

/**
 * Gives a report its full date.
 *
 * @param received_ms when it was received or pasted, UTC: the month and the year come from it
 */
export function placeReport(report: Report, received_ms: number): Placed | Unplaced {
  if (!report.accepted || report.issued === undefined) return unplaced(report, report.problems);
  if (report.kind === "forecast") return placeForecast(report, received_ms);
  const observed_ms = instantNear(report.issued, received_ms);
  const time = `${dayTimeText(report.issued)}Z`;
  if (observed_ms === undefined) return unplaced(report, [...report.problems, noSuchDay(time, received_ms)]);
  if (observed_ms > received_ms + CLOCK_ERROR_MS)
    return unplaced(report, [...report.problems, inFuture(time, observed_ms, received_ms)]);
  return { kind: "observation", report, observed_ms, problems: report.problems, open: report.open };
}
