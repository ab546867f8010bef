/** A row of a printed table of least and greatest moments. */
export interface MomentRow {
  readonly mass_kg: number;
  readonly least_kgm: number;
  readonly greatest_kgm: number;
}

/** The arm of a limit at its corners, by rising mass. */
export type LimitLine = readonly { readonly mass_kg: number; readonly arm_m: number }[];

/** The arm of a limit at a mass: linear between the corners, the first corner's below it; none above the last. */
function armAt(line: LimitLine, mass_kg: number): number | undefined {
  const [first] = line;
  if (first === undefined) return undefined;
  if (mass_kg <= first.mass_kg) return first.arm_m;
  const at = line.findIndex((corner) => mass_kg <= corner.mass_kg);
  const upper = line[at];
  const lower = line[at - 1];
  if (upper === undefined || lower === undefined) return undefined;
  return (
    lower.arm_m + ((upper.arm_m - lower.arm_m) * (mass_kg - lower.mass_kg)) / (upper.mass_kg - lower.mass_kg)
  );
}

/**
 * Rows of a printed table of moments that cannot be right by the limits from which it was made: misprints, which must
 * be found before anyone flies on them. The first corner of a limit holds below its mass, as tables of this kind have it.
 *
 * @param tolerance_kgm half the last digit of the table, and what its makers rounded away
 * @returns the rows that are off, or above the limits' last mass
 */
export const suspectRows = (
  rows: readonly MomentRow[],
  forward: LimitLine,
  aft: LimitLine,
  tolerance_kgm: number,
): readonly MomentRow[] =>
  rows.filter(({ mass_kg, least_kgm, greatest_kgm }) => {
    const off = (line: LimitLine, moment_kgm: number): boolean => {
      const arm_m = armAt(line, mass_kg);
      return arm_m === undefined || Math.abs(moment_kgm - mass_kg * arm_m) > tolerance_kgm;
    };
    return off(forward, least_kgm) || off(aft, greatest_kgm);
  });
