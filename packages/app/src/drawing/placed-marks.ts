import { type Book, walkLine } from "@witnessmark/book";
import { type Camera, fromDatum, type Px } from "./camera.ts";
import { type DatumLine, datumEnds, datumLine } from "./datum-line.ts";
import {
  dimensionPlaces,
  linePlaces,
  measurePlaces,
  type PlacedDimension,
  type Seen,
  textSquares,
} from "./dimension-places.ts";
import type { DrawingDimension } from "./dimensions.ts";
import type { DrawingMark, DrawingRoute, DrawingView } from "./drawing-props.ts";
import { type Label, labelPlaces, type Place, type Square, type Taken } from "./label-places.ts";
import { markPlaces, type Stood } from "./mark-places.ts";
import { onPlaneOf } from "./view-plane.ts";

/** What of a mark says where it stands on the drawing; its status does not. */
export type Laid = Pick<DrawingMark, "id" | "place" | "size" | "label">;

export const LARGE_1 = 1.35;
const SMALL_1 = 0.7;
/** No mark is told from its neighbour with less room than this. */
const LEAST_APART_px = 14;

export const sizeOf = ({ size }: Pick<DrawingMark, "size">, mark_px: number): number =>
  size === "large" ? mark_px * LARGE_1 : size === "small" ? mark_px * SMALL_1 : mark_px;

/** Half the square that a mark is drawn in, with a pixel round it. */
const inkHalf_px = (mark: Pick<DrawingMark, "size"> | undefined, mark_px: number): number =>
  Math.max(LEAST_APART_px, sizeOf(mark ?? {}, mark_px) + 2) / 2;

/** With this much room a mark is a target of its own; then a leader is drawn only where no zoom would help. */
const TARGET_px = 30;
const REACH_1 = { targets: 0.3, marks: 1.6, nearest: 2.6 } as const;

const DIGIT_px = 8.5;
const LINE_px = 15;
const SOLES_px = 9;
const LINE_WIDTH_px = 1;
/** A letter of a label at 13 px, about. */
const LETTER_px = 7.2;

export interface Crowding {
  readonly mark_px: number;
  readonly apart_px: number;
  /** Whether it can be looked at no nearer: then what still lies together is fanned out. */
  readonly isNearest: boolean;
}

export interface PlacedMarks {
  readonly marks: readonly Stood[];
  /** The number of each stance, by its id. */
  readonly numbers: ReadonlyMap<string, Place>;
  /** The label of each mark that has one and room for it, by the mark's id. */
  readonly labels: ReadonlyMap<string, Place>;
  readonly dimensions: readonly PlacedDimension[];
  readonly datum: DatumLine | null;
}

/** What of a drawing is measured: its measures, and the aircraft across which the datum is drawn. */
export interface Measured {
  readonly dimensions?: readonly DrawingDimension[] | undefined;
  readonly datumOf?: Book["geometry"] | undefined;
  /** What of the picture is seen when it is whole. */
  readonly seen?: Seen | undefined;
}

/** What of a walk's drawing its numbers have to do with. */
export interface Walked {
  /** The lines of a plan that run where one stands. */
  readonly struts?: Book["geometry"]["wing"]["struts"] | undefined;
  /** Numbers stand at stances inside too: for paper, where no marks lie there. */
  readonly isNumberedInside?: boolean;
}

/** Where everything stands upright on a drawing: pixels from its datum. Where that falls on the screen changes nothing. */
export function placedMarks(
  view: DrawingView,
  camera: Camera,
  marks: readonly Laid[],
  route: DrawingRoute | undefined,
  { mark_px, apart_px, isNearest }: Crowding,
  { dimensions = [], datumOf, seen }: Measured = {},
  { struts = [], isNumberedInside = false }: Walked = {},
): PlacedMarks {
  const at = (place: DrawingMark["place"]): Px => fromDatum(camera, onPlaneOf(view, place));
  const wanted = marks.map((mark) => {
    const [x, y] = at(mark.place);
    const half_px = Math.max(apart_px / 2, inkHalf_px(mark, mark_px));
    return { id: mark.id, x, y, half_px, first: mark.size === "large" };
  });
  const reach_1 = isNearest ? REACH_1.nearest : apart_px > TARGET_px ? REACH_1.targets : REACH_1.marks;
  const stood = markPlaces(wanted, reach_1 * Math.max(apart_px, mark_px));
  const byId = new Map(marks.map((mark) => [mark.id, mark] as const));
  const squares = stood.map(({ ids, x, y }) => ({ x, y, half_px: inkHalf_px(byId.get(ids[0]), mark_px) }));
  const stops = view === "plan" ? (route?.stops ?? []) : [];
  const turn_deg = camera.turn_deg ?? 0;
  const numbers = stops
    .filter((stop) => isNumberedInside || isOutside(stop))
    .map(({ stance, number }): Label => {
      const [x, y] = at([...stance.place, 0]);
      const liked_rad = ((stance.facing + turn_deg + 90) * Math.PI) / 180;
      return { id: stance.id, x, y, width: String(number).length * DIGIT_px, height: LINE_px, liked_rad };
    });
  const soles = numbers.map(({ x, y }): Taken => ({ x, y, radius: SOLES_px }));
  const texts = stood.flatMap(({ ids, x, y }): readonly Label[] => {
    const text = ids.length === 1 ? byId.get(ids[0])?.label : undefined;
    if (text === undefined || text === "") return [];
    return [{ id: `mark ${ids[0]}`, x, y, width: text.length * LETTER_px, height: LINE_px, liked_rad: 0 }];
  });
  const across = datumOf === undefined ? null : datumEnds(view, datumOf, camera);
  const onDatum = across === null ? [] : linePlaces(...across);
  const kept = [...squares, ...onDatum.map((place): Square => ({ ...place, half_px: LINE_WIDTH_px }))];
  const measures = dimensionPlaces(dimensions, camera, kept, seen);
  const datum = across === null ? null : datumLine(across, measures, squares);
  // a label gives way to the figures of a measure: those have their line
  const figures = [...measures.flatMap(textSquares), ...(datum?.squares ?? [])];
  const lines = [...measures.flatMap(measurePlaces), ...onDatum];
  if (stops.length > 0) {
    const onGround = (x_m: number, y_m: number) => at([x_m, y_m, 0]);
    const stances = stops.map(({ stance }) => stance);
    const start = route?.start === undefined ? {} : { start: route.start };
    lines.push(...walkLine(stances, undefined, onGround, start).trace.map(([x, y]) => ({ x, y })));
    for (const { foot, head } of struts)
      for (const side of [-1, 1])
        lines.push(...linePlaces(onGround(foot[0], side * foot[1]), onGround(head[0], side * head[1])));
  }
  const crossed = lines.map((place): Taken => ({ ...place, radius: LINE_WIDTH_px }));
  const written = labelPlaces([...numbers, ...texts], [...soles, ...crossed], [...squares, ...figures]);
  return {
    marks: stood,
    dimensions: measures,
    datum,
    numbers: new Map([...written].filter(([id]) => !id.startsWith("mark "))),
    labels: new Map(
      [...written].flatMap(([id, place]) => (id.startsWith("mark ") ? [[id.slice(5), place]] : [])),
    ),
  };
}

export const isOutside = ({ stance }: DrawingRoute["stops"][number]): boolean => stance.posture !== "inside";

/** Nearer by this than any other, a mark is the one that is meant. */
const MEANT_px = 8;

/**
 * What a finger at a place means: one mark, several that it cannot tell apart, or none.
 *
 * @returns `within`: all that it reaches; `several`: the nearest, and what is about as near
 */
export function markUnder(
  marks: readonly Stood[],
  [x, y]: Px,
  finger_px: number,
): { readonly nearest: Stood; readonly several: readonly Stood[]; readonly within: readonly Stood[] } | null {
  const far = (each: Stood) => Math.max(Math.abs(each.x - x), Math.abs(each.y - y));
  const within = marks.filter((each) => far(each) <= finger_px).toSorted((a, b) => far(a) - far(b));
  const [nearest] = within;
  if (nearest === undefined) return null;
  return { nearest, within, several: within.filter((each) => far(each) - far(nearest) < MEANT_px) };
}
