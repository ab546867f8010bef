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
import { type ChartWork, type PanelWork, wholeCurve } from "./chart-work.ts";

/** A panel as far as it can be read. */
export interface PanelRead {
  readonly frame: ChartFrame | undefined;
  readonly curves: readonly { readonly id: string; readonly curve: ReadCurve }[];
  readonly family: Family | undefined;
  /** What is still missing or wrong, and where on the picture. */
  readonly says: string | undefined;
  readonly at: PicturePoint | undefined;
}

export const numberOf = (text: string): number => {
  const read = readFigure(text, "100");
  return read.ok ? read.value : Number.NaN;
};

/** The frame of a panel, or what it lacks. */
function frameOfPanel(panel: PanelWork): { readonly frame?: ChartFrame; readonly says?: string } {
  const { xLow, xHigh, yLow, yHigh } = panel.values;
  const [x1, x2, y1, y2] = [xLow, xHigh, yLow, yHigh].map(numberOf);
  const places = panel.marks.filter((mark) => mark !== null);
  if (places.length < 4) return { says: "Tap the four marks on the picture." };
  const [a, b, c, d] = places;
  if (a === undefined || b === undefined || c === undefined || d === undefined) return {};
  if (x1 === undefined || x2 === undefined || y1 === undefined || y2 === undefined) return {};
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
  return result.ok ? { frame: result.frame } : { says: result.says };
}

/** Reads one panel; `index` says whether its curves are guide lines. */
export function readPanel(panel: PanelWork, index: number): PanelRead {
  const { frame, says } = frameOfPanel(panel);
  const none: PanelRead = { frame, curves: [], family: undefined, says, at: undefined };
  if (frame === undefined) return none;
  const isGuide = index > 0;
  const hasValues = !isGuide && panel.parameterName !== "none";
  const read: { readonly id: string; readonly curve: ReadCurve }[] = [];
  for (const work of panel.curves) {
    if (work.knots.length === 0) continue;
    const parameter = hasValues ? numberOf(work.parameter) : 0;
    if (Number.isNaN(parameter)) return { ...none, curves: read, says: "A curve lacks its value." };
    const result = readCurve(frame, { parameter, points: wholeCurve(work) }, "x");
    if (!result.ok) return { ...none, curves: read, says: result.says, at: result.at };
    read.push({ id: work.id, curve: result.curve });
  }
  const curves = read.map(({ curve }) => curve);
  if (isGuide) {
    const reference = numberOf(panel.reference);
    if (Number.isNaN(reference))
      return { ...none, curves: read, says: "Say where the reference line stands." };
    const guides = guideLines(curves, reference);
    if (!guides.ok) return { ...none, curves: read, says: guides.says };
    const family = familyOf(guides.curves, frame.y.scale);
    return family.ok
      ? { ...none, curves: read, family: family.family }
      : { ...none, curves: read, says: family.says };
  }
  const family = familyOf(curves, frame.y.scale);
  return family.ok
    ? { ...none, curves: read, family: family.family }
    : { ...none, curves: read, says: family.says };
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

/** What stands between the work and a table, the first of it. */
export function firstLack(work: ChartWork, panels: readonly PanelRead[]): string | undefined {
  const at = panels.findIndex(({ says }) => says !== undefined);
  const says = panels[at]?.says;
  if (says === undefined) return undefined;
  return work.panels.length > 1 ? `Panel ${at + 1}: ${says}` : says;
}
