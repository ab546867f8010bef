import { daysBetween } from "@witnessmark/engine";
import type { PlannedFlight, ReliefOnRecord } from "@witnessmark/ledger";
import type { Margin, Source, Verdict, WorkingLine } from "../assessment.ts";
import type { ReliefStanding } from "../relief/relief-in-force.ts";
import { endOfLocalDay_ms, localDayOf } from "../timed/local-day.ts";
import { dateText, daysText } from "../timed/timed-words.ts";
import type { LocalClock } from "../words/local-time.ts";
import { FIRST_SOURCE } from "./discrepancy-ways.ts";

/** `relief by 14 CFR 91.213(d), placard fitted, put right by 24 Nov` */
export const reliefText = ({ basis, until, placard }: ReliefOnRecord, clock: LocalClock): string =>
  [
    `relief by ${basis}`,
    ...(placard === undefined ? [] : ["placard fitted"]),
    ...(until === undefined ? [] : [`put right by ${dateText(until, clock)}`]),
  ].join(", ");

export const reliefLines = (relief: ReliefOnRecord, clock: LocalClock): readonly WorkingLine[] => [
  { label: "Relief", value: `${relief.basis}, determined by ${relief.determinedBy}, ${relief.as}` },
  ...relief.steps.map(({ rule, words, holds }) => ({
    label: rule,
    value: `${words}: ${holds ? "yes" : "no"}`,
  })),
  ...(relief.placard === undefined ? [] : [{ label: "Placard", value: relief.placard }]),
  ...(relief.until === undefined ? [] : [{ label: "Until", value: dateText(relief.until, clock) }]),
];

export const reliefSources = (relief: ReliefOnRecord, standing: ReliefStanding): readonly Source[] => [
  { title: relief.basis, locator: "the relief on the record" },
  ...standing.citations.map(({ title, locator, edition }) => ({
    title,
    locator: locator === undefined ? edition : `${locator}, ${edition}`,
  })),
  FIRST_SOURCE,
];

/** What every verdict on a discrepancy says, whatever it comes to. */
export type Common = Omit<Extract<Verdict, { status: "clear" }>, "status">;

/** Asked for only where something stops. */
export type WaysOut = () => readonly [string, ...string[]];

interface Relieved {
  readonly relief: ReliefOnRecord;
  readonly standing: ReliefStanding;
  readonly flight: PlannedFlight | null;
  readonly clock: LocalClock;
  readonly ways: WaysOut;
}

interface Days {
  readonly margin: Margin;
  readonly isLast: boolean;
}

/** Days after today on which it still holds. */
function daysLeft({ until }: ReliefOnRecord, clock: LocalClock): Days {
  if (until === undefined) return { margin: { value: 0, unit: "", text: "relief" }, isLast: false };
  const left_d = daysBetween(localDayOf(clock.now_ms, clock.offset_min), until);
  const text = left_d === 0 ? "last day" : left_d < 0 ? `${daysText(left_d)} over` : daysText(left_d);
  return { margin: { value: left_d, unit: "d", text }, isLast: left_d === 0 };
}

/**
 * A relief that covers the flight clears it, on its last day with a caution; one that does not, or has ended, leaves
 * the stop as it was. What is not known of a flight leaves it open; with no flight planned it is a caution that says
 * for what it is not.
 */
export function underRelief(common: Common, { relief, standing, flight, clock, ways }: Relieved): Verdict {
  const { margin, isLast } = daysLeft(relief, clock);
  const holding =
    relief.until === undefined
      ? {}
      : {
          holdsUntil_ms: endOfLocalDay_ms(relief.until, clock.offset_min),
          holdsBecause: `the relief by ${relief.basis} ends then`,
        };
  switch (standing.holds) {
    case true:
      return isLast
        ? { ...common, ...holding, status: "caution", margin, because: ["The relief ends with this day"] }
        : { ...common, ...holding, status: "clear", margin };
    case "unknown":
      return flight === null
        ? { ...common, ...holding, status: "caution", margin, because: standing.reasons }
        : { ...common, status: "open", margin, missing: standing.reasons };
    case false:
      return { ...common, status: "stop", margin, because: standing.reasons, wayOut: ways() };
    default:
      return standing satisfies never;
  }
}
