import type { ChainStep } from "@witnessmark/engine";
import type { Status } from "@witnessmark/ledger";
import type { Source, WorkingLine } from "../../assessment.ts";
import { bookSource } from "../../book-index.ts";
import { type CountedWind, countedWindFormula, countedWindLines } from "./counted-wind-lines.ts";
import { axisText, type DistanceAnswer, hasAxis, KINDS, type Need } from "./distances.ts";
import type { FieldFigures } from "./field-figures.ts";
import type { Figure } from "./figure.ts";
import { degC, marginIn, metreDigits, metres, metreTenths } from "./texts.ts";
import {
  type FieldContext,
  NOT_KNOWN,
  openSays,
  type Told,
  told,
  untilOf,
  type Warned,
  withMissing,
} from "./told.ts";

const figureText = (value: number): string => String(Number(value.toPrecision(4)));
const exact = (length_m: number): string => metreTenths(length_m, "up");

/** In tenths of a metre, so that a reader can do it again: the whole metre comes at the end. */
function stepLine({ factor, before, after }: ChainStep): WorkingLine {
  const { factor_1, of, title, source, id } = factor;
  const to = exact(after.total_m ?? after.groundRoll_m ?? 0);
  const isOfRoll = of === "ground-roll" && before.total_m !== undefined && before.groundRoll_m !== undefined;
  return {
    label: `${title} (${source ?? id})`,
    value: isOfRoll
      ? `× ${figureText(factor_1)} of the ground roll: ${exact(before.total_m)} + ${figureText(factor_1 - 1)} × ${exact(before.groundRoll_m)} = ${to}`
      : `${exact(before.total_m ?? before.groundRoll_m ?? 0)} × ${figureText(factor_1)} = ${to}`,
  };
}

const needLine = ({ name, needed_m, exact_m, available_m, availableName }: Need): WorkingLine => ({
  label: `${name} against ${availableName}`,
  value: `${exact(exact_m)}, so ${metreDigits(needed_m, "up")} of ${metres(available_m, "down")}`,
});

/** The table's figure, each factor, what is needed of what is there. */
export function distanceLines(
  { at, read, steps, needs }: DistanceAnswer,
  wind: CountedWind | undefined,
): readonly WorkingLine[] {
  const total = read.total;
  const edges = total.answer.edges.map(({ axis, asked, used }) => ({
    label: axisText(axis, asked),
    value: `at the edge of the table, ${axisText(axis, used)}`,
  }));
  return [
    { label: "Mass", value: `${Math.ceil(at.mass_kg - 1e-9)}\u00A0kg` },
    {
      label: "Pressure altitude",
      value: axisText("pressureAltitude_m", at.pressureAltitude_m).replace("pressure altitude ", ""),
    },
    { label: "Temperature", value: degC(at.oat_K) },
    ...(wind === undefined ? [] : countedWindLines(wind)),
    ...edges,
    ...(read.groundRoll === undefined
      ? []
      : [{ label: read.groundRoll.table.title, value: exact(read.groundRoll.value_m) }]),
    { label: total.table.title, value: exact(total.value_m) },
    ...steps.map(stepLine),
    ...needs.map(needLine),
  ];
}

const SAYS_FACTORS = ["", ", one factor in", ", both factors in"] as const;

function saysOf({ nearest, steps, at }: DistanceAnswer, condition: string | undefined): string {
  const factors = SAYS_FACTORS[steps.length] ?? ", all factors in";
  const surface = condition === undefined ? "" : `, ${condition}`;
  return `${metreDigits(nearest.needed_m, "up")} of ${metres(nearest.available_m, "down")}${surface}, ${degC(at.oat_K)}${factors}`;
}

function sourcesOf(field: FieldContext, { read, steps }: DistanceAnswer): readonly Source[] {
  const { book } = field.context;
  const tables = [read.groundRoll, read.total].filter((figure) => figure !== undefined);
  return [
    ...tables.map(({ table }) => bookSource(book, `performance.tables, ${table.title}`)),
    ...steps
      .filter(({ factor }) => factor.stage === "surface")
      .map(({ factor }) => bookSource(book, `performance.factors, ${factor.id}`)),
  ];
}

const NAMES = {
  "take-off": "Take-off at",
  landing: "Landing at",
  "accelerate-stop": "Stop from lift-off speed at",
} as const;

function verdict<S extends Status>(
  field: FieldContext,
  figure: Figure<DistanceAnswer>,
  kind: keyof typeof KINDS,
  worth: (status: Status) => S,
): Told<S | "open"> {
  const { context, figures } = field;
  const { role, planned } = figures;
  const id = `runway:${role}:${kind === "accelerate-stop" ? "stop" : kind}`;
  const base = () => ({ topic: "runway" as const, title: `${NAMES[kind]} ${planned.code}` });
  const { value, missing } = figure;
  const status = withMissing(value === undefined ? undefined : worth(value.status), missing);
  if (value === undefined || status === "open") {
    const write = () => ({
      ...base(),
      says: openSays(missing),
      margin: NOT_KNOWN,
      sources: [bookSource(context.book, "performance.tables")],
    });
    return told(field, { id, write }, "open", missing);
  }
  const write = () => {
    const { nearest, at, counted_mPerS } = value;
    const { performance } = context.book;
    const { groundRoll, total } = value.read;
    const isUsed = [groundRoll, total].some(
      (read) => read !== undefined && hasAxis(read.table, "headwind_mPerS"),
    );
    const wind: CountedWind | undefined =
      performance === undefined
        ? undefined
        : { along_mPerS: at.along_mPerS, counted_mPerS, performance, isUsed };
    const short = `${nearest.name}: ${metreDigits(nearest.needed_m, "up")} needed, ${metres(nearest.available_m, "down")} there`;
    const advice = `Fits as it is, and not with the factor of ${KINDS[kind].advised_1} that is advised on figures of a manual`;
    return {
      ...base(),
      says: saysOf(value, planned.condition),
      margin: marginIn(nearest.left_m, "m", "short"),
      lines: distanceLines(value, wind),
      ...(wind?.isUsed === true ? { formula: countedWindFormula(wind) } : {}),
      sources: sourcesOf(field, value),
      because: [nearest.left_m < 0 ? short : advice],
      wayOut: ["Less mass", "A longer runway, or more headwind", "Wait for colder air"],
      until: untilOf(figure, planned.code),
    };
  };
  return told(field, { id, write }, status);
}

/** The distance that the field is used for: the take-off or the landing. */
export const distanceVerdict = (field: FieldContext<FieldFigures>): Told =>
  verdict(
    field,
    field.figures.distance,
    field.figures.role === "departure" ? "take-off" : "landing",
    (status) => status,
  );

/** Private flight need not be able to stop from lift-off speed; it is worth knowing. */
const atMostCaution = (status: Status): Warned => (status === "stop" ? "caution" : status);

/** The stop from lift-off speed. @param distance what keeps that open keeps this open too, and is told once */
export function stopVerdict(
  field: FieldContext<FieldFigures>,
  distance: Pick<Told, "status">,
): readonly Told<Warned>[] {
  const { stop } = field.figures;
  if (stop === undefined) return [];
  const one = verdict(field, stop, "accelerate-stop", atMostCaution);
  return distance.status === "open" && one.status === "open" ? [] : [one];
}
