import { climbGradientOfRate, climbRateForGradient, toSI, trueAirspeed } from "@witnessmark/engine";
import type { PlannedField, Status } from "@witnessmark/ledger";
import type { Missing } from "./figure.ts";
import { surfaceOf } from "./place.ts";
import { countedAlong_mPerS, type PerformanceAsk, readCell } from "./read-performance.ts";

/** Who asks for a gradient. */
export interface GradientAsked {
  readonly gradient_1: number;
  readonly by: "you" | "departures" | "missed-approaches";
}

/** The climb after the take-off or a go-around, as the book has it and over the ground. */
export interface ClimbFigures {
  readonly title: string;
  readonly gradientInAir_1: number;
  readonly calibrated_mPerS: number;
  readonly trueAirspeed_mPerS: number;
  /** Of the wind along the runway, as it is counted. */
  readonly counted_mPerS: number;
  readonly groundSpeed_mPerS: number;
  readonly rate_mPerS: number;
  /** Over the ground. */
  readonly gradient_1: number;
  readonly asked?: GradientAsked;
  /** What the rate must be at that ground speed. */
  readonly askedRate_mPerS?: number;
  readonly status: Status;
}

/**
 * Departures by instruments are laid out for it where they say nothing else: AIM 5-2-9; missed approaches too: AIM
 * 5-4-21.
 */
export const DEPARTURE_GRADIENT_1 = toSI(200, "ftPerNM");

export type ClimbFound =
  | { readonly ok: true; readonly climb: ClimbFigures }
  | { readonly ok: false; readonly missing: readonly Missing[] };

/** After the take-off, or after a landing that is not made: each has a table of its own. */
export type ClimbKind = "climb-gradient" | "go-around-gradient";

export interface ClimbAsk extends PerformanceAsk {
  readonly kind?: ClimbKind;
  readonly planned: Pick<PlannedField, "code" | "runway" | "condition">;
  readonly isByInstruments: boolean;
  readonly own_1?: number | undefined;
}

/** The stronger of what the pilot asks for and what a departure by instruments is laid out for. */
function askedOf({ kind, isByInstruments, own_1 }: ClimbAsk): GradientAsked | undefined {
  if (kind === "go-around-gradient")
    return isByInstruments ? { gradient_1: DEPARTURE_GRADIENT_1, by: "missed-approaches" } : undefined;
  const rule = isByInstruments ? DEPARTURE_GRADIENT_1 : undefined;
  if (own_1 === undefined) return rule === undefined ? undefined : { gradient_1: rule, by: "departures" };
  return rule !== undefined && rule > own_1
    ? { gradient_1: rule, by: "departures" }
    : { gradient_1: own_1, by: "you" };
}

/** On the limit is within it. */
const ROUNDING_1 = 1e-9;

function statusOf(gradient_1: number, asked: GradientAsked | undefined): Status {
  if (gradient_1 <= 0 || (asked !== undefined && gradient_1 < asked.gradient_1 - ROUNDING_1)) return "stop";
  return gradient_1 < DEPARTURE_GRADIENT_1 - ROUNDING_1 ? "caution" : "clear";
}

/**
 * The climb by the book's table, turned into a rate and a gradient over the ground by the speed that the table is for
 * and the wind as the distances count it. Undefined where the book has no such table and nobody asks.
 *
 * @throws {InputError} for a speed or air that the engine refuses
 */
export function climbOf(ask: ClimbAsk): ClimbFound | undefined {
  const { performance, at, runway, planned, kind = "climb-gradient" } = ask;
  const { condition } = planned;
  const asked = askedOf(ask);
  const table = performance.tables.find(({ quantity }) => quantity === kind);
  if (table === undefined)
    // a book that has no go-around says nothing of one: many manuals do not
    return asked === undefined || kind === "go-around-gradient"
      ? undefined
      : { ok: false, missing: [{ what: "a table of climb-gradient in the book" }] };
  const read = readCell(table, ask, "less");
  const lacks: readonly Missing[] = [
    ...("what" in read ? [read] : []),
    ...(table.speed_mPerS === undefined ? [{ what: `the airspeed of “${table.title}”, in the book` }] : []),
  ];
  if ("what" in read || table.speed_mPerS === undefined) return { ok: false, missing: lacks };
  const ofSurface = performance.factors.filter(
    ({ quantities, when }) =>
      quantities.includes(kind) && (when.surface === undefined || when.surface === runway.surface),
  );
  if (condition === undefined && ofSurface.some(({ when }) => when.condition !== undefined))
    return { ok: false, missing: [surfaceOf(planned)] };
  const factor_1 = ofSurface
    .filter(({ when }) => when.condition === undefined || when.condition === condition)
    .reduce((product, one) => product * one.factor_1, 1);
  const gradientInAir_1 = read.value > 0 ? read.value * factor_1 : read.value;
  const trueAirspeed_mPerS = trueAirspeed.compute({
    calibratedAirspeed_mPerS: table.speed_mPerS,
    pressureAltitude_m: at.pressureAltitude_m,
    oat_K: at.oat_K,
  });
  const isCounted = table.axes.some(({ name }) => name === "headwind_mPerS");
  const counted_mPerS = countedAlong_mPerS(ask);
  const groundSpeed_mPerS = trueAirspeed_mPerS - counted_mPerS;
  // a table with an axis of wind is of the gradient over the ground already
  const rate_mPerS = climbRateForGradient.compute({
    gradient_1: gradientInAir_1,
    groundSpeed_mPerS: isCounted ? groundSpeed_mPerS : trueAirspeed_mPerS,
  });
  const gradient_1 = climbGradientOfRate.compute({ rateOfClimb_mPerS: rate_mPerS, groundSpeed_mPerS });
  return {
    ok: true,
    climb: {
      title: table.title,
      gradientInAir_1,
      calibrated_mPerS: table.speed_mPerS,
      trueAirspeed_mPerS,
      counted_mPerS,
      groundSpeed_mPerS,
      rate_mPerS,
      gradient_1,
      ...(asked === undefined
        ? {}
        : {
            asked,
            askedRate_mPerS: climbRateForGradient.compute({
              gradient_1: asked.gradient_1,
              groundSpeed_mPerS,
            }),
          }),
      status: statusOf(gradient_1, asked),
    },
  };
}
