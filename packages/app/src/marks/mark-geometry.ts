import type { Status } from "@witnessmark/ledger";

/** One optical size of the mark, on a square of 48 units with its centre at 0,0. */
export interface MarkCut {
  /** Circumradius of the nut. */
  readonly nut: number;
  readonly edge: number;
  readonly stripe: number;
  /** Where the stub on the base begins and ends, from the centre. */
  readonly stub: readonly [number, number];
  /** Half the length of the stripe on a turned nut. */
  readonly bar: number;
  /** Radius of the base ring; 0 for none. */
  readonly ring: number;
}

const SMALL: MarkCut = { nut: 16.5, edge: 4.2, stripe: 8, stub: [18.4, 24], bar: 13, ring: 0 };
const MIDDLE: MarkCut = { nut: 16, edge: 3.2, stripe: 7.6, stub: [17.8, 24], bar: 12.8, ring: 0 };
const LARGE: MarkCut = { nut: 15.5, edge: 2.2, stripe: 7.2, stub: [17, 23.6], bar: 12.6, ring: 20.4 };

/** The drawing is simpler and heavier when it is small. */
export const cutFor = (size_px: number): MarkCut => (size_px < 20 ? SMALL : size_px < 36 ? MIDDLE : LARGE);

/** Degrees the nut has turned since the paint was laid. */
export const TURN_deg: Readonly<Record<Status, number>> = { clear: 0, caution: 40, stop: 90, open: 0 };

/** `points` of a regular hexagon about 0,0, one corner up when `turn_deg` is 0. */
export function hexagon(radius: number, turn_deg: number): string {
  return Array.from({ length: 6 }, (_, corner) => {
    const angle_rad = ((turn_deg + corner * 60 - 90) * Math.PI) / 180;
    return `${(radius * Math.cos(angle_rad)).toFixed(2)},${(radius * Math.sin(angle_rad)).toFixed(2)}`;
  }).join(" ");
}

/** The two stubs on the base, above and below the nut. */
export function stubs(cut: MarkCut): string {
  const [from, to] = cut.stub;
  const left = -cut.stripe / 2;
  const length = to - from;
  return `M${left},${-to}h${cut.stripe}v${length}h${-cut.stripe}zM${left},${to}h${cut.stripe}v${-length}h${-cut.stripe}z`;
}

/** Dashes that leave the six corners and no sides. */
export function cornerDashes(cut: MarkCut): { readonly dashes: string; readonly offset: string } {
  return {
    dashes: `${(cut.nut * 0.56).toFixed(2)} ${(cut.nut * 0.44).toFixed(2)}`,
    offset: (cut.nut * 0.28).toFixed(2),
  };
}
