import { nearest } from "../faults/did-you-mean.ts";
import type { Report } from "../faults/fault-list.ts";
import type { Path } from "../faults/path.ts";
import type { FieldSource } from "../schema/field.ts";
import { mustBeAbove0 } from "./amounts.ts";
import { measureText } from "./measure-text.ts";
import type { Rule } from "./rule.ts";

type RunwaySource = FieldSource["runways"][number];

/** The lowest and the highest land that an aircraft could use. */
const ELEVATION_m = { lowest: -450, highest: 5500 } as const;
/** From the lowest decision height of any category I approach (200 ft) to the highest circling minima. */
const MINIMUM_m = [60, 1500] as const;
const APPROACH_VISIBILITY_m = [400, 10_000] as const;
/** Steeper than this no runway of the tables is. */
const STEEPEST_1 = 0.1;
/** A name is the magnetic direction in tens of degrees; the pole moves faster than names are painted. */
const NAME_WITHIN_deg = 15;
/** The two directions of one strip differ by half a turn. */
const RECIPROCAL_WITHIN_deg = 1;
const RECIPROCAL_SLOPE_WITHIN_1 = 1e-6;

/** Every field is somewhere on land, and its runways can be those of one field. */
export const fieldsCanBeUsed: Rule = ({ fields }, report) => {
  for (const [i, field] of (fields ?? []).entries()) {
    const path: Path = ["fields", i];
    const { elevation, zone, runways } = field;
    if (!(elevation.valueSI >= ELEVATION_m.lowest && elevation.valueSI <= ELEVATION_m.highest)) {
      report([...path, "elevation"], {
        expected: `the height of a field, ${ELEVATION_m.lowest} to ${ELEVATION_m.highest} m`,
        found: measureText(elevation),
      });
    }
    zoneIsKnown(zone, [...path, "zone"], report);
    approachesCanBeFlown(field, path, report);
    for (const [j, runway] of runways.entries()) {
      const here: Path = [...path, "runways", j];
      lengthsFit(runway, here, report);
      nameAgrees(runway, field, here, report);
      if (Math.abs(runway.slope.valueSI) > STEEPEST_1) {
        report([...here, "slope"], {
          expected: `a slope of at most ${STEEPEST_1 * 100} % either way`,
          found: measureText(runway.slope),
          remedy: "4 m in 1000 m is 0.4 %",
        });
      }
      reciprocalAgrees(runway, runways.slice(0, j), here, report);
    }
  }
};

function approachesCanBeFlown({ approach, approaches }: FieldSource, path: Path, report: Report): void {
  if (approaches.length > 0 && !approach) {
    report([...path, "approach"], {
      expected: "`true`, where approaches are listed",
      found: "`false`",
      remedy: "mend it, or take the approaches out",
    });
  }
  for (const [i, { name, minimum, visibility }] of approaches.entries()) {
    const here: Path = [...path, "approaches", i];
    if (approaches.findIndex((other) => other.name === name) < i) {
      report([...here, "name"], { expected: "each approach once", found: `\`${name}\` a second time` });
    }
    for (const [key, measure, [least, most]] of [
      ["minimum", minimum, MINIMUM_m],
      ["visibility", visibility, APPROACH_VISIBILITY_m],
    ] as const) {
      if (measure.valueSI >= least && measure.valueSI <= most) continue;
      report([...here, key], {
        expected: `${least} to ${most} m`,
        found: measureText(measure),
        remedy: key === "minimum" ? "a height above the field, no altitude" : undefined,
      });
    }
  }
}

function zoneIsKnown(zone: string, path: Path, report: Report): void {
  try {
    new Intl.DateTimeFormat("en", { timeZone: zone });
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    const meant = nearest(zone, Intl.supportedValuesOf("timeZone"));
    report(path, {
      expected: "a time zone of the tz database, as Etc/UTC",
      found: `"${zone}"`,
      remedy: meant === undefined ? undefined : `did you mean \`${meant}\`?`,
    });
  }
}

function lengthsFit(runway: RunwaySource, path: Path, report: Report): void {
  const { tora, toda, asda, lda } = runway;
  for (const key of ["tora", "toda", "asda", "lda"] as const) {
    mustBeAbove0("a length", runway[key], [...path, key], report);
  }
  for (const key of ["toda", "asda"] as const) {
    if (runway[key].valueSI >= tora.valueSI) continue;
    report([...path, key], {
      expected: `a length not below the take-off run available, ${measureText(tora)}`,
      found: measureText(runway[key]),
      remedy: "a clearway or stopway adds to the run; without one they are equal",
    });
  }
  const longest = toda.valueSI > asda.valueSI ? toda : asda;
  if (lda.valueSI <= Math.max(longest.valueSI, tora.valueSI)) return;
  report([...path, "lda"], {
    expected: `a landing distance within the length there is, ${measureText(longest)}`,
    found: measureText(lda),
    remedy: "mend it, or the length for take-off",
  });
}

/** Degrees between two directions, 0 to 180. */
const between_deg = (a: number, b: number): number => Math.abs(((a - b + 540) % 360) - 180);

function nameAgrees(
  { name, trueHeading }: RunwaySource,
  { magneticVariation }: FieldSource,
  path: Path,
  report: Report,
): void {
  const magnetic_deg = (trueHeading - magneticVariation + 360) % 360;
  if (between_deg(magnetic_deg, Number(name.slice(0, 2)) * 10) <= NAME_WITHIN_deg) return;
  report([...path, "trueHeading"], {
    expected: `a true heading that agrees with the name ${name} and the variation, ${magneticVariation}°`,
    found: `${trueHeading}°, which is ${Number(magnetic_deg.toFixed(1))}° magnetic`,
    remedy: "east is plus: true = magnetic + variation",
  });
}

const LETTERS: Readonly<Record<string, string>> = { L: "R", R: "L", C: "C", "": "" };

function reciprocalName(name: string): string {
  const other = ((Number(name.slice(0, 2)) + 17) % 36) + 1;
  return `${String(other).padStart(2, "0")}${LETTERS[name.slice(2)] ?? ""}`;
}

/** The same strip the other way round. */
function reciprocalAgrees(
  runway: RunwaySource,
  others: readonly RunwaySource[],
  path: Path,
  report: Report,
): void {
  const other = others.find(({ name }) => name === reciprocalName(runway.name));
  if (other === undefined) return;
  const half_deg = between_deg(runway.trueHeading, other.trueHeading + 180);
  if (half_deg > RECIPROCAL_WITHIN_deg) {
    report([...path, "trueHeading"], {
      expected: `half a turn from ${other.name}, ${Number(((other.trueHeading + 180) % 360).toFixed(1))}°`,
      found: `${runway.trueHeading}°`,
      remedy: "mend one of the two",
    });
  }
  if (Math.abs(runway.slope.valueSI + other.slope.valueSI) > RECIPROCAL_SLOPE_WITHIN_1) {
    report([...path, "slope"], {
      expected: `the slope of ${other.name} the other way round, ${measureText({ ...other.slope, value: -other.slope.value })}`,
      found: measureText(runway.slope),
      remedy: "up is plus, in the direction of the name",
    });
  }
  if (runway.surface !== other.surface) {
    report([...path, "surface"], {
      expected: `the surface of ${other.name}, ${other.surface}`,
      found: runway.surface,
    });
  }
}
