const CIRCLE_RAD = 2 * Math.PI;

/** An angle on the circle: 0 up to, and not with, a full turn. */
export function onCircle_rad(angle_rad: number): number {
  const turned = angle_rad % CIRCLE_RAD;
  const positive = turned < 0 ? turned + CIRCLE_RAD : turned;
  return positive >= CIRCLE_RAD ? 0 : positive; // −1e-20 + a full turn rounds to a full turn
}

/** What rounding leaves over when degrees have become radians and were taken from each other. */
const ROUNDING_RAD = 1e-12;

/** The clockwise arc from one direction to another; both ends belong to it, and equal ends are a point. */
export interface Arc {
  readonly from_rad: number;
  readonly to_rad: number;
}

export const onArc = ({ from_rad, to_rad }: Arc, direction_rad: number): boolean => {
  const width_rad = onCircle_rad(to_rad - from_rad);
  const along_rad = onCircle_rad(direction_rad - from_rad);
  return along_rad <= width_rad + ROUNDING_RAD || along_rad >= CIRCLE_RAD - ROUNDING_RAD;
};

/** The least and the most that wind from anywhere in an arc blows along and across a heading, as shares of its speed. */
export interface ArcShares {
  /** −1 (straight from behind) to 1 (straight from ahead). */
  readonly leastAhead_1: number;
  /** 0 to 1, from whichever side. */
  readonly mostAcross_1: number;
  /** Whether some of the arc lies to the left and to the right of the runway. */
  readonly left: boolean;
  readonly right: boolean;
}

export function arcShares(arc: Arc, heading_rad: number): ArcShares {
  const ends = [arc.from_rad - heading_rad, arc.to_rad - heading_rad];
  const abeamRight = onArc(arc, heading_rad + Math.PI / 2);
  const abeamLeft = onArc(arc, heading_rad - Math.PI / 2);
  const sines = ends.map((angle) => Math.sin(angle));
  return {
    leastAhead_1: onArc(arc, heading_rad + Math.PI) ? -1 : Math.min(...ends.map((angle) => Math.cos(angle))),
    mostAcross_1: abeamRight || abeamLeft ? 1 : Math.max(...sines.map((sine) => Math.abs(sine))),
    left: abeamLeft || sines.some((sine) => sine < -ROUNDING_RAD),
    right: abeamRight || sines.some((sine) => sine > ROUNDING_RAD),
  };
}
