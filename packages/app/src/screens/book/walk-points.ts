import { type BookEdit, freeId, labelOf, type Plain, valueAt } from "@witnessmark/book";
import type { PlaceOnView } from "../../drawing/aircraft-drawing.tsx";
import { cm } from "../../drawing/centimetre.ts";
import { mirrorOf, placeEdits } from "./place-input.tsx";

/** What is further out than this has a side. */
const CENTRE_m = 0.45;

/** A point of the draft, as far as it can be drawn. */
export interface DraftPoint {
  readonly index: number;
  readonly id: string;
  readonly name: string;
  /** What stands beside it on the drawing. */
  readonly label: string;
  readonly stance: string;
  readonly place: readonly [x_m: number, y_m: number, z_m: number];
}

export function pointsIn(plain: Plain | null): readonly DraftPoint[] {
  const points = valueAt(plain ?? undefined, ["points"]);
  if (!Array.isArray(points)) return [];
  return points.flatMap((point: Plain, index): DraftPoint[] => {
    const [x_m, y_m, z_m] = [0, 1, 2].map((axis) => valueAt(point, ["place", axis]));
    if (typeof x_m !== "number" || typeof y_m !== "number" || typeof z_m !== "number") return [];
    const text = (key: string) => {
      const value = valueAt(point, [key]);
      return typeof value === "string" ? value : "";
    };
    const name = text("name");
    const label = labelOf({ name, label: text("label") });
    return [{ index, id: text("id"), name, label, stance: text("stance"), place: [x_m, y_m, z_m] }];
  });
}

/** A point put where it was dragged to, its mirror image with it. */
export function moveEdits(plain: Plain, { index, place }: DraftPoint, at: PlaceOnView): readonly BookEdit[] {
  const moved = [at.x_m ?? place[0], at.y_m ?? place[1], at.z_m ?? place[2]].map(cm);
  const edits = moved.flatMap((metres, axis) =>
    metres === place[axis] ? [] : placeEdits(plain, ["points", index, "place"], axis, metres),
  );
  const before = place[1];
  const now = moved[1] ?? 0;
  // across the centre line it changes sides; a pair stays a pair
  if (mirrorOf(plain, index) === undefined && sideOf(before) !== sideOf(now))
    return [...edits, { set: ["points", index, "side"], to: sideOf(now) }];
  return edits;
}

export const sideOf = (y_m: number): "left" | "right" | "centre" =>
  Math.abs(y_m) <= CENTRE_m ? "centre" : y_m < 0 ? "left" : "right";

/** Where a new point is to be: what the view that was tapped does not show is taken from the point that is nearest. */
interface NewPlace {
  readonly x_m: number;
  readonly y_m: number;
  readonly z_m?: number | undefined;
}

/** A new point where the drawing was tapped, in the area and from the stance of the one that is nearest. */
export function newPoint(
  plain: Plain,
  at: NewPlace,
  pair: boolean,
): { readonly edits: readonly BookEdit[]; readonly id: string } {
  const points = pointsIn(plain);
  const nearest = points.toSorted((a, b) => away(a, at) - away(b, at))[0];
  const like = valueAt(plain, ["points", nearest?.index ?? 0]);
  const [x_m, y_m, z_m] = [cm(at.x_m), cm(at.y_m), at.z_m ?? nearest?.place[2] ?? 1];
  const side = sideOf(y_m);
  const of = (key: string): Plain => valueAt(like, [key]) ?? "";
  const end = Array.isArray(valueAt(plain, ["points"]))
    ? (valueAt(plain, ["points"]) as readonly Plain[]).length
    : 0; // as just seen
  if (!pair || side === "centre") {
    const id = freeId(plain, ["points"], side === "centre" ? "new-point" : `${side}-new-point`);
    const name = side === "centre" ? "New point" : `${side === "left" ? "Left" : "Right"} new point`;
    const item = { id, name, area: of("area"), side, place: [x_m, y_m, z_m], stance: of("stance") };
    return { id, edits: [{ insert: ["points", end], item }] };
  }
  const stem = freeId(plain, ["points"], `${side}-new-point`).replace(/^(left|right)-/, "");
  const one = (which: "left" | "right"): Plain => {
    const mine = which === side;
    const other = which === "left" ? "right" : "left";
    return {
      id: `${which}-${stem}`,
      name: `${which === "left" ? "Left" : "Right"} ${stem.replaceAll("-", " ")}`,
      area: mine ? of("area") : mirroredName(plain, "areas", of("area")),
      side: which,
      place: [x_m, mine ? y_m : 0 - y_m, z_m],
      stance: mine ? of("stance") : mirroredName(plain, "stances", of("stance")),
      mirrors: `${other}-${stem}`,
    };
  };
  const other = side === "left" ? "right" : "left";
  return {
    id: `${side}-${stem}`,
    edits: [
      { insert: ["points", end], item: one(side) },
      { insert: ["points", end + 1], item: one(other) },
    ],
  };
}

/** The item of the other side, where there is one: `left-wing` for `right-wing`. */
function mirroredName(plain: Plain, list: string, id: Plain): Plain {
  if (typeof id !== "string") return id;
  const other = id.includes("left") ? id.replace("left", "right") : id.replace("right", "left");
  const items = valueAt(plain, [list]);
  return Array.isArray(items) && items.some((item: Plain) => valueAt(item, ["id"]) === other) ? other : id;
}

const away = ({ place }: DraftPoint, { x_m, y_m, z_m }: NewPlace): number =>
  Math.hypot(place[0] - x_m, place[1] - y_m, z_m === undefined ? 0 : place[2] - z_m);
