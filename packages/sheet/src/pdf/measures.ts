import type { Pen } from "./pen.ts";

export const MM = 72 / 25.4;
/** As wide as A4 and Letter both hold; as high as the paper, less a margin that every printer keeps. */
export const WIDTH = 186 * MM;
export const MARGIN = 12 * MM;

export interface Origin {
  readonly x: number;
  readonly y: number;
}

/** The size at which a text fits a width, never above the one asked for. */
export const fitting = (pen: Pen, text: string, width: number, size: number): number =>
  Math.min(size, (size * width) / Math.max(1, pen.width(text, { size, weight: "black" })));
