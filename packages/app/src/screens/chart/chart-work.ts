import type { PerformanceQuantity } from "@witnessmark/book";
import type { PicturePoint, Scale } from "@witnessmark/chart";
import type { UnitId } from "@witnessmark/engine";
import { AXES, type AxisName, QUANTITIES } from "./wanted.ts";

/** What lies under the finger: one of the marks of the axes, or a point of a curve. */
export type Chosen =
  | { readonly on: "mark"; readonly index: number }
  | { readonly on: "curve"; readonly curve: string; readonly index: number };

/** A curve as it is traced: what was tapped, and what was followed from each tap to the next. */
export interface CurveWork {
  readonly id: string;
  /** As typed. */
  readonly parameter: string;
  readonly knots: readonly PicturePoint[];
  /** One shorter than `knots`; empty where the line between is straight. */
  readonly between: readonly (readonly PicturePoint[])[];
}

/** One panel of a chart: most have one. */
export interface PanelWork {
  readonly id: string;
  readonly view: "straight" | "slanted";
  readonly xName: AxisName;
  readonly xUnit: UnitId;
  readonly xScale: Scale;
  readonly yScale: Scale;
  /** What each curve stands for; in a later panel the curves are guide lines. `none` where there is one curve. */
  readonly parameterName: AxisName | "none";
  readonly parameterUnit: UnitId;
  /** The two known values of each axis, as typed. */
  readonly values: {
    readonly xLow: string;
    readonly xHigh: string;
    readonly yLow: string;
    readonly yHigh: string;
  };
  /** Four places: by corners round from both low, else x low, x high, y low, y high. */
  readonly marks: readonly (PicturePoint | null)[];
  readonly curves: readonly CurveWork[];
  /** A later panel is entered where its guide lines stand at this value of x, as typed. */
  readonly reference: string;
}

/** What a paper is being made into. */
export interface ChartWork {
  readonly kind: "table" | "envelope";
  readonly quantity: PerformanceQuantity;
  readonly unit: UnitId;
  readonly panels: readonly PanelWork[];
  readonly panel: number;
  readonly chosen: Chosen | null;
  /** What a tap on the picture sets next. */
  readonly tapping: "marks" | "curves";
  readonly curve: string;
  readonly snaps: boolean;
  readonly follows: boolean;
}

export function newCurve(id: string): CurveWork {
  return { id, parameter: "", knots: [], between: [] };
}

export function newPanel(id: string, isFirst: boolean): PanelWork {
  return {
    id,
    view: "slanted",
    xName: isFirst ? "oat" : "mass",
    xUnit: isFirst ? AXES.oat.unit : AXES.mass.unit,
    xScale: "linear",
    yScale: "linear",
    parameterName: "pressureAltitude",
    parameterUnit: AXES.pressureAltitude.unit,
    values: { xLow: "", xHigh: "", yLow: "", yHigh: "" },
    marks: [null, null, null, null],
    curves: [newCurve(`${id}-1`)],
    reference: "",
  };
}

export function newWork(kind: ChartWork["kind"], quantity: PerformanceQuantity): ChartWork {
  return {
    kind,
    quantity,
    unit: kind === "envelope" ? "kg" : QUANTITIES[quantity].unit,
    panels: [newPanel("p1", true)],
    panel: 0,
    chosen: null,
    tapping: "marks",
    curve: "p1-1",
    snaps: true,
    follows: kind === "table",
  };
}

export const panelInHand = (work: ChartWork): PanelWork => work.panels[work.panel] ?? newPanel("p1", true);

export const changePanel = (work: ChartWork, change: Partial<PanelWork>): ChartWork => ({
  ...work,
  panels: work.panels.map((panel, i) => (i === work.panel ? { ...panel, ...change } : panel)),
});

export const changeCurve = (
  work: ChartWork,
  id: string,
  change: (curve: CurveWork) => CurveWork,
): ChartWork =>
  changePanel(work, {
    curves: panelInHand(work).curves.map((curve) => (curve.id === id ? change(curve) : curve)),
  });

/** Follows the line from a tap to the next; none where it is not wanted. */
export type Follow = ((from: PicturePoint, to: PicturePoint) => readonly PicturePoint[]) | null;

/** A tap on the picture: the next mark of the axes, or one more point at the end of the curve in hand. */
export function tapped(work: ChartWork, at: PicturePoint, follow: Follow): ChartWork {
  const panel = panelInHand(work);
  if (work.tapping === "marks") {
    const free = panel.marks.indexOf(null);
    const index = free >= 0 ? free : work.chosen?.on === "mark" ? work.chosen.index : -1;
    if (index < 0) return work;
    const marks = panel.marks.with(index, at);
    return { ...changePanel(work, { marks }), chosen: { on: "mark", index } };
  }
  const curve = panel.curves.find(({ id }) => id === work.curve);
  if (curve === undefined) return work;
  const last = curve.knots.at(-1);
  const next = changeCurve(work, curve.id, (before) => ({
    ...before,
    knots: [...before.knots, at],
    between: last === undefined ? [] : [...before.between, follow === null ? [] : follow(last, at)],
  }));
  return { ...next, chosen: { on: "curve", curve: curve.id, index: curve.knots.length } };
}

/** Moves what is chosen; the line is followed anew on both sides of it. */
export function moved(work: ChartWork, chosen: Chosen, at: PicturePoint, follow: Follow): ChartWork {
  if (chosen.on === "mark") {
    return { ...changePanel(work, { marks: panelInHand(work).marks.with(chosen.index, at) }), chosen };
  }
  const next = changeCurve(work, chosen.curve, (curve) => {
    const knots = curve.knots.with(chosen.index, at);
    const between = curve.between.map((piece, i) => {
      const [from, to] = [knots[i], knots[i + 1]];
      const touches = i === chosen.index || i + 1 === chosen.index;
      if (!touches || from === undefined || to === undefined) return piece;
      return follow === null ? [] : follow(from, to);
    });
    return { ...curve, knots, between };
  });
  return { ...next, chosen };
}

/** Takes what is chosen away; the line is followed anew over the gap. */
export function removed(work: ChartWork, chosen: Chosen, follow: Follow): ChartWork {
  if (chosen.on === "mark") {
    return {
      ...changePanel(work, { marks: panelInHand(work).marks.with(chosen.index, null) }),
      chosen: null,
    };
  }
  const next = changeCurve(work, chosen.curve, (curve) => {
    const knots = curve.knots.toSpliced(chosen.index, 1);
    const [from, to] = [knots[chosen.index - 1], knots[chosen.index]];
    const between =
      from === undefined
        ? curve.between.slice(1)
        : to === undefined
          ? curve.between.slice(0, -1)
          : curve.between.toSpliced(chosen.index - 1, 2, follow === null ? [] : follow(from, to));
    return { ...curve, knots, between };
  });
  return { ...next, chosen: null };
}

/** Every point that can be chosen in the panel in hand, in the order in which they are gone through. */
export function pointsOf(work: ChartWork): readonly { readonly chosen: Chosen; readonly at: PicturePoint }[] {
  const { marks, curves } = panelInHand(work);
  return [
    ...marks.flatMap((at, index) => (at === null ? [] : [{ chosen: { on: "mark", index } as const, at }])),
    ...curves.flatMap(({ id, knots }) =>
      knots.map((at, index) => ({ chosen: { on: "curve", curve: id, index } as const, at })),
    ),
  ];
}

/** All points of a curve, tapped and followed, from one end to the other. */
export const wholeCurve = ({ knots, between }: CurveWork): readonly PicturePoint[] =>
  knots.flatMap((knot, i) => [knot, ...(between[i] ?? [])]);

export const isChosen = (one: Chosen | null, other: Chosen): boolean =>
  one !== null &&
  one.on === other.on &&
  one.index === other.index &&
  (one.on === "mark" || (other.on === "curve" && one.curve === other.curve));
