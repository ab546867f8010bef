import type { Geometry } from "@witnessmark/book";
import type { Ground } from "../geometry/convex.ts";

/** Where one steps down beside the fuselage. From memory. */
const BESIDE_m = 0.7;

/** The door: where one stands before it on the ground, and where one stands behind it. */
export interface Doorway {
  readonly outside: Ground;
  readonly inside: Ground;
}

/** The door as drawn; without one, on the left over the middle of the wing's root, where most small cabins open. */
export function doorway({ door, fuselage, wing }: Geometry): Doorway {
  const x_m = door === undefined ? wing.root.leadingEdge + wing.root.chord / 2 : (door.x[0] + door.x[1]) / 2;
  const side = door?.side === "right" ? 1 : -1;
  const nearest = fuselage.reduce((best, station) =>
    Math.abs(station[0] - x_m) < Math.abs(best[0] - x_m) ? station : best,
  );
  return { outside: [x_m, side * (nearest[1] + BESIDE_m)], inside: [x_m, 0] };
}
