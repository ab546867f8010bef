import type { Check } from "@witnessmark/book";
import type { PlannedFlight } from "@witnessmark/ledger";
import type { Source, Verdict, WorkingLine } from "../assessment.ts";
import { bookSource, NOWHERE } from "../book-index.ts";
import type { Context } from "../context.ts";
import { type Finding, severityOf } from "../finding.ts";
import { sentence } from "../words/count-words.ts";
import { dayText } from "../words/local-time.ts";
import { expectedAt, ODD_IN_ASSESSMENT_1, oddWords } from "./expected.ts";
import { maySlope } from "./fit.ts";
import { fitBefore } from "./series.ts";
import type { Series, Trend } from "./trend.ts";
import { slopeText, valueText } from "./trend-words.ts";
import { allSeries, trendOf } from "./trends.ts";

const LINE: Source = {
  title: "Sen, Estimates of the regression coefficient based on Kendall's tau, 1968",
  locator: "slope and its interval",
};
const NEXT: Source = {
  title: "NIST/SEMATECH e-Handbook of Statistical Methods",
  locator: "4.5.2.1, prediction interval of a straight line",
};

/** What every trend is worked out by. */
export const TREND_SOURCES: readonly Source[] = [LINE, NEXT];

/** So many of the latest readings are named as what it rests on. */
const EVIDENCE = 8;

function asFinding(verdict: Verdict, series: Series, context: Context, words: string): Finding {
  const { index } = context;
  const check: Check | undefined = series.check === undefined ? undefined : index.checks.get(series.check);
  const last = series.points.at(-1);
  return {
    verdict,
    severity: check === undefined ? 2 : severityOf(check),
    place: check === undefined ? NOWHERE : (index.placeOfCheck.get(check.id) ?? NOWHERE),
    ...(last === undefined
      ? {}
      : {
          cause: {
            key: `trend:${last.event}`,
            at_ms: last.at_ms,
            words: `${series.title}: ${words}`,
            reopens: false,
          },
        }),
  };
}

const sourceOf = (series: Series, { book }: Context): Source =>
  series.check === undefined
    ? { title: "Servicings and hours in the ledger of this aircraft" }
    : bookSource(book, `check ${series.check}`);

const baseOf = (series: Series, context: Context) => ({
  topic: "trend" as const,
  title: series.title,
  evidence: series.points.slice(-EVIDENCE).map(({ event }) => event),
  sources: [sourceOf(series, context), LINE, NEXT],
  // not the check itself: a reading of today that is inside its limit stays clear, whatever its past says
  subject: { kind: "trend" as const, id: series.check ?? series.id },
});

const lastLines = (series: Series, { clock }: Context): readonly WorkingLine[] =>
  series.points.slice(-3).map((point) => ({
    label: dayText(point.at_ms, clock),
    value: `${valueText(point.shown, series.unit)} (${point.asRead}, by ${point.by})`,
  }));

/** A limit that is met soon if it goes on so. */
function movingFinding(trend: Trend, context: Context): Finding {
  const { clock } = context;
  const { fit, forecast } = trend;
  const days = Math.max(
    0,
    Math.floor(
      ((forecast?.expected_ms ?? forecast?.earliest_ms ?? clock.now_ms) - clock.now_ms) / 86_400_000,
    ),
  );
  const slope = fit.kind === "too-few" ? "" : slopeText(fit.slope_perDay, trend.unit);
  const because = sentence(
    forecast === undefined ? "It rises, and nobody knows yet why" : "If it goes on so, a limit is met soon",
  );
  return asFinding(
    {
      ...baseOf(trend, context),
      id: `trend:${trend.id}`,
      status: "caution",
      says: trend.sentence,
      margin:
        forecast === undefined
          ? { value: 0, unit: "", text: slope }
          : { value: days, unit: "d", text: days === 0 ? "today" : `${days} ${days === 1 ? "day" : "days"}` },
      because: [because],
      working: {
        lines: [
          { label: "Slope, robust", value: slope },
          ...trend.more.map((value, at) => ({ label: at === 0 ? "Rests on" : "And", value })),
          ...lastLines(trend, context),
        ],
      },
    },
    trend,
    context,
    trend.sentence.replace(/\.$/, ""),
  );
}

/** The last reading is not what those before it let expect. */
function oddFinding(series: Series, context: Context): Finding | undefined {
  const last = series.points.at(-1);
  const before = series.points.at(-2);
  // told while the walk in which it was read is in hand; later ones say themselves whether it was odd
  if (last === undefined || before === undefined || last.walk !== context.walk?.id) return undefined;
  const expected = expectedAt(fitBefore(series), before.at_ms, last.at_ms, ODD_IN_ASSESSMENT_1);
  if (expected === undefined) return undefined;
  const words = oddWords(last, expected, series, context.clock);
  if (words === undefined) return undefined;
  const text = (valueSI: number) => valueText(valueSI * series.unit.perSI + series.unit.offset, series.unit);
  return asFinding(
    {
      ...baseOf(series, context),
      id: `odd:${series.id}`,
      status: "caution",
      says: `${sentence(series.quantity)}: ${words}`,
      margin: { value: 0, unit: "", text: words.split(" than ")[0] ?? words },
      because: ["It does not go on from the readings before it: read it again, then look for what happened"],
      working: {
        lines: [
          { label: "Expected", value: text(expected.expectedSI) },
          { label: "Expected between", value: `${text(expected.lowSI)} and ${text(expected.highSI)}` },
          ...lastLines(series, context),
        ],
      },
    },
    series,
    context,
    words,
  );
}

/** One caution for each series that meets a limit soon, and for each reading of this walk that is odd. */
export function trendVerdicts(context: Context, flight: PlannedFlight | null): readonly Finding[] {
  const { book, state, clock } = context;
  const found: Finding[] = [];
  for (const series of allSeries(book, state)) {
    if (mayMove(series)) {
      const trend = trendOf(series, flight, clock);
      if (trend.status === "caution") found.push(movingFinding(trend, context));
    }
    const odd = oddFinding(series, context);
    if (odd !== undefined) found.push(odd);
  }
  return found;
}

const may = new WeakMap<Series, boolean>();

/** Looked at once for each new reading. */
function mayMove(series: Series): boolean {
  const known = may.get(series);
  if (known !== undefined) return known;
  const made = maySlope(series.points, series.from);
  may.set(series, made);
  return made;
}
