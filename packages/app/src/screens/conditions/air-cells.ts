import { type FieldFigures, type FieldWind, type Figure, type Origin, windText } from "@witnessmark/assess";
import { weatherText } from "@witnessmark/weather";
import { clockTime } from "../../words/dates.ts";
import { type Choice, type ConditionsUnits, nearText, safeText } from "./conditions-units.ts";
import { saidBriefly } from "./wind-words.ts";

/** One cell of the table of air, and what is behind it. */
export interface AirCell {
  readonly name: string;
  /** As it is read; "not known" where it is not. */
  readonly text: string;
  readonly isKnown: boolean;
  /** Where it comes from, a sentence each. */
  readonly from: readonly string[];
  readonly missing: readonly string[];
  /** The quantity of the engine that worked it out. */
  readonly quantity?: string;
  readonly note?: string;
  /** Under the figure: the group of the report that it is of, where that is one that comes and goes. */
  readonly under?: string;
  /** What it is read in may be chosen. */
  readonly choice?: Choice;
}

const KIND: Readonly<Record<Origin["kind"], string>> = {
  METAR: "METAR, observed",
  TAF: "TAF, issued",
  typed: "What you read or were told,",
};

const originText = ({ kind, at_ms, words }: Origin): string =>
  `${KIND[kind]} ${clockTime(at_ms)}${words === undefined || words === "" ? "" : `: ${words}`}`;

const once = (all: readonly string[]): readonly string[] => [...new Set(all)];

/** A figure as a cell: its text, where it comes from, what is missing. */
export function airCell<T>(
  name: string,
  figure: Figure<T>,
  write: (value: T) => string,
  more: Pick<AirCell, "quantity" | "note" | "choice"> = {},
): AirCell {
  return {
    name,
    text: figure.value === undefined ? "not known" : write(figure.value),
    isKnown: figure.value !== undefined && figure.missing.length === 0,
    from: once(figure.from.map(originText)),
    missing: figure.missing.map(({ what }) => what),
    ...(figure.saidBy?.group === undefined ? {} : { under: saidBriefly(figure.saidBy) }),
    ...more,
  };
}

/** Direction, then speed and gust: a line breaks between the two, never inside. */
const inTwoParts = (text: string): string => {
  const [direction, ...speed] = text.split(/(?<=[°)]) /u);
  return [direction, ...speed.map((part) => part.replaceAll(" ", "\u00A0"))].join(" ");
};

const strength_mPerS = ({ wind }: FieldWind): number => Math.max(wind.speed_mPerS, wind.gust_mPerS ?? 0);

/** Of all the winds that may blow the strongest, gusts counted. */
const strongestOf = (winds: readonly FieldWind[]): FieldWind | undefined =>
  winds.toSorted((one, other) => strength_mPerS(other) - strength_mPerS(one))[0];

/** The air at a field when it is used, in the units of this sheet; heights and speeds to the side that does not flatter. */
export function airCells(figures: FieldFigures, units: ConditionsUnits): readonly AirCell[] {
  const { weather, air, wind } = figures;
  const inAir = <K extends keyof NonNullable<typeof air.value>>(key: K): Figure<number> =>
    air.value === undefined ? { from: [], missing: air.missing } : air.value[key];
  const strongest = strongestOf(weather.winds.value ?? []);
  const isVariable = wind.value?.isVariable === true;
  const { value: _, ...ofWinds } = weather.winds;
  const windFigure: Figure<string> =
    strongest === undefined
      ? ofWinds
      : { ...ofWinds, value: windText(strongest.wind, units.speed), saidBy: strongest.origin };
  return [
    airCell("Wind", windFigure, inTwoParts, {
      choice: "speed",
      note: isVariable
        ? "Variable: worked out for the worst of all directions, so that all of it counts as crosswind and as tailwind."
        : "Of all that may blow at the time, the strongest. From true north.",
    }),
    airCell(
      "Temperature",
      weather.oat,
      ({ coldest_K, hottest_K }) => nearText((coldest_K + hottest_K) / 2, units.temperature),
      { choice: "temperature" },
    ),
    airCell("QNH", weather.qnh_Pa, (qnh_Pa) => safeText(qnh_Pa, units.pressure, "down"), {
      choice: "pressure",
    }),
    airCell(
      "Density altitude",
      inAir("densityAltitude_m"),
      (height_m) => safeText(height_m, units.height, "up", 10),
      {
        choice: "height",
        quantity: "density-altitude",
        note: "At the hottest that the report leaves.",
      },
    ),
    airCell("Dew point", weather.dewPoint_K, (dewPoint_K) => nearText(dewPoint_K, units.temperature), {
      choice: "temperature",
    }),
    airCell(
      "Freezing level",
      inAir("freezingLevel_m"),
      (height_m) => safeText(height_m, units.height, "down", 100),
      {
        choice: "height",
        quantity: "freezing-level-rule",
        note: "By the rule of 2 °C in 1,000 ft, above sea level; an inversion makes it wrong.",
      },
    ),
    airCell(
      "Visibility",
      weather.visibility_m,
      (seen_m) =>
        seen_m >= 9_999
          ? safeText(10_000, units.visibility, "down")
          : safeText(seen_m, units.visibility, "down"),
      { choice: "visibility" },
    ),
    airCell(
      "Ceiling",
      weather.ceiling_m,
      (height_m) => (height_m === "none" ? "none" : safeText(height_m, units.height, "down", 100)),
      { choice: "height" },
    ),
    airCell(
      "Weather",
      weather.weather,
      (codes) => (codes.length === 0 ? "none" : once(codes.map((code) => weatherText(code))).join(", ")),
      weather.blindTo.length === 0 ? {} : { note: `The station cannot tell: ${weather.blindTo.join(", ")}.` },
    ),
  ];
}
