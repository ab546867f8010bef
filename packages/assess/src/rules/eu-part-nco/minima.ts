import { toSI } from "@witnessmark/engine";
import { ceilingReaches, ceilingText, visibilityReaches } from "../ceiling.ts";
import { type Condition, stepsOf, together } from "../conditions.ts";
import { feet, isAbove, isAtLeast, metres } from "../edges.ts";
import type { CloudDistance, VisualAtFieldInput, VisualMinima, VisualMinimaInput } from "../rule-pack.ts";
import { type Citation, type Citations, cannotTell, finite, type Ruling } from "../ruling.ts";

const TABLE: Citation = {
  title: "SERA.5001: VMC visibility and distance from cloud minima, table S5-1",
  edition: "Regulation (EU) No 923/2012, as national AIPs reproduce it",
  status: "published",
  note: "Where the authority prescribes it, less visibility may do at 140 kt or less; that is not counted on here.",
};
const NIGHT: Citation = {
  title: "SERA.5005: visual flight rules",
  locator: "(c)(3)",
  edition: "Regulation (EU) No 923/2012, consolidated",
  status: "from memory",
  note: "Where the authority permits visual flight by night; States differ.",
};
const FIELD: Citation = {
  title: "SERA.5005: visual flight rules",
  locator: "(b)",
  edition: "Regulation (EU) No 923/2012, consolidated",
  status: "from memory",
};

const HIGH_M = toSI(10_000, "ft");
const LOW_M = toSI(3000, "ft");
const LOW_ABOVE_TERRAIN_M = toSI(1000, "ft");
const LEAST_CEILING_M = toSI(1500, "ft");
const KEPT: CloudDistance = {
  kind: "distance",
  below_m: toSI(1000, "ft"),
  above_m: toSI(1000, "ft"),
  horizontal_m: 1500,
};

type Band = "high" | "middle" | "low";
type Found =
  | { readonly band: Band; readonly step: string }
  | { readonly input: string; readonly what: string };

/** Whether one is in the highest band: by altitude, or by flight level where the transition altitude is lower. */
function isHigh(input: VisualMinimaInput): boolean | undefined {
  const altitude_m = finite(input.altitude_m);
  const pressure_m = finite(input.pressureAltitude_m);
  const transition_m = finite(input.transitionAltitude_m);
  const byAltitude = altitude_m === undefined ? undefined : isAtLeast(altitude_m, HIGH_M);
  const byLevel = pressure_m === undefined ? undefined : isAtLeast(pressure_m, HIGH_M);
  if (transition_m !== undefined) return isAtLeast(transition_m, HIGH_M) ? byAltitude : byLevel;
  return byAltitude === true || byLevel === true ? true : byAltitude; // not known which holds: the stricter one
}

function bandOf(input: VisualMinimaInput): Found {
  const byLevel =
    finite(input.transitionAltitude_m) !== undefined && !isAtLeast(input.transitionAltitude_m ?? 0, HIGH_M);
  const edge = byLevel ? "FL100, which takes the place of 10,000 ft" : feet(HIGH_M);
  const high = isHigh(input);
  if (high === undefined)
    return byLevel
      ? { input: "pressureAltitude_m", what: "the pressure altitude: FL100 counts, not 10,000 ft" }
      : { input: "altitude_m", what: "the altitude above mean sea level" };
  if (high) return { band: "high", step: `At or above ${edge}.` };
  const altitude_m = finite(input.altitude_m);
  if (altitude_m === undefined) return { input: "altitude_m", what: "the altitude above mean sea level" };
  const height_m = finite(input.height_m);
  if (!isAbove(altitude_m, LOW_M) || (height_m !== undefined && !isAbove(height_m, LOW_ABOVE_TERRAIN_M)))
    return { band: "low", step: "At or below 3,000 ft, or 1,000 ft above terrain if that is higher." };
  if (height_m === undefined) return { input: "height_m", what: "the height above terrain" };
  return { band: "middle", step: `Below ${edge}, above 3,000 ft and 1,000 ft above terrain.` };
}

export function visualMinima(input: VisualMinimaInput): Ruling<VisualMinima> {
  const { airspace, night } = input;
  if (airspace === undefined)
    return cannotTell([TABLE], [{ input: "airspace", what: "the class of the airspace" }]);
  if (airspace === "A")
    return {
      known: true,
      permitted: false,
      citations: [TABLE],
      text: "No flight under visual rules in class A.",
      steps: ["Class A: the table's figures are for guidance only."],
    };
  const found = bandOf(input);
  if ("input" in found) return cannotTell([TABLE], [found]);
  if (night === undefined)
    return cannotTell([TABLE, NIGHT], [{ input: "night", what: "whether it is night" }]);
  const { band, step } = found;
  const inSight = band === "low" && (night || airspace === "F" || airspace === "G");
  const clear = band === "low" && (airspace === "F" || airspace === "G");
  const visibility_m = band === "high" ? 8000 : 5000;
  const cloud: CloudDistance = clear ? { kind: "clear-of-cloud" } : KEPT;
  const words = clear ? "clear of cloud" : "1500 m beside and 1,000 ft above or below cloud";
  const citations: Citations = night ? [TABLE, NIGHT] : [TABLE];
  return {
    known: true,
    permitted: true,
    visibility_m,
    cloud,
    surfaceInSight: inSight,
    ...(night ? { ceiling_m: LEAST_CEILING_M } : {}),
    citations,
    text: `${metres(visibility_m)}, ${words}${inSight ? ", surface in sight" : ""}${night ? `, ceiling at least ${feet(LEAST_CEILING_M)}` : ""}.`,
    steps: [`Class ${airspace}. ${step}`, ...(night ? ["Night: SERA.5005(c) asks for a ceiling too."] : [])],
  };
}

/**
 * Taking off, landing or flying the circuit by sight at a field.
 *
 * In a control zone (here: class B, C, D or E at the surface) and by night anywhere, a ceiling of 1,500 ft and 5 km;
 * by day outside one the 5 km of the table.
 */
export function visualAtField(input: VisualAtFieldInput): Ruling<{ readonly permitted: boolean }> {
  const { airspace } = input;
  if (airspace === undefined || airspace === "A")
    return cannotTell([FIELD], [{ input: "airspace", what: "the class of the airspace at the surface" }]);
  const outside = airspace === "F" || airspace === "G";
  if (outside && input.night === undefined)
    return cannotTell([TABLE, NIGHT], [{ input: "night", what: "whether it is night" }]);
  const citations: Citations = outside ? (input.night === true ? [NIGHT, TABLE] : [TABLE]) : [FIELD];
  const visibility: Condition = {
    input: "visibility_m",
    what: "the ground visibility",
    holds: visibilityReaches(input.visibility_m, 5000),
    step: `ground visibility, at least ${metres(5000)} asked`,
  };
  const ceiling: Condition = {
    input: "ceiling_m",
    what: "the ceiling",
    holds: ceilingReaches(input.ceiling_m, LEAST_CEILING_M),
    step: `${ceilingText(input.ceiling_m)}, at least ${feet(LEAST_CEILING_M)} asked`,
  };
  const conditions = outside && input.night !== true ? [visibility] : [ceiling, visibility];
  const steps = stepsOf(conditions);
  const result = together(conditions);
  if (result.all === "unknown") return cannotTell(citations, result.missing, steps);
  const permitted = result.all === "hold";
  return {
    known: true,
    permitted,
    citations,
    text: permitted
      ? "Ceiling and visibility are enough to take off or land by sight."
      : `Not by sight: ${result.all === "fail" ? result.failing.map(({ what }) => `${what.slice(4)} too low`).join(", ") : ""}.`,
    steps,
  };
}
