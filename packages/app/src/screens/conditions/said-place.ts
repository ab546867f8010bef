import { toSI, withSymbol } from "@witnessmark/engine";
import {
  type AircraftState,
  FIELD_CODE,
  type FlightPlan,
  type PlannedPlace,
  type PlannedRunway,
  type Read,
  RUNWAY_NAME,
} from "@witnessmark/ledger";
import { readFigure } from "../../words/figures.ts";
import { understandFigure } from "../walk/understand-figure.ts";

/** What a person types of a field that the book does not have. */
export interface PlaceTyped {
  readonly code: string;
  readonly name: string;
  readonly latitude: string;
  readonly longitude: string;
  readonly elevation: string;
  readonly runway: string;
  readonly direction: string;
  readonly length: string;
  readonly slope: string;
  /** Nobody knows it until somebody says it: grass asks for more than pavement. */
  readonly surface: PlannedRunway["surface"] | "";
  readonly lights: boolean;
}

export const NOTHING_TYPED: PlaceTyped = {
  code: "",
  name: "",
  latitude: "",
  longitude: "",
  elevation: "",
  runway: "",
  direction: "",
  length: "",
  slope: "",
  surface: "",
  lights: false,
};

export type PlaceFaults = { readonly [K in keyof PlaceTyped]?: string };

export type PlaceRead =
  | { readonly ok: true; readonly place: PlannedPlace }
  | { readonly ok: false; readonly faults: PlaceFaults };

/** What was said of a field, as it would be typed. */
export function typedOf({
  code,
  name,
  latitude_deg,
  longitude_deg,
  elevation,
  lights,
  runways,
}: PlannedPlace): PlaceTyped {
  const [runway] = runways;
  const measure = ({ value, unit }: Read) => withSymbol(String(value), unit);
  return {
    code,
    name,
    latitude: String(latitude_deg),
    longitude: String(longitude_deg),
    elevation: measure(elevation),
    runway: runway?.name ?? "",
    direction: runway === undefined ? "" : String(runway.trueHeading_deg),
    length: runway === undefined ? "" : measure(runway.length),
    slope: runway === undefined ? "" : String(Number((runway.slope_1 * 100).toPrecision(6))),
    surface: runway?.surface ?? "",
    lights,
  };
}

/** Steeper is no runway; the table of no aircraft here goes so far. */
const STEEPEST_percent = 20;
const LONGEST_m = 10_000;
/** The lowest field of the world lies some 400 m under the sea, the highest some 4,400 m above it. From memory. */
const [LOWEST_m, HIGHEST_m] = [-450, 4600];
/** A name is the direction to ten degrees from magnetic north, which lies no farther from true north where one flies. From memory. */
const NAME_OFF_deg = 60;

/**
 * Reads what was typed; all faults at once, each at its place.
 *
 * @param zone time zone of the tz database, taken where nobody says another: that of the device
 */
export function readPlace(typed: PlaceTyped, zone: string): PlaceRead {
  const faults: Partial<Record<keyof PlaceTyped, string>> = {};
  const code = typed.code.trim().toUpperCase();
  if (!FIELD_CODE.test(code)) faults.code = "Type its code: four letters or figures, such as ZZTW.";
  const latitude_deg = readAngle(typed.latitude, "N", "S", 90);
  if (latitude_deg === undefined) faults.latitude = "Type degrees north, such as 57.21 or 57 12.6 N.";
  const longitude_deg = readAngle(typed.longitude, "E", "W", 180);
  if (longitude_deg === undefined) faults.longitude = "Type degrees east, such as −6.35 or 6 21 W.";
  const elevation = lengthOf(typed.elevation, "ft", "86");
  if (typeof elevation === "string") faults.elevation = elevation;
  else if (!(elevation.m >= LOWEST_m && elevation.m <= HIGHEST_m))
    faults.elevation = "No field lies so low or so high: look at the figure and its unit.";
  const name = typed.runway
    .trim()
    .toUpperCase()
    .replace(/^\d(?!\d)/, "0$&");
  if (!RUNWAY_NAME.test(name)) faults.runway = "Type its name: 01 to 36, with L, C or R where there are two.";
  const direction = readFigure(typed.direction, "274");
  const heading_deg =
    direction.ok && direction.value >= 0 && direction.value <= 360 ? direction.value : undefined;
  if (heading_deg === undefined)
    faults.direction = "Type its direction from true north, 0 to 360, such as 274.";
  else if (RUNWAY_NAME.test(name) && apart_deg(heading_deg, Number(name.slice(0, 2)) * 10) > NAME_OFF_deg)
    faults.direction = `Runway ${name} does not lie ${heading_deg}° from true north: look at the two.`;
  const length = lengthOf(typed.length, "m", "620");
  if (typeof length === "string") faults.length = length;
  else if (!(length.m > 0 && length.m <= LONGEST_m))
    faults.length = "Type the length there is, such as 620 m.";
  const slope = readFigure(typed.slope, "0.5");
  if (!slope.ok) faults.slope = "Type how much it rises in this direction, in %: 0 where it is level.";
  else if (Math.abs(slope.value) > STEEPEST_percent) faults.slope = `No runway rises ${slope.value} %.`;
  if (typed.surface === "") faults.surface = "Say what the runway is made of.";
  if (
    Object.keys(faults).length > 0 ||
    latitude_deg === undefined ||
    longitude_deg === undefined ||
    typeof elevation === "string" ||
    typeof length === "string" ||
    heading_deg === undefined ||
    typed.surface === "" ||
    !slope.ok
  )
    return { ok: false, faults };
  const runway: PlannedRunway = {
    name,
    trueHeading_deg: heading_deg % 360,
    length: length.read,
    slope_1: slope.value / 100,
    surface: typed.surface,
  };
  return {
    ok: true,
    place: {
      code,
      name: typed.name.trim(),
      latitude_deg,
      longitude_deg,
      elevation: elevation.read,
      lights: typed.lights,
      zone,
      runways: [runway, otherWay(runway)],
    },
  };
}

/** The same ground from its other end: as long, as steep, and down where it went up. */
function otherWay({ name, trueHeading_deg, slope_1, ...same }: PlannedRunway): PlannedRunway {
  const number = ((Number(name.slice(0, 2)) + 17) % 36) + 1;
  const side = { L: "R", R: "L", C: "C" }[name.slice(2)] ?? "";
  return {
    ...same,
    name: `${String(number).padStart(2, "0")}${side}`,
    trueHeading_deg: (trueHeading_deg + 180) % 360,
    slope_1: slope_1 === 0 ? 0 : -slope_1,
  };
}

const apart_deg = (a: number, b: number): number => Math.abs(((a - b + 540) % 360) - 180);

/** Degrees with decimals, or degrees and minutes, with a sign or the letter of a side. */
function readAngle(text: string, positive: string, negative: string, most_deg: number): number | undefined {
  const side = new RegExp(`\\s*([${positive}${negative}])$`, "i");
  const tidy = text.trim().replaceAll(/[°′']/g, " ");
  const letter = side.exec(tidy.trim())?.[1]?.toUpperCase();
  const [whole = "", minutes, ...more] = tidy.trim().replace(side, "").trim().split(/\s+/);
  const degrees = readFigure(whole, "57.21");
  const part = minutes === undefined ? { ok: true as const, value: 0 } : readFigure(minutes, "12.6");
  if (!degrees.ok || !part.ok || more.length > 0 || part.value < 0 || part.value >= 60) return undefined;
  if (minutes !== undefined && !Number.isInteger(degrees.value)) return undefined;
  if (letter !== undefined && degrees.value < 0) return undefined;
  const isNegative = letter === negative || degrees.value < 0;
  const size = Math.abs(degrees.value) + part.value / 60;
  return size > most_deg ? undefined : isNegative ? -size : size;
}

function lengthOf(
  text: string,
  unit: "ft" | "m",
  example: string,
): string | { readonly read: Read; readonly m: number } {
  const found = understandFigure(text, unit, example);
  if (!found.ok) return found.message;
  return { read: found.read, m: toSI(found.read.value, found.read.unit) };
}

/** Fields that were said for this flight or for one before, and that the book does not have; the latest word of each. */
export function placesSaid(
  state: Pick<AircraftState, "flights">,
  plan: FlightPlan | undefined,
  inBook: readonly { readonly code: string }[],
): readonly PlannedPlace[] {
  const known = new Set(inBook.map(({ code }) => code));
  const found: PlannedPlace[] = [];
  const before = [...state.flights.values()].toReversed().map(({ planned }) => planned.plan);
  for (const place of [plan, ...before].flatMap((each) => each?.places ?? [])) {
    if (known.has(place.code)) continue;
    known.add(place.code);
    found.push(place);
  }
  return found;
}
