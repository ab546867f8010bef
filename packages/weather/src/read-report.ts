import { type Aspect, doubtful, EVERYTHING, impossible, joinAspects, type Problem } from "./aspect.ts";
import { decodeReports } from "./decode.ts";
import { problemOf } from "./group.ts";
import { durationText, isoMinute } from "./instant.ts";
import { type PlacedForecast, type PlacedObservation, placeReport, type Unplaced } from "./placed.ts";
import type { Report } from "./report.ts";

/** An hourly report older than this has a successor that is not here. Common practice: the hour and a few minutes. */
export const OBSERVATION_CURRENT_MS = 65 * 60_000;

export interface ReportAsk<Kind extends Report["kind"]> {
  readonly kind: Kind;
  /** The place it should be of, four letters. */
  readonly station: string;
  readonly received_ms: number;
  readonly now_ms: number;
}

/** What a pasted text gives for one place, with its age. */
export interface ReadReport<Kind extends Report["kind"]> {
  /** Absent when the text has none that may be used; `problems` says why. */
  readonly placed?: Kind extends "observation" ? PlacedObservation : PlacedForecast;
  /** The report that was found, usable or not. */
  readonly report?: Report;
  /** Since the observation, or since the issue of the forecast; below zero within the error of clocks. */
  readonly age_ms?: number;
  /** "45 min old", "1 h 7 min old". */
  readonly ageText?: string;
  /** The observation is older than its hour, or the forecast has ended. */
  readonly stale: boolean;
  readonly problems: readonly Problem[];
  readonly open: readonly Aspect[];
}

const NAMES = { observation: "METAR or SPECI", forecast: "TAF" } as const;

function standing(
  placed: PlacedObservation | PlacedForecast,
  now_ms: number,
): { stale: boolean; problems: Problem[] } {
  if (placed.kind === "observation") {
    const age_ms = now_ms - placed.observed_ms;
    if (age_ms <= OBSERVATION_CURRENT_MS) return { stale: false, problems: [] };
    const says = `${durationText(age_ms)} old: a later report should be there`;
    return { stale: true, problems: [problemOf("", doubtful(says, "validity"))] };
  }
  if (now_ms < placed.to_ms) return { stale: false, problems: [] };
  const says = `the forecast ended at ${isoMinute(placed.to_ms)}; nothing of it is stretched beyond`;
  return { stale: true, problems: [problemOf("", impossible(says, ...EVERYTHING))] };
}

const issueOf = (placed: PlacedObservation | PlacedForecast): number =>
  placed.kind === "observation" ? placed.observed_ms : placed.issued_ms;

/** The latest of several of one place; a correction or amendment of the same minute comes after what it replaces. */
function latest<T extends PlacedObservation | PlacedForecast>(all: readonly T[]): T | undefined {
  return all.reduce<T | undefined>(
    (best, one) => (best === undefined || issueOf(one) >= issueOf(best) ? one : best),
    undefined,
  );
}

/**
 * Finds in a pasted text the report of one kind of one place, gives it its date and says how old it is. Reports of
 * another place and of another kind are told, and never used in its place.
 */
export function readReport<Kind extends Report["kind"]>(
  text: string,
  ask: ReportAsk<Kind>,
): ReadReport<Kind> {
  const { kind, received_ms, now_ms } = ask;
  const station = ask.station.trim().toUpperCase();
  const decoded = decodeReports(text);
  const ofKind = decoded.reports.filter((report) => report.kind === kind);
  const here = ofKind.filter((report) => report.station === station);
  const problems: Problem[] = decoded.problems.filter(({ outcome }) => outcome !== "doubtful");
  const refused = (more: readonly Problem[], report?: Report): ReadReport<Kind> => ({
    ...(report === undefined ? {} : { report }),
    stale: false,
    problems: [...problems, ...more],
    open: EVERYTHING,
  });
  for (const report of decoded.reports)
    if (report.station !== undefined && report.station !== station)
      problems.push(
        problemOf(report.station, impossible(`a report of another place; ${station} was asked for`)),
      );
  const [first] = here;
  if (first === undefined) {
    const [other] = ofKind;
    if (decoded.reports.length === 0) return refused([]);
    if (other !== undefined && other.station === undefined) return refused(other.problems, other);
    const says = `no ${NAMES[kind]} of ${station} in the text`;
    return refused([problemOf("", { outcome: "missing", says, affects: EVERYTHING })], other);
  }
  const placed = here.map((report) => placeReport(report, received_ms));
  const usable = placed.filter((one) => one.kind !== "unplaced");
  // the filter by kind of report above makes every placed one of that kind
  const best = latest(usable) as ReadReport<Kind>["placed"] | undefined;
  if (best === undefined) {
    const failed = placed.find((one): one is Unplaced => one.kind === "unplaced");
    return refused(failed?.problems ?? [], first);
  }
  if (here.length > 1)
    problems.push(
      problemOf(
        station,
        doubtful(
          `${here.length} reports of the same place; the latest is used`,
          ...(usable.length < here.length ? EVERYTHING : []),
        ),
      ),
    );
  const age_ms = now_ms - issueOf(best);
  const now = standing(best, now_ms);
  const all = [...problems, ...best.problems, ...now.problems];
  return {
    placed: best,
    report: best.report,
    age_ms,
    ageText: `${durationText(Math.max(age_ms, 0))} old`,
    stale: now.stale,
    problems: all,
    open: joinAspects([...best.open, ...[...problems, ...now.problems].flatMap(({ affects }) => affects)]),
  };
}
