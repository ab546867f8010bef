import type { Point } from "../schema/book-source.ts";
import type { Geometry } from "../schema/geometry.ts";
import type { Figures } from "./figures.ts";
import { PARTS, type Part } from "./parts.ts";
import type { Xyz } from "./place.ts";
import { cm } from "./round.ts";
import { shapeStands } from "./shape-stands.ts";

/** A point of the new book, with the part that it is. */
export type PlacedPart = Point & { readonly part: string };

/** Every part that an aircraft of these figures has, at its place on the shape; what is there twice is mirrored. */
export function placedParts(geometry: Geometry, figures: Figures): readonly PlacedPart[] {
  const [right, left] = [shapeStands(geometry, "right"), shapeStands(geometry, "left")];
  return PARTS.filter((part) => isOn(part, figures)).flatMap((part) => {
    const place = part.place(right, figures);
    const isOneWheel = figures.gear === "mono-wheel" && part.stance === "side-main-wheel";
    if (isOneWheel) return [only({ ...part, stance: "main-wheel" }, "centre", place)];
    if (part.sides === "both" || (part.sides === "engine" && figures.engines === 2))
      return [oneOf(part, "right", place), oneOf(part, "left", part.place(left, figures))];
    const side = part.sides === "engine" ? "centre" : part.sides;
    const underIt = part.stance === "main-wheel" && figures.gear !== "mono-wheel";
    return [only(underIt ? { ...part, stance: "left-main-wheel" } : part, side, place)];
  });
}

/** What has an engine has its fuel and its cabin too; what has none has parts of its own. */
const isOn = ({ when, of = "powered" }: Part, figures: Figures): boolean =>
  (of === "any" || (of === "glider") === (figures.engine === "none")) && (when?.(figures) ?? true);

const only = (part: Part, side: Point["side"], place: Xyz): PlacedPart => ({
  part: part.id,
  id: part.id,
  name: part.name.charAt(0).toUpperCase() + part.name.slice(1),
  area: areaOf(part, side),
  side,
  place: onItsSide(side, place),
  stance: stanceOf(part, side),
});

const OTHER = { left: "right", right: "left" } as const;

function oneOf(part: Part, side: "left" | "right", place: Xyz): PlacedPart {
  return {
    part: part.id,
    id: `${side}-${part.id}`,
    name: `${side === "left" ? "Left" : "Right"} ${part.name}`,
    area: areaOf(part, side),
    side,
    place: onItsSide(side, place),
    stance: stanceOf(part, side, true),
    mirrors: `${OTHER[side]}-${part.id}`,
  };
}

/** What a book says is in the centre is not further out than this. */
const CENTRE_m = 0.45;

function onItsSide(side: Point["side"], [x_m, y_m, z_m]: Xyz): Point["place"] {
  const near_m = Math.max(-CENTRE_m, Math.min(CENTRE_m, y_m));
  const y = side === "left" ? -Math.abs(y_m) : side === "right" ? Math.abs(y_m) : near_m;
  return [cm(x_m), cm(y), cm(Math.max(0.05, z_m))];
}

const areaOf = ({ area }: Part, side: Point["side"]): string =>
  area === "wings" ? `${side === "left" ? "left" : "right"}-wing` : area;

/** `side-…` stands for left or right; the one engine of a single is seen from before the nose and from beside it. */
function stanceOf({ stance }: Part, side: Point["side"], isTwice = false): string {
  if (stance.startsWith("side-")) return stance.replace("side", side);
  if (!stance.startsWith("engine-")) return stance;
  if (isTwice) return `${side}-${stance}`;
  return stance === "engine-front" ? "nose" : stance;
}
