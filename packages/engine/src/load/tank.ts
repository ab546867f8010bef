import { InputError } from "../input-error.ts";

/** The arm of everything in a tank when so much is in it. */
export interface TankArm {
  readonly volume_m3: number;
  readonly arm_m: number;
}

/** A tank and what is in it. */
export interface TankFuel {
  readonly id: string;
  readonly side: "left" | "right" | "centre";
  /** Rising from 0 to the tank's capacity; the arm is linear in volume between them. */
  readonly arms: readonly TankArm[];
  /** To the right of the centre line. */
  readonly lateralArm_m: number;
  /** What cannot be used, and by certification is part of the empty mass. */
  readonly unusable_m3: number;
  /** Everything in the tank, with what cannot be used. */
  readonly volume_m3: number;
}

/** Two neighbouring rows of the table that hold a volume: the arm between them is start + slope × volume. */
export interface ArmPiece {
  readonly from_m3: number;
  readonly to_m3: number;
  readonly start_m: number;
  readonly slope_mPerM3: number;
}

function fault(tank: TankFuel, field: string, expected: string, received: string): InputError {
  return new InputError("out-of-range", `${tank.id}, ${field}`, { expected, received });
}

/** A table of arms stays as it is, while what is in its tank changes: its pieces are made once. */
const piecesOf = new WeakMap<TankFuel["arms"], readonly ArmPiece[]>();

/** The straight pieces of a tank's arm table. */
export function armPieces({ arms }: Pick<TankFuel, "arms">): readonly ArmPiece[] {
  const known = piecesOf.get(arms);
  if (known !== undefined) return known;
  const pieces = arms.slice(1).map((upper, index) => {
    const lower = arms[index] ?? upper;
    const slope_mPerM3 = (upper.arm_m - lower.arm_m) / (upper.volume_m3 - lower.volume_m3);
    return {
      from_m3: lower.volume_m3,
      to_m3: upper.volume_m3,
      start_m: lower.arm_m - slope_mPerM3 * lower.volume_m3,
      slope_mPerM3,
    };
  });
  piecesOf.set(arms, pieces);
  return pieces;
}

/**
 * Refuses a tank whose table or contents cannot be.
 *
 * @throws {InputError} `out-of-range`; names the tank and the part at fault
 */
export function checkTank(tank: TankFuel): void {
  const { arms, unusable_m3, volume_m3, lateralArm_m } = tank;
  const [first] = arms;
  const last = arms.at(-1);
  if (first === undefined || last === undefined || arms.length < 2) {
    throw fault(tank, "arms", "a row for the empty tank and one for the full", `${arms.length} rows`);
  }
  if (first.volume_m3 !== 0) throw fault(tank, "arms", "a first row for 0 m³", `${first.volume_m3} m³`);
  arms.forEach((row, index) => {
    const before = arms[index - 1];
    if (!Number.isFinite(row.arm_m)) throw fault(tank, "arms", "finite arms", `${row.arm_m} m`);
    if (before !== undefined && !(row.volume_m3 > before.volume_m3)) {
      throw fault(tank, "arms", "volumes that rise", `${row.volume_m3} m³ after ${before.volume_m3} m³`);
    }
  });
  if (!Number.isFinite(lateralArm_m)) throw fault(tank, "lateralArm_m", "a finite arm", `${lateralArm_m} m`);
  if (!(unusable_m3 >= 0 && unusable_m3 <= last.volume_m3)) {
    throw fault(tank, "unusable_m3", `0 to ${last.volume_m3} m³`, `${unusable_m3} m³`);
  }
  if (!(volume_m3 >= 0 && volume_m3 <= last.volume_m3)) {
    throw fault(tank, "volume_m3", `0 m³ to the capacity, ${last.volume_m3} m³`, `${volume_m3} m³`);
  }
}

/** The arm of everything in a tank at a volume within its table. */
export function tankArm_m(tank: TankFuel, volume_m3: number): number {
  const exact = tank.arms.find((row) => row.volume_m3 === volume_m3);
  if (exact !== undefined) return exact.arm_m;
  const piece = armPieces(tank).find(({ to_m3 }) => volume_m3 <= to_m3);
  if (piece === undefined)
    throw fault(tank, "volume_m3", "a volume within the table of arms", `${volume_m3} m³`);
  return piece.start_m + piece.slope_mPerM3 * volume_m3;
}

/** What can be used of what is in a tank; zero where there is less than cannot be used. */
export const usable_m3 = ({ volume_m3, unusable_m3 }: TankFuel): number =>
  Math.max(0, volume_m3 - unusable_m3);
