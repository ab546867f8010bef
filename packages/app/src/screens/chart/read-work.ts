import {
  type ChartFrame,
  chartFrame,
  type EyeReading,
  type Family,
  familyOf,
  guideLines,
  type Marks,
  type PicturePoint,
  type ReadCurve,
  readChain,
  readCurve,
} from "@witnessmark/chart";
import { readFigure } from "../../words/figures.ts";
import { type CurveWork, type PanelWork, wholeCurve } from "./chart-work.ts";

/** What stands between a panel and a table, and at which place of the screen it is told. */
export interface Lack {
  readonly says: string;
  /** The marks on the picture, an axis, the reference line, the curves as a whole, or one of them by its id. */
  readonly on: "marks" | "x" | "y" | "reference" | "curves" | { readonly curve: string };
  /** Not done yet, or done wrongly. */
  readonly is: "to-do" | "wrong";
  /** Where on the picture. */
  readonly at?: PicturePoint;
}

/** A panel as far as it can be read. */
export interface PanelRead {
  readonly frame: ChartFrame | undefined;
  readonly curves: readonly { readonly id: string; readonly curve: ReadCurve }[];
  readonly family: Family | undefined;
  readonly lack: Lack | undefined;
}

export const numberOf = (text: string): number => {
  const read = readFigure(text, "100");
  return read.ok ? read.value : Number.NaN;
};

/** What is wrong with a number that was typed; nothing while the field is blank. */
export function wrongNumber(text: string): string | undefined {
  if (text.trim() === "") return undefined;
  const read = readFigure(text, "100");
  return read.ok ? undefined : read.why;
}

/** What is wrong with the two values of an axis, before anything is tapped. */
export function wrongAxis(panel: PanelWork, axis: "x" | "y"): string | undefined {
  const { values } = panel;
  const [low, high] = axis === "x" ? [values.xLow, values.xHigh] : [values.yLow, values.yHigh];
  if (low.trim() === "" || high.trim() === "") return undefined;
  const [from, to] = [numberOf(low), numberOf(high)];
  if (from === to) return `Both are ${low.trim()}. Expected two different values.`;
  const scale = axis === "x" ? panel.xScale : panel.yScale;
  if (scale === "log" && (from <= 0 || to <= 0))
    return "A logarithmic axis has no 0 and nothing below it. Expected values above 0, or a linear axis.";
  return undefined;
}

type FrameRead = { readonly frame: ChartFrame } | { readonly lack: Lack };

/** The frame of a panel, or what it lacks. */
function frameOfPanel(panel: PanelWork): FrameRead {
  const { xLow, xHigh, yLow, yHigh } = panel.values;
  for (const axis of ["x", "y"] as const) {
    const says = wrongAxis(panel, axis);
    if (says !== undefined) return { lack: { says, on: axis, is: "wrong" } };
  }
  const [a, b, c, d] = panel.marks;
  if (!(a && b && c && d)) {
    return { lack: { says: "Tap the four marks on the picture.", on: "marks", is: "to-do" } };
  }
  const [x1, x2, y1, y2] = [numberOf(xLow), numberOf(xHigh), numberOf(yLow), numberOf(yHigh)];
  for (const [axis, low, high] of [
    ["x", x1, x2],
    ["y", y1, y2],
  ] as const) {
    if (Number.isNaN(low) || Number.isNaN(high)) {
      const says = `Say what is printed at the two marks of the ${axis} axis.`;
      return { lack: { says, on: axis, is: "to-do" } };
    }
  }
  const marks: Marks =
    panel.view === "straight"
      ? {
          kind: "axes",
          x: [
            { at: a, value: x1 },
            { at: b, value: x2 },
          ],
          y: [
            { at: c, value: y1 },
            { at: d, value: y2 },
          ],
        }
      : {
          kind: "points",
          points: [
            { at: a, x: x1, y: y1 },
            { at: b, x: x2, y: y1 },
            { at: c, x: x2, y: y2 },
            { at: d, x: x1, y: y2 },
          ],
        };
  const result = chartFrame({ scale: panel.xScale, unit: "" }, { scale: panel.yScale, unit: "" }, marks);
  return result.ok ? result : { lack: { says: result.says, on: "marks", is: "wrong" } };
}

/** Reads one panel; `index` says whether its curves are guide lines. */
export function readPanel(panel: PanelWork, index: number): PanelRead {
  const framed = frameOfPanel(panel);
  if ("lack" in framed) return { frame: undefined, curves: [], family: undefined, lack: framed.lack };
  const { frame } = framed;
  const read: { readonly id: string; readonly curve: ReadCurve }[] = [];
  const lacking = (lack: Lack): PanelRead => ({ frame, curves: read, family: undefined, lack });
  const isGuide = index > 0;
  const hasValues = !isGuide && panel.parameterName !== "none";
  for (const work of panel.curves) {
    if (work.knots.length === 0) continue;
    const one = readOne(frame, work, hasValues);
    if ("lack" in one) return lacking(one.lack);
    read.push({ id: work.id, curve: one.curve });
  }
  const curves = read.map(({ curve }) => curve);
  const reference = numberOf(panel.reference);
  if (isGuide && Number.isNaN(reference)) {
    return lacking({ says: "Say where the reference line stands.", on: "reference", is: "to-do" });
  }
  const named = isGuide ? guideLines(curves, reference) : { ok: true as const, curves };
  if (!named.ok) return lacking({ says: named.says, on: "curves", is: "wrong" });
  const family = familyOf(named.curves, frame.y.scale);
  if (!family.ok)
    return lacking({ says: family.says, on: "curves", is: curves.length === 0 ? "to-do" : "wrong" });
  return { frame, curves: read, family: family.family, lack: undefined };
}

function readOne(
  frame: ChartFrame,
  work: CurveWork,
  hasValue: boolean,
): { readonly curve: ReadCurve } | { readonly lack: Lack } {
  const on = { curve: work.id };
  const parameter = hasValue ? numberOf(work.parameter) : 0;
  if (Number.isNaN(parameter))
    return { lack: { says: "Say which value this curve stands for.", on, is: "to-do" } };
  if (work.knots.length < 2) {
    const says = "One point makes no curve. Tap along it, to its other end.";
    return { lack: { says, on, is: "to-do" } };
  }
  const result = readCurve(frame, { parameter, points: wholeCurve(work) }, "x");
  if (result.ok) return { curve: result.curve };
  return {
    lack: { says: result.says, on, is: "wrong", ...(result.at === undefined ? {} : { at: result.at }) },
  };
}

/** What all panels together say at a place. */
export function valueAt(
  panels: readonly PanelRead[],
  { parameter, entered }: EyeReading,
): number | undefined {
  const families = panels.map(({ family }) => family);
  if (families.some((family) => family === undefined)) return undefined;
  return readChain(
    families.filter((family) => family !== undefined),
    parameter,
    entered,
  );
}
