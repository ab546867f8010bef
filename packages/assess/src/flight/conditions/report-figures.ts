import type { PlannedField, Report } from "@witnessmark/ledger";
import {
  type Aspect,
  type PlacedForecast,
  type PlacedObservation,
  type Problem,
  type ReadReport,
  readReport,
} from "@witnessmark/weather";
import { remembered } from "../remembered.ts";

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

type Kind = "observation" | "forecast";

/** Reports that were read: asking where an answer tips over reads the same one a hundred times. */
const reads: { readonly [K in Kind]: WeakMap<Report, Map<string, ReadReport<K>>> } = {
  observation: new WeakMap(),
  forecast: new WeakMap(),
};

/** A report of a place, without its age, which is worked out here. */
function readOnce<K extends Kind>(kind: K, report: Report, station: string): ReadReport<K> {
  const known = reads[kind].get(report);
  const found = known?.get(station);
  if (found !== undefined) return found;
  const received_ms = Date.parse(report.receivedAt);
  // the clock of 1970 makes no report old
  const read = readReport(report.text, { kind, station, received_ms, now_ms: 0 });
  if (known === undefined) reads[kind].set(report, new Map([[station, read]]));
  else known.set(station, read);
  return read;
}

/** How current a report is comes from the rule here, not from the hour that the reader of reports goes by. */
const withoutAge = (open: readonly Aspect[]): readonly Aspect[] =>
  open.filter((aspect) => aspect !== "validity");

const rememberedObservation = remembered<ReportFigures<PlacedObservation>>();
const rememberedForecast = remembered<ReportFigures<PlacedForecast>>();

/** The observation of a planned field; undefined when there is none. */
export const observationOf = (
  { metar, code }: PlannedField,
  now_ms: number,
): ReportFigures<PlacedObservation> | undefined =>
  metar === undefined
    ? undefined
    : rememberedObservation(metar, [code, now_ms], () => observationIn(metar, code, now_ms));

function observationIn(metar: Report, code: string, now_ms: number): ReportFigures<PlacedObservation> {
  const { text } = metar;
  const read = readOnce("observation", metar, code);
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
export const forecastOf = (
  { taf, code }: PlannedField,
  now_ms: number,
): ReportFigures<PlacedForecast> | undefined =>
  taf === undefined
    ? undefined
    : rememberedForecast(taf, [code, now_ms], () => forecastIn(taf, code, now_ms));

function forecastIn(taf: Report, code: string, now_ms: number): ReportFigures<PlacedForecast> {
  const { text } = taf;
  const read = readOnce("forecast", taf, code);
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
