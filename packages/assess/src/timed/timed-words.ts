import { roundToSafeSide } from "@witnessmark/engine";
import type { LocalDate } from "@witnessmark/ledger";
import { dayText, type LocalClock, momentText } from "../words/local-time.ts";
import { endOfLocalDay_ms } from "./local-day.ts";
import type { LimitLeft } from "./timed-figures.ts";

const count = (n: number, one: string): string => `${n} ${n === 1 ? one : `${one}s`}`;

/** Weeks of days are hard to grasp: from two months on in months, whole ones that are surely left. */
const MONTHS_FROM_d = 61;
const MONTH_d = 30.44;
const YEARS_FROM_d = 730;

/** `6 days`, `8 months`, `3 years`: never more than is left. */
export function daysText(days: number): string {
  const whole = Math.abs(days);
  if (whole >= YEARS_FROM_d) return count(Math.floor(whole / 365.25), "year");
  return whole >= MONTHS_FROM_d ? count(Math.floor(whole / MONTH_d), "month") : count(whole, "day");
}

/** `12.4 h`, `18 landings`: what is left rounded down, what is over rounded up. */
export function countedText(left: Extract<LimitLeft, { by: "counter" }>, value = left.left): string {
  const { unit, name } = left.counter;
  if (unit === "h") {
    const hours = roundToSafeSide(Math.abs(value), 0.1, value < 0 ? "up" : "down");
    return `${hours.toFixed(1)} h`;
  }
  const whole = roundToSafeSide(Math.abs(value), 1, value < 0 ? "up" : "down");
  return `${whole} ${name.toLowerCase()}`;
}

/** The figure at the right of a row: `6 days`, `12.4 h`, `2 days over`, `last day`, `not known`. */
export function leftText(left: LimitLeft | undefined): string {
  if (left === undefined) return "too few";
  switch (left.by) {
    case "unknown":
      return "not known";
    case "date":
      if (left.left_d === 0) return "last day";
      return left.past ? `${daysText(left.left_d)} over` : daysText(left.left_d);
    case "counter":
      return left.past ? `${countedText(left)} over` : countedText(left);
    default:
      return left satisfies never;
  }
}

/** `Until 18 Nov`, `At 1,297.0 h of airframe hours`. */
export function untilText(left: LimitLeft, clock: LocalClock): string {
  switch (left.by) {
    case "unknown":
      return `Not known: ${left.lacks}`;
    case "date":
      return `${left.past ? "Was good until" : "Until"} ${dateText(left.on, clock)}`;
    case "counter": {
      const at = left.at.toLocaleString("en", { maximumFractionDigits: 1 });
      const name = left.counter.name.toLowerCase();
      return left.counter.unit === "h" ? `At ${at} h of ${name}` : `At ${at} ${name}`;
    }
    default:
      return left satisfies never;
  }
}

/**
 * By how much and when something ends during a flight: `0.4 h before this flight ends, about 13:42`. Undefined for what
 * does not.
 */
export function endsText(left: LimitLeft | undefined, clock: LocalClock): string | undefined {
  if (left?.by === "date")
    return left.flightEndsOn === undefined || left.pastAfterFlight !== true
      ? undefined
      : `with ${dateText(left.on, clock)}, and this flight ends on ${dateText(left.flightEndsOn, clock)}`;
  if (left?.by !== "counter" || left.ends === undefined) return undefined;
  const { over, at_ms } = left.ends;
  return at_ms === undefined
    ? `this flight counts ${countedText(left, -over)} more than are left`
    : `${countedText(left, -over)} before this flight ends, about ${momentText(at_ms, clock)}`;
}

export const dateText = (on: LocalDate, clock: LocalClock): string =>
  dayText(endOfLocalDay_ms(on, clock.offset_min), clock);
