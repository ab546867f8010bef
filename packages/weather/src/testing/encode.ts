import type { Measure } from "@witnessmark/engine";
import { type DayTime, dayTimeText } from "../day-time.ts";
import type { Group } from "../group.ts";
import type { Part } from "../groups/part.ts";
import type { RangeValue, RunwayVisualRange } from "../groups/runway-visual-range.ts";
import type { WholeDegrees } from "../groups/temperature.ts";
import type { Visibility } from "../groups/visibility.ts";
import type { Wind } from "../groups/wind.ts";
import type { ForecastPeriod, Report } from "../report.ts";

// The way back: from values to the text that says them. What a decode lost, it cannot write again.

const padded = (value: number, digits: number): string => String(value).padStart(digits, "0");
const UNITS: Readonly<Record<string, string>> = { kt: "KT", mPerS: "MPS", kmPerH: "KMH" };

export function encodeWind({ kind, from_degTrue, speedAtLeast, gustAtLeast, coded }: Wind): string {
  const from = kind === "variable" ? "VRB" : kind === "calm" ? "000" : padded(from_degTrue ?? 0, 3);
  const speed = `${speedAtLeast ? "P" : ""}${padded(coded.speed.value, 2)}`;
  const gust = coded.gust === undefined ? "" : `G${gustAtLeast ? "P" : ""}${padded(coded.gust.value, 2)}`;
  return `${from}${speed}${gust}${UNITS[coded.speed.unit] ?? "?"}`;
}

function miles(value: number): string {
  const whole = Math.floor(value);
  const share = value - whole;
  if (share === 0) return String(whole);
  const below = [2, 4, 8, 16].find((one) => Number.isInteger(share * one)) ?? 0;
  const part = `${share * below}/${below}`;
  return whole === 0 ? part : `${whole} ${part}`;
}

export function encodeVisibility({ coded, bound }: Visibility): string {
  if (coded.unit === "km") return `${coded.value}KM`;
  if (coded.unit === "m")
    return bound === "at least" ? "9999" : bound === "less than" ? "0000" : padded(coded.value, 4);
  return `${bound === "more than" ? "P" : bound === "less than" ? "M" : ""}${miles(coded.value)}SM`;
}

const encodeRange = ({ bound, coded }: RangeValue): string =>
  `${bound === "more than" ? "P" : bound === "less than" ? "M" : ""}${padded(coded.value, 4)}`;
const TENDENCY = { rising: "U", falling: "D", "no distinct change": "N" } as const;
const encodeDegrees = (value: WholeDegrees | null): string =>
  value === null ? "" : `${value.belowZero ? "M" : ""}${padded(Math.abs(value.coded_degC), 2)}`;
const hundreds = (value_ft: number | null): string => (value_ft === null ? "///" : padded(value_ft / 100, 3));
const encodeSetting = ({ unit, value }: Measure): string =>
  unit === "inHg" ? `A${padded(Math.round(value * 100), 4)}` : `Q${padded(value, 4)}`;

const signed = (value: number | null): string =>
  value === null ? "//" : `${value < 0 ? "M" : ""}${padded(Math.abs(value), 2)}`;

function encodeRunwayRange({ runway, lowest, highest, tendency }: RunwayVisualRange): string {
  const high = highest === undefined ? "" : `V${encodeRange(highest)}`;
  const unit = lowest.coded.unit === "ft" ? "FT" : "";
  return `R${runway}/${encodeRange(lowest)}${high}${unit}${tendency === undefined ? "" : TENDENCY[tendency]}`;
}

/** The group that says a part; `undefined` for runway states, whose words the tables give in one direction only. */
export function encodePart(part: Part): string | undefined {
  switch (part.is) {
    case "wind":
      return encodeWind(part.wind);
    case "sector":
      return `${padded(part.from_degTrue, 3)}V${padded(part.to_degTrue, 3)}`;
    case "visibility":
      return encodeVisibility(part.visibility);
    case "minimum visibility":
      return `${encodeVisibility(part.minimum)}${part.minimum.direction ?? ""}`;
    case "cavok":
      return "CAVOK";
    case "runway visual range":
      return encodeRunwayRange(part.range);
    case "runway state":
      return undefined;
    case "weather":
      return part.weather.code;
    case "recent weather":
      return `RE${part.weather.code}`;
    case "no significant weather":
      return "NSW";
    case "weather not observed":
      return "//";
    case "cloud": {
      const { amount, base_ft, type } = part.layer;
      return `${amount ?? "///"}${hundreds(base_ft)}${type === undefined ? "" : (type ?? "///")}`;
    }
    case "cloud not observed":
      return "//////";
    case "vertical visibility":
      return `VV${hundreds(part.height_ft)}`;
    case "sky":
      return part.statement;
    case "temperature":
      return `${encodeDegrees(part.air.temperature)}/${encodeDegrees(part.air.dewPoint)}`;
    case "pressure":
      return encodeSetting(part.setting);
    case "lowest pressure":
      return `QNH${encodeSetting(part.setting).slice(1)}${part.setting.unit === "inHg" ? "INS" : ""}`;
    case "wind shear":
      return part.runway === "all" ? "WS ALL RWY" : `WS R${part.runway}`;
    case "shear layer": {
      const { layerTop_ft, from_degTrue, coded } = part.shear;
      const speed = `${padded(coded.speed.value, 2)}${UNITS[coded.speed.unit] ?? "?"}`;
      return `WS${hundreds(layerTop_ft)}/${padded(from_degTrue, 3)}${speed}`;
    }
    case "icing":
    case "turbulence": {
      const { code, base_ft, thickness_ft } = part.layer;
      return `${part.is === "icing" ? 6 : 5}${code}${hundreds(base_ft)}${thickness_ft / 1000}`;
    }
    case "temperature extreme": {
      const { kind, coded_degC, at } = part.extreme;
      return `T${kind === "highest" ? "X" : "N"}${signed(coded_degC)}/${dayTimeText(at).slice(0, 4)}Z`;
    }
    case "sea":
      return `W${signed(part.temperature_degC)}/${part.state}`;
    case "colour state":
      return part.code;
    default:
      return part satisfies never;
  }
}

/** Two spellings of one thing that the decode does not keep apart, and need not. */
const plain = (text: string): string =>
  text
    .replace(/NDV$/u, "")
    .replace(/^(R\d{2}[LCR]{0,2}\/.*)\/([UDN])$/u, "$1$2")
    .replace(/^WS (?:TKOF |LDG )?(?:RWY|R)(?=\d)/u, "WS R")
    .replace(/^QNH(\d{4})INS$/u, "A$1")
    .replace(/^QNH(\d{4})(?:HPA)?$/u, "Q$1")
    .replace(/^(T[XN])M00/u, "$100")
    .replace(/^WM00/u, "W00")
    .replace(/^(M?\d{2}|)\/(?:\/\/|XX)$/u, "$1/");

const span = (from: DayTime | undefined, to: DayTime | undefined): string =>
  from === undefined || to === undefined
    ? "?"
    : `${dayTimeText(from).slice(0, 4)}/${dayTimeText(to).slice(0, 4)}`;

function encodeHead({ kind, probability_percent, from, to }: ForecastPeriod): string {
  if (kind === "FM") return `FM${from === undefined ? "?" : dayTimeText(from)}`;
  const words = kind.replace("PROB", `PROB${probability_percent ?? ""}`);
  return `${words} ${span(from, to)}`;
}

function headerWords(report: Report): readonly string[] {
  const { issued, station } = report;
  return [
    ...(report.typeWordMissing ? [] : [report.kind === "forecast" ? "TAF" : report.type]),
    ...(station === undefined ? [] : [station]),
    ...(issued === undefined ? [] : [`${dayTimeText(issued)}Z`]),
    ...(report.kind === "observation" && report.auto ? ["AUTO"] : []),
    ...(report.corrected ? ["COR", "CCA"] : []),
    ...(report.amended ? ["AMD"] : []),
    ...(report.nil ? ["NIL"] : []),
    ...(report.kind === "forecast"
      ? [...(report.cancelled ? ["CNL"] : []), span(report.validFrom, report.validTo)]
      : []),
  ];
}

function trendWords(report: Report, group: Group): readonly string[] {
  if (report.kind !== "observation") return [];
  const trend = report.trends[group.period ?? -1];
  if (trend === undefined) return ["NOSIG"];
  const { change, from_UTC, until_UTC, at_UTC } = trend;
  return [change, `FM${from_UTC ?? "?"}`, `TL${until_UTC ?? "?"}`, `AT${at_UTC ?? "?"}`];
}

function wordsFor(report: Report, group: Group): readonly string[] {
  if (group.section === "header") return headerWords(report).map((word) => word.replace(/^CC[A-Z]$/u, "CCA"));
  if (group.section === "trend" || group.section === "body") return trendWords(report, group);
  const period = report.kind === "forecast" ? report.periods[group.period ?? -1] : undefined;
  return period === undefined ? [] : [encodeHead(period)];
}

/**
 * The groups that are neither told nor in the decode: those whose decode does not write the same text again. Remarks
 * are taken by their reading alone.
 */
export function losses(report: Report): readonly string[] {
  return report.groups.flatMap((group) => {
    const { text, outcome, part, section, remarks } = group;
    if (outcome !== "used") return [];
    if (section === "remarks")
      return text === "RMK" || (remarks?.length ?? 0) > 0 || report.kind === "forecast" ? [] : [text];
    if (part !== undefined) {
      const again = encodePart(part);
      return again === undefined || plain(again) === plain(text) ? [] : [`${text} came back as ${again}`];
    }
    return wordsFor(report, group).includes(text.replace(/^CC[A-Z]$/u, "CCA")) ? [] : [text];
  });
}
