import { toSI } from "@witnessmark/engine";
import { ceilingReaches, ceilingText, visibilityReaches } from "../ceiling.ts";
import { type Condition, stepsOf, together } from "../conditions.ts";
import { feet, isAbove, isAtLeast, statuteMiles } from "../edges.ts";
import type { CloudDistance, VisualAtFieldInput, VisualMinima, VisualMinimaInput } from "../rule-pack.ts";
import { type Citation, cannotTell, finite, type Ruling } from "../ruling.ts";

const TABLE: Citation = {
  title: "14 CFR 91.155: basic VFR weather minimums",
  locator: "(a), table",
  edition: "1 January 2024 edition of the CFR volume",
  url: "https://www.faraim.org/faa/far/cfr/title-14/part-91/section-91.155/title-14-part-91-sec91-155.html",
  status: "published",
};
const SURFACE: Citation = {
  title: "14 CFR 91.155: basic VFR weather minimums",
  locator: "(c), (d)",
  edition: "current text",
  status: "from memory",
};

const HIGH_M = toSI(10_000, "ft");
const LOW_ABOVE_SURFACE_M = toSI(1200, "ft");
const SURFACE_CEILING_M = toSI(1000, "ft");

const CLEAR: CloudDistance = { kind: "clear-of-cloud" };
const USUAL: CloudDistance = {
  kind: "distance",
  below_m: toSI(500, "ft"),
  above_m: toSI(1000, "ft"),
  horizontal_m: toSI(2000, "ft"),
};
const WIDE: CloudDistance = {
  kind: "distance",
  below_m: toSI(1000, "ft"),
  above_m: toSI(1000, "ft"),
  horizontal_m: toSI(1, "mi"),
};

const cloudText = (cloud: CloudDistance): string =>
  cloud.kind === "clear-of-cloud"
    ? "clear of clouds"
    : `${feet(cloud.below_m)} below, ${feet(cloud.above_m)} above, ${feet(cloud.horizontal_m)} beside clouds`;

const minima = (visibility_SM: number, cloud: CloudDistance, step: string): Ruling<VisualMinima> => {
  const visibility_m = toSI(visibility_SM, "mi");
  return {
    known: true,
    permitted: true,
    visibility_m,
    cloud,
    surfaceInSight: false,
    citations: [TABLE],
    text: `${statuteMiles(visibility_m)} and ${cloudText(cloud)}.`,
    steps: [step],
  };
};

const lacking = (input: string, what: string): Ruling<VisualMinima> => cannotTell([TABLE], [{ input, what }]);

function classE(altitude_m: number | undefined): Ruling<VisualMinima> {
  if (altitude_m === undefined) return lacking("altitude_m", "the altitude above mean sea level");
  return isAtLeast(altitude_m, HIGH_M)
    ? minima(5, WIDE, `Class E at or above ${feet(HIGH_M)}.`)
    : minima(3, USUAL, `Class E below ${feet(HIGH_M)}.`);
}

function classG(input: VisualMinimaInput): Ruling<VisualMinima> {
  const height_m = finite(input.height_m);
  const altitude_m = finite(input.altitude_m);
  if (height_m === undefined) return lacking("height_m", "the height above the surface");
  const low = !isAbove(height_m, LOW_ABOVE_SURFACE_M);
  if (!low && altitude_m === undefined) return lacking("altitude_m", "the altitude above mean sea level");
  if (!low && altitude_m !== undefined && isAtLeast(altitude_m, HIGH_M))
    return minima(
      5,
      WIDE,
      `Class G, more than ${feet(LOW_ABOVE_SURFACE_M)} up, at or above ${feet(HIGH_M)}.`,
    );
  if (input.night === undefined) return lacking("night", "whether it is night");
  const where = low
    ? `Class G, ${feet(LOW_ABOVE_SURFACE_M)} or less above the surface`
    : `Class G, more than ${feet(LOW_ABOVE_SURFACE_M)} up, below ${feet(HIGH_M)}`;
  if (input.night)
    return minima(
      3,
      USUAL,
      `${where}, night. (b) has less in a traffic pattern within half a mile of the runway.`,
    );
  return minima(1, low ? CLEAR : USUAL, `${where}, day.`);
}

export function visualMinima(input: VisualMinimaInput): Ruling<VisualMinima> {
  switch (input.airspace) {
    case undefined:
      return lacking("airspace", "the class of the airspace");
    case "A":
      return {
        known: true,
        permitted: false,
        citations: [TABLE],
        text: "No flight under visual rules in class A.",
        steps: ["Class A: not applicable."],
      };
    case "B":
      return minima(3, CLEAR, "Class B.");
    case "C":
    case "D":
      return minima(3, USUAL, `Class ${input.airspace}.`);
    case "E":
      return classE(finite(input.altitude_m));
    case "F":
      return lacking("airspace", "the class of the airspace: the table has no class F");
    case "G":
      return classG(input);
    default:
      return input.airspace satisfies never;
  }
}

function fieldInClassG(input: VisualAtFieldInput): Ruling<{ readonly permitted: boolean }> {
  if (input.night === undefined)
    return cannotTell([TABLE], [{ input: "night", what: "whether it is night" }]);
  const least_m = toSI(input.night ? 3 : 1, "mi");
  const seen = visibilityReaches(input.visibility_m, least_m);
  const steps = [
    `Class G at the surface, ${input.night ? "night" : "day"}: at least ${statuteMiles(least_m)}.`,
  ];
  if (seen === undefined)
    return cannotTell([TABLE], [{ input: "visibility_m", what: "the visibility" }], steps);
  return {
    known: true,
    permitted: seen,
    citations: [TABLE],
    text: seen
      ? "The visibility is enough to take off or land by sight; keep the distance from clouds."
      : `Not by sight: visibility below ${statuteMiles(least_m)}.`,
    steps,
  };
}

/** Taking off, landing or flying the pattern by sight at a field, by the class of airspace at its surface. */
export function visualAtField(input: VisualAtFieldInput): Ruling<{ readonly permitted: boolean }> {
  const { airspace } = input;
  if (airspace === undefined || airspace === "A" || airspace === "F")
    return cannotTell([SURFACE], [{ input: "airspace", what: "the class of the airspace at the surface" }]);
  if (airspace === "G") return fieldInClassG(input);
  const conditions: readonly Condition[] = [
    {
      input: "ceiling_m",
      what: "the ceiling",
      holds: ceilingReaches(input.ceiling_m, SURFACE_CEILING_M),
      step: `${ceilingText(input.ceiling_m)}, at least ${feet(SURFACE_CEILING_M)} asked`,
    },
    {
      input: "visibility_m",
      what: "the ground visibility",
      holds: visibilityReaches(input.visibility_m, toSI(3, "mi")),
      step: `ground visibility, at least ${statuteMiles(toSI(3, "mi"))} asked`,
    },
  ];
  const result = together(conditions);
  const steps = stepsOf(conditions);
  if (result.all === "unknown") return cannotTell([SURFACE], result.missing, steps);
  if (result.all === "hold")
    return {
      known: true,
      permitted: true,
      citations: [SURFACE],
      text: "Ceiling and visibility are enough to take off or land by sight.",
      steps,
    };
  const low = result.failing.map(({ input: name }) =>
    name === "ceiling_m" ? `ceiling below ${feet(SURFACE_CEILING_M)}` : "visibility below 3 SM",
  );
  return {
    known: true,
    permitted: false,
    citations: [SURFACE],
    text: `Not by sight: ${low.join(", ")}. Special VFR or instrument rules.`,
    steps,
  };
}
