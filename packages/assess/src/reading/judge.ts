import type { Book, Check, Gauge } from "@witnessmark/book";
import {
  differenceToSI,
  judgeReading,
  standardUncertainty,
  toSI,
  UNITS,
  withSymbol,
} from "@witnessmark/engine";
import type { Read } from "@witnessmark/ledger";
import type { Source, Working, WorkingLine } from "../assessment.ts";
import { countMarginOf, type Figures, figuresOf, limitShown, marginOf, shown } from "./figures.ts";
import { tyreOutside } from "./judge-tyre.ts";
import type { Judged, Told } from "./judged.ts";
import { type Band, bandOf, limitNow, temperatureName, temperatureText } from "./limit-now.ts";
import { bandText } from "./limit-words.ts";
import type { Given, ReadingVerdict } from "./reading-verdict.ts";

const CONFORMITY: Source = {
  title: "JCGM 106:2012, the role of measurement uncertainty in conformity assessment",
  locator: "7.2 to 7.4",
};

/** Needed for clear, in percent; the engine's rule. */
const NEEDED = 95;

const open = (says: string, missing: string, lines: readonly WorkingLine[] = []): ReadingVerdict => ({
  status: "open",
  says,
  margin: { value: 0, unit: "", text: "not known" },
  missing: [missing],
  working: { lines },
  sources: [],
});

/** Low and high in SI at this temperature, for the rule that is drawn; undefined when it cannot be known. */
export const band = (
  check: Pick<Check, "reading">,
  _book: Book,
  temperature: Read | undefined,
): Band | undefined => (check.reading === undefined ? undefined : bandOf(check.reading, temperature));

/**
 * What a reading of this check is worth against the book's limit: while it is being typed, and in an assessment.
 * Never more lenient than the limit itself; what is missing gives open, and is named.
 */
export function judge(
  check: Pick<Check, "reading">,
  book: Pick<Book, "gauges">,
  given: Given,
): ReadingVerdict {
  const { reading } = check;
  if (reading === undefined) return open("The check asks for no reading", "a reading in the book");
  const gauge = book.gauges.get(given.gauge ?? reading.gauge);
  if (gauge === undefined) {
    return open(
      `Read on a gauge that the book has not: ${given.gauge ?? reading.gauge}`,
      "a gauge in the book",
    );
  }
  const { read, temperature } = given;
  if (gauge.dimension !== reading.dimension || UNITS[read.unit].dimension !== reading.dimension) {
    return open(
      `Read in ${UNITS[read.unit].symbol || "plain figures"}: not a ${reading.dimension}`,
      `a ${reading.dimension}`,
    );
  }
  if (!Number.isFinite(read.value)) return open("The value read is not a number", reading.quantity);
  const limit = limitNow(reading, gauge, temperature);
  const figures = figuresOf(gauge);
  if (!limit.known) return open(limit.says, limit.missing, [readLine(gauge, figures, read)]);
  const valueSI = toSI(read.value, read.unit);
  const judgement = judgeReading({
    value: valueSI,
    standardUncertainty: uncertaintySI(gauge),
    ...limit.band,
  });
  const judged: Judged = { reading, figures, valueSI, read, temperature, limit, judgement };
  return { ...verdictOf(judged, gauge), probability_1: judgement.probability_1 };
}

/**
 * Standard uncertainty of one reading of a gauge, in SI; accuracy and resolution are differences. A count is whole by
 * nature: that it goes by steps of one leaves no doubt about it, and six of at least six is right.
 */
const uncertaintySI = ({ accuracy, resolution, coverage, dimension }: Gauge): number =>
  standardUncertainty({
    accuracy: differenceToSI(accuracy.value, accuracy.unit),
    resolution: dimension === "count" ? 0 : differenceToSI(resolution.value, resolution.unit),
    coverage,
  });

/** `5.00 bar`; a reading in another unit than the gauge's is shown in both. */
const readText = (figures: Figures, read: Read): string => shown(toSI(read.value, read.unit), figures);

function readLine(gauge: Gauge, figures: Figures, read: Read): WorkingLine {
  const doubt = String(gauge.accuracy.value);
  const unit = gauge.accuracy.unit === gauge.unit ? "" : ` ${UNITS[gauge.accuracy.unit].symbol}`;
  const typed =
    read.unit === gauge.unit
      ? ""
      : `, typed as ${withSymbol(String(Number(read.value.toPrecision(12))), read.unit)}`;
  const whose = gauge.assumed === true ? " by common practice" : "";
  return { label: `Read, gauge ±${doubt}${unit}${whose}`, value: `${readText(figures, read)}${typed}` };
}

/** Percent in whole figures, rounded down; `over 99 %` rather than 100, which no gauge gives. */
const chanceText = (probability_1: number): string => {
  const percent = Math.floor(probability_1 * 100);
  return percent >= 100 ? "over 99\u00A0%" : `${percent}\u00A0%`;
};

function limitLines({ limit: { band: now }, figures }: Judged): readonly WorkingLine[] {
  const { low, high } = now;
  const both = low !== undefined && high !== undefined;
  return [
    ...(low === undefined
      ? []
      : [
          {
            label: `${both ? "Low limit" : "Limit"} now, rounded up`,
            value: limitShown(low, "low", figures),
          },
        ]),
    ...(high === undefined
      ? []
      : [
          {
            label: `${both ? "High limit" : "Limit"} now, rounded down`,
            value: limitShown(high, "high", figures),
          },
        ]),
  ];
}

function workingOf(judged: Judged, gauge: Gauge): Working {
  const { reading, temperature, limit, judgement, figures, read } = judged;
  const warmth =
    temperature === undefined || reading.limit.by === "fixed"
      ? []
      : [{ label: temperatureName(reading), value: temperatureText(temperature) }];
  return {
    lines: [
      ...limit.lines,
      ...warmth,
      ...limitLines(judged),
      readLine(gauge, figures, read),
      { label: "Chance it is inside", value: `${chanceText(judgement.probability_1)}, needs ${NEEDED}` },
    ],
    ...(limit.formula === undefined ? {} : { formula: limit.formula }),
  };
}

/** `5.00 bar, 4.97 or more at 4 °C` */
export function saysOf(judged: Judged): string {
  const { reading, figures, read, temperature } = judged;
  const at =
    temperature === undefined || reading.limit.by === "fixed" ? "" : ` at ${temperatureText(temperature)}`;
  return `${readText(figures, read)}, ${bandText(judged.limit.band, figures)}${at}`;
}

function verdictOf(judged: Judged, gauge: Gauge): ReadingVerdict {
  const { judgement, figures, limit, reading } = judged;
  const past = judgement.nearest === "low" ? "under" : "over";
  const common = {
    says: saysOf(judged),
    margin:
      reading.dimension === "count"
        ? countMarginOf(judgement.margin, past)
        : marginOf(judgement.margin, past, figures),
    working: workingOf(judged, gauge),
    sources: [CONFORMITY, ...limit.sources],
  };
  switch (judgement.status) {
    case "clear":
      return { ...common, status: "clear" };
    case "caution":
      return {
        ...common,
        status: "caution",
        because: [
          `Too close to call with this gauge: the chance that it is inside is ${chanceText(judgement.probability_1)}, ${NEEDED} are needed`,
        ],
      };
    case "stop":
      return reading.limit.by === "tyre" ? tyreOutside(judged, common) : outside(judged, common);
    default:
      return judgement.status satisfies never;
  }
}

/** Past a limit: stop, or what the book says it means. */
function outside({ reading, judgement, figures }: Judged, common: Told): ReadingVerdict {
  const limit = judgement.nearest === "low" ? "low" : "high";
  const past = marginOf(judgement.margin, limit === "low" ? "under" : "over", figures);
  const because: [string] = [`${past.text} the ${limit} limit`];
  const { status, advice } = reading.outside;
  if (status === "caution") {
    return { ...common, status, because: advice === undefined ? because : [...because, advice] };
  }
  const mend = "Put it right: licensed mechanic, then read again";
  return { ...common, status, because, wayOut: advice === undefined ? [mend] : [advice, mend] };
}
