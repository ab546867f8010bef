import { crosswindComponent, headwindComponent, toSI } from "@witnessmark/engine";
import { bookSource } from "../../book-index.ts";
import type { FieldWind } from "./field-weather.ts";
import { attempt } from "./figure.ts";
import { placeText } from "./place.ts";
import { onRunway, type WindMargin } from "./runway-wind.ts";
import { kt, ktDigits, marginIn } from "./texts.ts";
import { type FieldContext, NOT_KNOWN, openSays, type Told, told, untilOf, withMissing } from "./told.ts";

const KIND: Readonly<Record<WindMargin["limit"]["kind"], string>> = {
  limit: "the limit",
  demonstrated: "demonstrated",
  own: "you asked for",
  tailwind: "the limit",
};

const SIDE = {
  left: "from the left",
  right: "from the right",
  "either side": "from either side",
  none: "",
} as const;

/** Other runways of the field that keep within the limit, the least crosswind first. */
function otherRunways({ figures }: FieldContext, limit_mPerS: number): readonly string[] {
  const { field, runway, weather } = figures;
  const winds = weather.winds.value;
  if (field === undefined || winds === undefined) return [];
  return field.runways
    .filter((other) => other.name !== runway?.name)
    .flatMap((other) => {
      const on = attempt(() => onRunway(winds, other), "").value;
      return on === undefined || on.crosswind_mPerS > limit_mPerS ? [] : [{ other, on }];
    })
    .toSorted((a, b) => a.on.crosswind_mPerS - b.on.crosswind_mPerS)
    .map(
      ({ other, on }) =>
        `Runway ${other.name}: crosswind ${kt(on.crosswind_mPerS, "up")}${on.tailwind_mPerS > 0 ? `, tailwind ${kt(on.tailwind_mPerS, "up")}` : ""}`,
    );
}

/** No wind that anybody flies in reaches a limit beyond this. */
const WORTH_TELLING_mPerS = toSI(60, "kt");

/** `280° 22 G 34 kt (TEMPO 2613/2616)`; the group only where it is one that comes and goes. */
const saidText = ({ text, origin }: FieldWind): string =>
  origin.group === undefined ? text : `${text} (${origin.group})`;

/** `. Full at a gust of 26 kt` */
const fullText = ({ fullAt_mPerS }: WindMargin): string =>
  fullAt_mPerS === undefined || fullAt_mPerS > WORTH_TELLING_mPerS
    ? ""
    : `. Full at a gust of ${kt(fullAt_mPerS, "down")}`;

export function crosswindVerdict(field: FieldContext): Told {
  const { context, figures } = field;
  const { role, planned, crosswind, wind } = figures;
  const { value } = crosswind;
  const id = `wind:${role}:crosswind`;
  const base = () => ({
    topic: "wind" as const,
    title: `Crosswind, ${placeText(planned)}`,
    sources: [bookSource(context.book, "performance.crosswind")],
  });
  const status = withMissing(value?.status, crosswind.missing);
  const on = wind.value;
  if (value === undefined || on === undefined || status === "open") {
    const write = () => ({ ...base(), says: openSays(crosswind.missing), margin: NOT_KNOWN });
    return told(field, { id, write }, "open", crosswind.missing);
  }
  const write = () => {
    const gust = on.worst.wind.gust_mPerS === undefined ? "" : "Gust ";
    const limit = `${kt(value.limit.value_mPerS, "down")} ${KIND[value.limit.kind]}`;
    const side = on.crosswindFrom === "none" ? "" : ` ${SIDE[on.crosswindFrom]}`;
    const of = `${gust}${kt(value.value_mPerS, "up")}${side}, of ${limit}`;
    const { is: strongest, crosswind_mPerS, crosswindFrom } = on.strongest;
    const isAnother = strongest.wind !== on.worst.wind;
    const stronger = isAnother ? `. Strongest ${saidText(strongest)}` : "";
    const variable = on.isVariable ? ". Variable: all of it counts as crosswind and as tailwind" : "";
    return {
      ...base(),
      says: `${of}${value.status === "stop" ? "" : fullText(value)}${variable}${stronger}`,
      margin: marginIn(value.left_mPerS, "kt", "over"),
      lines: [
        { label: "Wind with the most crosswind", value: saidText(on.worst) },
        { label: "Runway", value: `${figures.runway?.trueHeading_deg ?? 0}° true` },
        { label: "Crosswind", value: `${kt(value.value_mPerS, "up")} ${SIDE[on.crosswindFrom]}`.trim() },
        ...(isAnother
          ? [
              { label: "Strongest wind", value: saidText(strongest) },
              {
                label: "Crosswind of that",
                value: `${kt(crosswind_mPerS, "up")} ${SIDE[crosswindFrom]}`.trim(),
              },
            ]
          : []),
        { label: "Headwind", value: kt(on.headwind_mPerS, "down") },
        { label: "Tailwind", value: kt(on.tailwind_mPerS, "up") },
        { label: "At most", value: limit },
      ],
      formula: crosswindComponent,
      because: [`${of}${variable}`],
      wayOut: [...otherRunways(field, value.limit.value_mPerS), "Wait for less wind"],
      until: untilOf(crosswind, planned.code),
    };
  };
  return told(field, { id, write }, status);
}

/** Only where there is a tailwind, or may be one. */
export function tailwindVerdict(field: FieldContext): readonly Told[] {
  const { context, figures } = field;
  const { role, planned, tailwind } = figures;
  const { value } = tailwind;
  // an unknown wind is told by the crosswind
  if (value === undefined || value.value_mPerS <= 1e-9) return [];
  const status = withMissing(value.status, tailwind.missing);
  if (status === "open") return [];
  const { limit, left_mPerS } = value;
  const of =
    limit === undefined
      ? `${kt(value.value_mPerS, "up")}, and the manual gives no limit`
      : `${ktDigits(value.value_mPerS, "up")} of ${kt(limit.value_mPerS, "down")}`;
  const draft = {
    id: `wind:${role}:tailwind`,
    topic: "wind" as const,
    title: `Tailwind, ${placeText(planned)}`,
    says: of,
    margin:
      left_mPerS === undefined
        ? { value: 0, unit: "", text: "no limit given" }
        : marginIn(left_mPerS, "kt", "over"),
    lines: [
      { label: "Tailwind of the gust", value: kt(value.value_mPerS, "up") },
      ...(limit === undefined
        ? [{ label: "At most", value: "none given by the manual; it counts in the distances" }]
        : []),
    ],
    formula: headwindComponent,
    sources: [bookSource(context.book, "performance.tailwindMax")],
    because: [`Tailwind ${of}`],
    wayOut: ["The other direction of the runway", "Wait for another wind"],
    until: untilOf(tailwind, planned.code),
  };
  return [told(field, draft, status)];
}
