import { type Scale, spread } from "../frame/chart-frame.ts";

/** One point that a person read from the paper by eye, without having seen what the curves say. */
export interface EyeReading {
  /** The value of the curve; 0 where the chart has one curve. */
  readonly parameter: number;
  /** What each panel was entered by. */
  readonly entered: readonly number[];
  readonly read: number;
}

/** How a reading by eye and the curves agree. */
export interface CheckedPoint extends EyeReading {
  /** What the curves say there; absent where they do not reach. */
  readonly curves: number | undefined;
  /** Reading less curves, in the unit of the axis. */
  readonly off: number | undefined;
  /** The size of it as a share of full scale, as the axis is spread. */
  readonly off_1: number | undefined;
  readonly agrees: boolean;
}

export type CheckVerdict =
  | { readonly taken: true; readonly points: readonly CheckedPoint[]; readonly because: "agree" | "said" }
  | { readonly taken: false; readonly points: readonly CheckedPoint[]; readonly says: string };

/** Two readings by eye are asked for. */
export const CHECK_POINTS = 2;
/**
 * How far a reading by eye may lie from the curves: 1 % of full scale.
 *
 * @source common practice: the eye divides the small squares of a printed chart into halves
 */
export const CHECK_TOLERANCE_1 = 0.01;
/** Readings nearer to each other than this share of the axis, on one curve, are one. */
const APART_1 = 0.05;

interface Checking {
  readonly value: (reading: EyeReading) => number | undefined;
  /** Full scale of what each panel is entered by. */
  readonly enteredSpans: readonly (readonly [number, number])[];
  readonly readSpan: readonly [number, number];
  readonly readScale: Scale;
  /** Why a difference stands, in the person's own words; blank for none. */
  readonly why?: string;
}

/** Holds readings by eye against the curves; two that agree, or a reason, and the table may be taken. */
export function checkPoints(readings: readonly EyeReading[], checking: Checking): CheckVerdict {
  const full = Math.abs(
    spread(checking.readScale, checking.readSpan[1]) - spread(checking.readScale, checking.readSpan[0]),
  );
  const points = readings.map((reading): CheckedPoint => {
    const curves = checking.value(reading);
    if (curves === undefined) return { ...reading, curves, off: undefined, off_1: undefined, agrees: false };
    const off_1 =
      Math.abs(spread(checking.readScale, reading.read) - spread(checking.readScale, curves)) / full;
    return { ...reading, curves, off: reading.read - curves, off_1, agrees: off_1 <= CHECK_TOLERANCE_1 };
  });
  const beyond = points.findIndex(({ curves }) => curves === undefined);
  if (beyond >= 0) {
    return {
      taken: false,
      points,
      says: `The curves do not reach point ${beyond + 1}. Read a point that they cover.`,
    };
  }
  if (points.length < CHECK_POINTS) {
    return { taken: false, points, says: `Read ${CHECK_POINTS - points.length} more from the paper.` };
  }
  if (!areApart(readings, checking.enteredSpans)) {
    return {
      taken: false,
      points,
      says: "The two points are nearly the same. Read one of them elsewhere on the chart.",
    };
  }
  if (points.every(({ agrees }) => agrees)) return { taken: true, points, because: "agree" };
  if ((checking.why ?? "").trim() !== "") return { taken: true, points, because: "said" };
  const worst_1 = Math.max(...points.map(({ off_1 }) => off_1 ?? 0));
  const worst = points.findIndex(({ off_1 }) => off_1 === worst_1);
  const size = (worst_1 * 100).toPrecision(2);
  return {
    taken: false,
    points,
    says: `Your reading of point ${worst + 1} is off by ${size} % of full scale; at most ${CHECK_TOLERANCE_1 * 100} % is expected. Look at the axes and the curve there again, or say why it stands.`,
  };
}

function areApart(readings: readonly EyeReading[], spans: readonly (readonly [number, number])[]): boolean {
  const [first, ...rest] = readings;
  if (first === undefined) return false;
  return rest.some(
    ({ parameter, entered }) =>
      parameter !== first.parameter ||
      spans.some(
        ([least, most], i) =>
          Math.abs((entered[i] ?? 0) - (first.entered[i] ?? 0)) > APART_1 * Math.abs(most - least),
      ),
  );
}
