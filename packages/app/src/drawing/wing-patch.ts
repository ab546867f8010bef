import { type Book, chordwise_m, type Projection, polygon } from "@witnessmark/book";

type Wing = Book["geometry"]["wing"];

/** Where a tank lies in the wing, as shares of the chord; the drawing of a walk has it dashed in the same place. */
const TANK_CHORD_1 = [0.17, 0.62] as const;

/** The patch of one half of the wing that a tank takes, between two distances from the centre line. */
export function tankPatch(
  wing: Wing,
  half: 1 | -1,
  [from_m, to_m]: readonly [number, number],
  project: Projection,
): string {
  const [fore_1, aft_1] = TANK_CHORD_1;
  return polygon(
    (
      [
        [from_m, fore_1],
        [to_m, fore_1],
        [to_m, aft_1],
        [from_m, aft_1],
      ] as const
    ).map(([out_m, chord_1]) => project(chordwise_m(wing, out_m, chord_1), out_m * half)),
  );
}

/** The middle of such a patch. */
export const tankMiddle = (
  wing: Wing,
  half: 1 | -1,
  [from_m, to_m]: readonly [number, number],
  project: Projection,
): readonly [number, number] => {
  const out_m = (from_m + to_m) / 2;
  return project(chordwise_m(wing, out_m, (TANK_CHORD_1[0] + TANK_CHORD_1[1]) / 2), out_m * half);
};
