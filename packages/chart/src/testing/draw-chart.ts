import type { GreyImage } from "../picture/ink.ts";

/** A place on the sheet of paper: 0 to 1 across the chart and up it. */
export type SheetPoint = readonly [across: number, up: number];

/** Nine figures of a flat sheet seen by a camera, row by row: sheet to pixels. */
export type Camera = readonly [number, number, number, number, number, number, number, number, number];

export interface DrawnChart {
  readonly width: number;
  readonly height: number;
  readonly camera: Camera;
  readonly lines: readonly {
    readonly points: readonly SheetPoint[];
    readonly width_px: number;
    /** 0 is paper, 1 is black. */
    readonly ink_1: number;
  }[];
  /** Standard deviation of the grain, of 255. */
  readonly noise: number;
  readonly seed: number;
  /** How much darker the far corner is than the near one. */
  readonly shade_1: number;
}

/** Where a place on the sheet falls in the picture. */
export function throughCamera(
  [a, b, c, d, e, f, g, h, i]: Camera,
  [x, y]: SheetPoint,
): readonly [number, number] {
  const w = g * x + h * y + i;
  return [(a * x + b * y + c) / w, (d * x + e * y + f) / w];
}

/** A grey photograph of a chart: lines with soft edges, light that falls off, grain. */
export function drawChart(chart: DrawnChart): GreyImage {
  const { width, height, camera } = chart;
  const ink = new Float32Array(width * height);
  for (const line of chart.lines) {
    const points = line.points.map((point) => throughCamera(camera, point));
    for (let i = 0; i + 1 < points.length; i += 1) {
      stroke(ink, width, height, points[i] ?? [0, 0], points[i + 1] ?? [0, 0], line.width_px, line.ink_1);
    }
  }
  const random = randomOf(chart.seed);
  const data = new Uint8ClampedArray(width * height);
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      const light = 235 * (1 - (chart.shade_1 * (x / width + y / height)) / 2);
      // the sum of four even numbers is near enough to a bell
      const grain = (random() + random() + random() + random() - 2) * Math.sqrt(3) * chart.noise;
      data[y * width + x] = light * (1 - (ink[y * width + x] ?? 0)) + grain;
    }
  }
  return { width, height, data };
}

/** One straight piece, as dark as its ink inside and half as dark on its edge. */
function stroke(
  ink: Float32Array,
  width: number,
  height: number,
  [x1, y1]: readonly [number, number],
  [x2, y2]: readonly [number, number],
  wide_px: number,
  ink_1: number,
): void {
  const reach = wide_px / 2 + 1;
  const long = Math.hypot(x2 - x1, y2 - y1);
  for (
    let y = Math.max(0, Math.floor(Math.min(y1, y2) - reach));
    y <= Math.max(y1, y2) + reach && y < height;
    y += 1
  ) {
    for (
      let x = Math.max(0, Math.floor(Math.min(x1, x2) - reach));
      x <= Math.max(x1, x2) + reach && x < width;
      x += 1
    ) {
      const along = long === 0 ? 0 : ((x - x1) * (x2 - x1) + (y - y1) * (y2 - y1)) / long ** 2;
      const t = Math.min(1, Math.max(0, along));
      const away = Math.hypot(x - x1 - t * (x2 - x1), y - y1 - t * (y2 - y1));
      const cover = Math.min(1, Math.max(0, wide_px / 2 + 0.5 - away)) * ink_1;
      const at = y * width + x;
      ink[at] = Math.max(ink[at] ?? 0, cover);
    }
  }
}

/** The same numbers from 0 to 1 for the same seed. @source mulberry32, public domain */
export function randomOf(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
}
