/** A straight scale from values to pixels; values outside land at its ends. */
export interface Scale {
  readonly min: number;
  readonly max: number;
  readonly width_px: number;
  /** Pixels from the left, kept inside the rule. */
  at(value: number): number;
  /** The value under a pixel, rounded to a step and kept inside. */
  under(x_px: number, step: number): number;
}

export function straightScale(min: number, max: number, width_px: number): Scale {
  const span = max - min > 0 ? max - min : 1;
  const inside = (x_px: number) => Math.min(width_px, Math.max(0, x_px));
  return {
    min,
    max,
    width_px,
    at: (value) => inside(((value - min) / span) * width_px),
    under: (x_px, step) => {
      const raw = min + (inside(x_px) / Math.max(1, width_px)) * span;
      return Math.min(max, Math.max(min, roundTo(raw, step)));
    },
  };
}

/** To the nearest multiple of a step, free of the dust of binary fractions. */
export function roundTo(value: number, step: number): number {
  if (!(step > 0)) return value;
  return Number((Math.round(value / step) * step).toPrecision(12));
}

export interface Ticks {
  readonly minor: number;
  readonly major: number;
}

/** Intervals of 1, 2 or 5 times a power of ten, so that numbers stand at least `apart_px` from each other. */
export function tickIntervals(span: number, width_px: number, apart_px = 43): Ticks {
  const least = (span * apart_px) / Math.max(apart_px, width_px);
  const power = 10 ** Math.floor(Math.log10(least));
  for (const [times, parts] of [
    [1, 2],
    [2, 2],
    [5, 5],
    [10, 2],
  ] as const) {
    const major = times * power;
    if (major >= least * 0.999) return { major, minor: major / parts };
  }
  return { major: 10 * power, minor: 5 * power };
}

/** Every multiple of an interval from one end to the other. */
export function multiples(min: number, max: number, interval: number): readonly number[] {
  const first = Math.ceil(min / interval - 1e-9);
  const last = Math.floor(max / interval + 1e-9);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) =>
    Number(((first + i) * interval).toPrecision(12)),
  );
}
