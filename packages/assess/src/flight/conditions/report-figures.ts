import type { PlannedField } from "@witnessmark/ledger";
import {
  type Aspect,
  type PlacedForecast,
  type PlacedObservation,
  type Problem,
  readReport,
} from "@witnessmark/weather";

const MIN_MS = 60_000;

/** An observation is made each hour or half hour; older than this, one was missed. Witnessmark's own rule. */
export const METAR_COUNTS_MS = 75 * MIN_MS;
/** What the pilot read off or was told has no successor that comes by itself. Witnessmark's own rule. */
export const TYPED_COUNTS_MS = 60 * MIN_MS;

/** A report of a field: what came, how old it is, until when it counts, and what of it is not known. */
export interface ReportFigures<Placed> {
  readonly text: string;
  /** Absent when nothing of it may be used; `problems` say why. */
  readonly placed?: Placed;
  /** Observed or issued. */
  readonly at_ms?: number;
  /** Below zero within the error of clocks. */
  readonly age_ms?: number;
  readonly countsUntil_ms?: number;
  /** It can be used no more: an observation with a successor that is not here, a forecast that has ended. */
  readonly tooOld: boolean;
  readonly problems: readonly Problem[];
  readonly open: readonly Aspect[];
}

/** How current a report is comes from the rule here, not from the hour that the reader of reports goes by. */
const withoutAge = (open: readonly Aspect[]): readonly Aspect[] =>
  open.filter((aspect) => aspect !== "validity");

/** The observation of a planned field; undefined when there is none. */
export function observationOf(
  planned: PlannedField,
  now_ms: number,
): ReportFigures<PlacedObservation> | undefined {
  if (planned.metar === undefined) return undefined;
  const { text, receivedAt } = planned.metar;
  const received_ms = Date.parse(receivedAt);
  const read = readReport(text, { kind: "observation", station: planned.code, received_ms, now_ms });
  const { placed, problems } = read;
  if (placed === undefined || placed.report.nil) return { text, tooOld: false, problems, open: read.open };
  const countsUntil_ms = placed.observed_ms + METAR_COUNTS_MS;
  return {
    text,
    placed,
    at_ms: placed.observed_ms,
    age_ms: now_ms - placed.observed_ms,
    countsUntil_ms,
    tooOld: now_ms > countsUntil_ms,
    problems,
    open: withoutAge(read.open),
  };
}

/** The forecast of a planned field; undefined when there is none. */
export function forecastOf(planned: PlannedField, now_ms: number): ReportFigures<PlacedForecast> | undefined {
  if (planned.taf === undefined) return undefined;
  const { text, receivedAt } = planned.taf;
  const received_ms = Date.parse(receivedAt);
  const read = readReport(text, { kind: "forecast", station: planned.code, received_ms, now_ms });
  const { placed, problems } = read;
  if (placed === undefined || placed.report.nil || placed.report.cancelled)
    return { text, tooOld: false, problems, open: read.open };
  return {
    text,
    placed,
    at_ms: placed.issued_ms,
    age_ms: now_ms - placed.issued_ms,
    countsUntil_ms: placed.to_ms,
    tooOld: now_ms >= placed.to_ms,
    problems,
    open: read.open,
  };
}
