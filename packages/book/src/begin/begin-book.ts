import { isSeq, parseDocument, stringify, visit } from "yaml";
import type { Plain } from "../edit/edit-text.ts";
import type { Geometry } from "../schema/geometry.ts";
import { writeYaml } from "../yaml/write-yaml.ts";
import { movedAlong } from "./along.ts";
import { type Archetype, type Figures, mustBeAnAircraft } from "./figures.ts";
import { writtenFigures } from "./first-figures.ts";
import { GROUND_GEAR } from "./ground-gear.ts";
import type { Look } from "./looks.ts";
import { LOOKS_AIRFRAME } from "./looks-airframe.ts";
import { LOOKS_GEAR_ENGINE } from "./looks-gear-engine.ts";
import { LOOKS_GLIDER } from "./looks-glider.ts";
import { LOOKS_INSIDE } from "./looks-inside.ts";
import { placedParts } from "./placed-parts.ts";
import { shapeOf } from "./shape-of.ts";
import { stancesOf } from "./stances-of.ts";

const AREAS = [
  ["inside", "Inside"],
  ["fuselage", "Fuselage"],
  ["tail", "Tail"],
  ["right-wing", "Right wing"],
  ["left-wing", "Left wing"],
  ["gear", "Landing gear"],
  ["engine", "Engine and propeller"],
] as const;

const NOTICE =
  "Begun from a few figures. Not yet held against the approved manual of this aircraft: not fit for a flight until it is.";

export interface Beginning {
  readonly archetype: Pick<Archetype, "description" | "basis">;
  readonly figures: Figures;
  /** Who begins it, and on which day. */
  readonly by: string;
  readonly on: string;
}

/**
 * The text of a new book: an aircraft of this layout with its drawing, its points in their places and what is generally
 * looked at there. It has no limits and no loading: those are in the aircraft's own manual, and until somebody has put
 * them in, what depends on them is *open*.
 *
 * @throws {InputError} figures that no aircraft has
 */
export const beginBook = (beginning: Beginning): string => inYaml(keysOf(beginning));

/**
 * The same as keys and values.
 *
 * @param shaped the shape that points and stances are put on, in the axes of the book; left out, the one that is drawn
 * @throws {InputError} figures that no aircraft has
 */
export function keysOf(beginning: Beginning, shaped?: Geometry): Plain {
  const { figures } = beginning;
  mustBeAnAircraft(figures);
  const drawn = shapeOf(figures);
  const stands = shaped === undefined ? drawn : fromForemost(shaped, figures);
  const keys = movedAlong(keysFrom(beginning, drawn, stands), -figures.datumAft_m);
  return JSON.parse(JSON.stringify(keys)) as Plain; // plain data, without what is undefined
}

/** A shape of a book, counted from the foremost part. */
const fromForemost = (geometry: Geometry, { datumAft_m }: Figures): Geometry =>
  movedAlong({ geometry }, datumAft_m).geometry;

/** In axes that begin at the foremost part. */
function keysFrom({ archetype, figures, by, on }: Beginning, drawn: Geometry, stands: Geometry) {
  const parts = placedParts(stands, figures);
  const used = new Set(parts.map(({ area }) => area));
  const pointsOf = (part: string) => parts.filter((one) => one.part === part).map(({ id }) => id);
  const looks = [...LOOKS_INSIDE, ...LOOKS_AIRFRAME, ...LOOKS_GEAR_ENGINE, ...LOOKS_GLIDER];
  return {
    witnessmark: 1,
    revision: 1,
    issued: { on, by },
    notice: NOTICE,
    aircraft: {
      registration: figures.registration,
      type: figures.type,
      description: archetype.description,
      engine: figures.engine,
      engines: figures.engines,
      gear: figures.gear,
      retractable: figures.retractable,
      ...(figures.engine === "none" ? { class: "glider" } : {}),
      seats: figures.seats,
      certification: { basis: archetype.basis, masterList: false },
    },
    drawnFrom: writtenFigures(figures),
    geometry: drawn,
    gauges: [],
    areas: AREAS.filter(([id]) => used.has(id)).map(([id, name]) => ({ id, name })),
    stances: stancesOf(stands, figures),
    points: parts.map(({ part: _, ...point }) => point),
    checks: looks.flatMap((look) => checkOf(look, look.at.flatMap(pointsOf))),
    groundGear: GROUND_GEAR.flatMap(({ at, ...item }) => {
      const [point] = pointsOf(at);
      return point === undefined ? [] : [{ ...item, point }];
    }),
    counters: [
      { id: "airframe-hours", name: "Airframe hours", of: "airframe", unit: "h" },
      { id: "landings", name: "Landings", of: "airframe", unit: "1" },
    ],
  };
}

/** Nothing where the aircraft has no such part. */
function checkOf(look: Look, points: readonly string[]) {
  const [only, ...more] = points;
  if (only === undefined) return [];
  const {
    id,
    title,
    method,
    how,
    shouldBe,
    why,
    faults,
    severity,
    ifMissed,
    walks,
    until,
    atMost,
    least_s,
    jasc,
  } = look;
  return [
    {
      id,
      at: more.length === 0 ? only : points,
      title,
      method,
      how,
      shouldBe,
      why,
      faults: faults.map((name) => ({ id: idOf(name), name })),
      hazard: { severity, ifMissed },
      walks,
      holds: { until, ...(atMost === undefined ? {} : { atMost }) },
      least: `${least_s} s`,
      jasc,
    },
  ];
}

const idOf = (name: string): string =>
  name
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, "-")
    .replaceAll(/^-|-$/g, "");

/** In the look of a book that a person writes: short lists on one line. */
function inYaml(book: Plain): string {
  const document = parseDocument(stringify(book, { lineWidth: 0, aliasDuplicateObjects: false }));
  visit(document, {
    Seq(_, node) {
      if (node.items.every((item) => !isSeq(item) && !("items" in (item as object)))) node.flow = true;
    },
  });
  return writeYaml(document);
}
