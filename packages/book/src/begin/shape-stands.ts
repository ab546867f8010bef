import { sectionAt } from "../drawing/fuselage-body.ts";
import type { Geometry } from "../schema/geometry.ts";
import { wheelRoles } from "./wheel-names.ts";

/** A drawn shape with what other things are put by, as on the right of the aircraft; x from the foremost part. */
export interface Shape {
  readonly geometry: Geometry;
  readonly halfWidth_m: number;
  /** Fuselage top and bottom at a station. */
  readonly topAt_m: (x_m: number) => number;
  readonly bottomAt_m: (x_m: number) => number;
  readonly mainWheel: Spot;
  /** At the nose or the tail. */
  readonly smallWheel: Pick<Spot, "x_m"> | undefined;
  /** Where the propeller of this side turns, or the only one. */
  readonly engine: (Spot & { readonly z_m: number }) | undefined;
}

interface Spot {
  readonly x_m: number;
  readonly y_m: number;
}

/**
 * A shape as parts are put on it, whether it was drawn from figures or by hand.
 *
 * @param side the side whose wheel and engine count; those of the left are told as if mirrored to the right
 */
export function shapeStands(geometry: Geometry, side: "left" | "right"): Shape {
  const { fuselage, wheels, propellers } = geometry;
  const way = side === "left" ? -1 : 1;
  const roles = wheelRoles(wheels);
  const wheel = (isIt: (index: number) => boolean) => wheels.find((_, index) => isIt(index));
  const main =
    wheel((index) => roles[index]?.role === "main" && roles[index].side !== OTHER[side]) ??
    wheel((index) => roles[index]?.role === "main");
  const small = wheel((index) => ["nose", "tail"].includes(roles[index]?.role ?? ""));
  const propeller = propellers.find(({ y }) => propellers.length < 2 || y * way > 0) ?? propellers[0];
  return {
    geometry,
    halfWidth_m: Math.max(...fuselage.map(([, half_m]) => half_m)),
    topAt_m: (x_m) => sectionAt(fuselage, x_m)[2],
    bottomAt_m: (x_m) => sectionAt(fuselage, x_m)[3],
    mainWheel: { x_m: main?.x ?? 0, y_m: (main?.y ?? 0) * way + 0 },
    smallWheel: small === undefined ? undefined : { x_m: small.x },
    engine:
      propeller === undefined
        ? undefined
        : { x_m: propeller.x, y_m: propeller.y * way + 0, z_m: propeller.z },
  };
}

const OTHER = { left: "right", right: "left" } as const;
