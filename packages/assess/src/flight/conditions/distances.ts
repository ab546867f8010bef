import type {
  Performance,
  PerformanceQuantity,
  PerformanceTable,
  Runway,
  TableAxisName,
} from "@witnessmark/book";
import {
  type ChainStep,
  countedWind,
  type DistanceFactor,
  type DistanceFigures,
  distanceChain,
  formatMeasure,
  type HarmlessEnd,
  interpolateTable,
  roundToSafeSide,
  type TableAnswer,
} from "@witnessmark/engine";
import type { RunwayCondition, Status } from "@witnessmark/ledger";
import { remembered } from "../remembered.ts";
import type { Missing } from "./figure.ts";
import { slopeFactorsOf, surfaceFactorsOf } from "./surface-factors.ts";

/** At what a table is read. */
export interface TablePoint {
  readonly mass_kg: number;
  readonly pressureAltitude_m: number;
  /** The hottest that the report leaves. */
  readonly oat_K: number;
  /** Along the runway, headwind above zero; not yet shared out. */
  readonly along_mPerS: number;
}

export type TableMode = "linear" | "next-worse";

/** One printed figure as it was read. */
export interface ReadFigure {
  readonly table: PerformanceTable;
  readonly value_m: number;
  readonly answer: TableAnswer & { readonly ok: true };
}

/** A distance that is needed, against one that is there. Whole metres: needed up, left down. */
export interface Need {
  readonly name: "ground roll" | "over 50 ft" | "accelerate and stop";
  readonly needed_m: number;
  /** What is needed before it is rounded up. */
  readonly exact_m: number;
  readonly available_m: number;
  readonly availableName: "TORA" | "TODA" | "ASDA" | "LDA";
  /** Below zero when it does not fit. */
  readonly left_m: number;
}

/** A take-off, a landing or an abandoned take-off: the table's figure, each factor, what is needed and left. */
export interface DistanceAnswer {
  readonly kind: "take-off" | "landing" | "accelerate-stop";
  readonly at: TablePoint;
  /** Of the wind along the runway, as the distance may count it. */
  readonly counted_mPerS: number;
  readonly read: { readonly groundRoll?: ReadFigure; readonly total: ReadFigure };
  readonly start: DistanceFigures;
  readonly steps: readonly ChainStep[];
  readonly needs: readonly Need[];
  /** The need with the least left. */
  readonly nearest: Need;
  /** Fits, and with so little that what is published as wise would not. */
  readonly isWithinAdvice: boolean;
  readonly status: Status;
}

/** Beyond these ends the edge of a table is the worse case already: light, low, cold, into a strong wind. */
export const HARMLESS: Readonly<Partial<Record<TableAxisName, HarmlessEnd>>> = {
  mass_kg: "below",
  pressureAltitude_m: "below",
  oat_K: "below",
  headwind_mPerS: "above",
};

const AXIS = {
  mass_kg: { name: "mass", unit: "kg", step: 1 },
  pressureAltitude_m: { name: "pressure altitude", unit: "ft", step: 1 },
  oat_K: { name: "temperature", unit: "degC", step: 1 },
  headwind_mPerS: { name: "headwind", unit: "kt", step: 1 },
  slope_1: { name: "slope", unit: "percent", step: 0.1 },
} as const satisfies Record<TableAxisName, unknown>;

const isAxis = (name: string): name is TableAxisName => Object.hasOwn(AXIS, name);

/** A value on an axis as a person reads it: `2740 kg`, `−12 kt headwind` as `tailwind 12 kt`. */
export function axisText(name: string, value: number): string {
  if (!isAxis(name)) return String(value);
  const { unit, step } = AXIS[name];
  if (name === "headwind_mPerS" && value < 0) return `tailwind ${formatMeasure(-value, unit, step)}`;
  return `${AXIS[name].name} ${formatMeasure(value, unit, step)}`;
}

export function offTable(table: PerformanceTable, answer: TableAnswer & { readonly ok: false }): Missing {
  const asked = axisText(answer.axis, answer.asked);
  const nearest =
    answer.nearest === undefined ? "" : `; the nearest it has is ${axisText(answer.axis, answer.nearest)}`;
  const why = answer.why === "off-table" ? "is beyond the table" : "is where the table has no figure";
  return { what: `a figure of “${table.title}”: ${asked} ${why}${nearest}` };
}

export interface DistanceAsk {
  readonly performance: Performance;
  readonly runway: Runway;
  readonly condition: RunwayCondition;
  readonly at: TablePoint;
  /** What the pilot asks for beyond the book. */
  readonly ownFactor_1?: number | undefined;
  readonly mode?: TableMode | undefined;
}

export type DistanceFound =
  | { readonly ok: true; readonly answer: DistanceAnswer }
  | { readonly ok: false; readonly missing: readonly Missing[] };

interface Kind {
  readonly kind: DistanceAnswer["kind"];
  readonly phase: "take-off" | "landing";
  readonly groundRoll?: PerformanceQuantity;
  readonly total: PerformanceQuantity;
  /** The least that is published as wise, for figures without any factor. */
  readonly advised_1: number;
}

/** Advised by class B for a take-off, by SAFO 19001 for a landing; see the advisory factors of the rules. */
export const KINDS = {
  "take-off": {
    kind: "take-off",
    phase: "take-off",
    groundRoll: "take-off-ground-roll",
    total: "take-off-over-50ft",
    advised_1: 1.25,
  },
  landing: {
    kind: "landing",
    phase: "landing",
    groundRoll: "landing-ground-roll",
    total: "landing-over-50ft",
    advised_1: 1.15,
  },
  "accelerate-stop": { kind: "accelerate-stop", phase: "take-off", total: "accelerate-stop", advised_1: 1 },
} as const satisfies Record<string, Kind>;

function readOne(
  table: PerformanceTable,
  { at, runway, mode = "linear" }: DistanceAsk,
  counted_mPerS: number,
): ReadFigure | Missing {
  const point: Readonly<Record<TableAxisName, number>> = {
    mass_kg: at.mass_kg,
    pressureAltitude_m: at.pressureAltitude_m,
    oat_K: at.oat_K,
    headwind_mPerS: counted_mPerS,
    slope_1: runway.slope_1,
  };
  const answer = interpolateTable(table, point, { mode, worse: "more", harmless: HARMLESS });
  return answer.ok ? { table, value_m: answer.value, answer } : offTable(table, answer);
}

export const hasAxis = (table: PerformanceTable, name: TableAxisName): boolean =>
  table.axes.some((axis) => axis.name === name);

/** Of two tables of one quantity, with different flaps, the first of the book. */
const tableOf = ({ tables }: Performance, quantity: PerformanceQuantity): PerformanceTable | undefined =>
  tables.find((table) => table.quantity === quantity);

/** Whole metres, so that a last bit of a conversion does not make a metre. */
const up_m = (distance_m: number): number => roundToSafeSide(distance_m, 1, "up");

function needsOf(kind: DistanceAnswer["kind"], end: DistanceFigures, runway: Runway): readonly Need[] {
  const need = (
    name: Need["name"],
    figure_m: number | undefined,
    available_m: number,
    availableName: Need["availableName"],
  ): readonly Need[] => {
    if (figure_m === undefined) return [];
    const left_m = roundToSafeSide(available_m - figure_m, 1, "down");
    return [{ name, needed_m: up_m(figure_m), exact_m: figure_m, available_m, availableName, left_m }];
  };
  if (kind === "take-off")
    return [
      ...need("over 50 ft", end.total_m, runway.toda_m, "TODA"),
      ...need("ground roll", end.groundRoll_m, runway.tora_m, "TORA"),
    ];
  if (kind === "landing")
    return [
      ...need("over 50 ft", end.total_m, runway.lda_m, "LDA"),
      ...need("ground roll", end.groundRoll_m, runway.lda_m, "LDA"),
    ];
  return need("accelerate and stop", end.total_m, runway.asda_m, "ASDA");
}

const OWN = { stage: "safety", id: "own", title: "own", of: "each", source: "the pilot" } as const;

/** The factors on what was read, and what comes out against what is there. */
function chained(
  kind: Kind,
  { at, runway, ownFactor_1 }: DistanceAsk,
  counted_mPerS: number,
  read: DistanceAnswer["read"],
  byBook: readonly DistanceFactor[],
): DistanceFound {
  const start: DistanceFigures = {
    ...(read.groundRoll === undefined ? {} : { groundRoll_m: read.groundRoll.value_m }),
    total_m: read.total.value_m,
  };
  const isStop = kind.kind === "accelerate-stop";
  const own = ownFactor_1 === undefined || isStop ? [] : [{ ...OWN, factor_1: ownFactor_1 }];
  const chain = distanceChain(start, [...byBook, ...own]);
  const advised = distanceChain(start, [...byBook, { ...OWN, id: "advised", factor_1: kind.advised_1 }]);
  if (!chain.ok || !advised.ok)
    return { ok: false, missing: [{ what: `a table of ${kind.groundRoll ?? kind.total} in the book` }] };
  const needs = needsOf(kind.kind, chain.end, runway);
  const nearest = needs.reduce((least, one) => (one.left_m < least.left_m ? one : least));
  const isWithinAdvice = needsOf(kind.kind, advised.end, runway).every(({ left_m }) => left_m >= 0);
  // private flight need not be able to stop from lift-off speed; it is worth knowing
  const past: Status = isStop ? "caution" : "stop";
  return {
    ok: true,
    answer: {
      kind: kind.kind,
      at,
      counted_mPerS,
      read,
      start,
      steps: chain.steps,
      needs,
      nearest,
      isWithinAdvice,
      status: nearest.left_m < 0 ? past : isWithinAdvice ? "clear" : "caution",
    },
  };
}

const rememberedCounted = remembered<number>();

/** Of the wind along the runway what may be counted: the share of the book. All tables at one point count the same. */
export const countedOf_mPerS = (performance: Performance, at: TablePoint): number =>
  rememberedCounted(at, [performance], () =>
    countedWind.compute({
      wind_mPerS: at.along_mPerS,
      headwindCredit_1: performance.headwindCredit_1,
      tailwindCharge_1: performance.tailwindCharge_1,
    }),
  );

interface RunwayFactors {
  readonly surface: ReturnType<typeof surfaceFactorsOf>;
  readonly slope: ReturnType<typeof slopeFactorsOf>;
}

/** Neither mass nor weather moves what a runway adds. */
const rememberedFactors = {
  "take-off": remembered<RunwayFactors>(),
  landing: remembered<RunwayFactors>(),
  "accelerate-stop": remembered<RunwayFactors>(),
} as const;

/**
 * A distance by the book: its table, then wind by the table's own axis, surface, slope and the pilot's own factor, each
 * multiplied and kept. Nothing is extrapolated; where the book has no figure, what is missing is named.
 *
 * @throws {InputError} for a table that is none; a book that was read has no such
 */
export function distanceOf(name: keyof typeof KINDS, ask: DistanceAsk): DistanceFound {
  const { performance, runway, condition, at } = ask;
  const kind: Kind = KINDS[name];
  const totalTable = tableOf(performance, kind.total);
  if (totalTable === undefined)
    return { ok: false, missing: [{ what: `a table of ${kind.total} in the book` }] };
  const rollTable = kind.groundRoll === undefined ? undefined : tableOf(performance, kind.groundRoll);
  const tables = rollTable === undefined ? [totalTable] : [totalTable, rollTable];
  const windless = tables.filter((table) => !hasAxis(table, "headwind_mPerS"));
  if (windless.length > 0 && at.along_mPerS < 0)
    return { ok: false, missing: [{ what: `what a tailwind does to “${windless[0]?.title}”, in the book` }] };
  const counted_mPerS = countedOf_mPerS(performance, at);
  const total = readOne(totalTable, ask, counted_mPerS);
  const roll = rollTable === undefined ? undefined : readOne(rollTable, ask, counted_mPerS);
  const { surface, slope } = rememberedFactors[name](runway, [performance, condition], () => {
    const quantities = kind.groundRoll === undefined ? [kind.total] : [kind.groundRoll, kind.total];
    const hasSlope = tables.every((table) => hasAxis(table, "slope_1"));
    return {
      surface: surfaceFactorsOf(performance, quantities, runway, condition),
      slope: slopeFactorsOf(performance, hasSlope, runway, kind.phase),
    };
  });
  const missing = [
    ...("what" in total ? [total] : []),
    ...(roll !== undefined && "what" in roll ? [roll] : []),
    ...(surface.ok ? [] : [surface.missing]),
    ...(slope.ok ? [] : [slope.missing]),
  ];
  if ("what" in total || (roll !== undefined && "what" in roll) || !surface.ok || !slope.ok)
    return { ok: false, missing };
  const byBook = [...surface.factors, ...slope.factors];
  const read = { ...(roll === undefined ? {} : { groundRoll: roll }), total };
  return chained(kind, ask, counted_mPerS, read, byBook);
}
