/** How the cells of a table are rounded: to a step, to the safe side. */
export interface Rounding {
  readonly step: number;
  /** A distance goes up, a gradient down. */
  readonly to: "up" | "down" | "nearest";
}

/** What a double cannot tell from a whole number of steps. */
const NEAR_1 = 1e-9;

/** A cell in whole steps. */
export function roundCell(value: number, { step, to }: Rounding): number {
  const steps = value / step;
  const near = Math.round(steps);
  const isWhole = Math.abs(steps - near) <= NEAR_1 * Math.max(1, Math.abs(near));
  const whole = isWhole || to === "nearest" ? near : to === "up" ? Math.ceil(steps) : Math.floor(steps);
  // by its decimals: 3 × 0.1 is 0.3, not 0.30000000000000004
  const decimals = Math.max(0, -Math.floor(Math.log10(step)));
  return Number((whole * step).toFixed(Math.min(decimals, 15)));
}

/** 1, 2 or 5 in the place of a quarter of a per cent of full scale: finer than a chart can be read. */
export function stepFor(span: readonly [number, number]): number {
  const wanted = Math.abs(span[1] - span[0]) / 400;
  if (!(wanted > 0)) return 1;
  const place = 10 ** Math.floor(Math.log10(wanted));
  const digit = [5, 2, 1].find((each) => each * place <= wanted * (1 + NEAR_1)) ?? 1;
  return Number((digit * place).toPrecision(1));
}

/** Round values that divide a span evenly, at most `most` of them: 0, 10, 20 … */
export function roundValues([from, to]: readonly [number, number], most = 9): readonly number[] {
  if (!(to > from)) return [from];
  for (let place = 10 ** Math.floor(Math.log10((to - from) / most)); ; place *= 10) {
    for (const digit of [1, 2, 2.5, 5]) {
      const step = digit * place;
      const first = Math.ceil(from / step - NEAR_1);
      const last = Math.floor(to / step + NEAR_1);
      if (last - first + 1 > most) continue;
      return Array.from({ length: last - first + 1 }, (_, i) => Number(((first + i) * step).toPrecision(12)));
    }
  }
}
