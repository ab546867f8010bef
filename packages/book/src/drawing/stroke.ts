export type StrokeWeight = "outline" | "inside" | "hair" | "window" | "leg";

/** One path of a line drawing. Draw them in order: a filled one hides what lies under it. */
export interface Stroke {
  /** SVG path data; absolute M, L, C, Q and Z only. */
  readonly d: string;
  readonly weight: StrokeWeight;
  readonly dashed: boolean;
  /** Filled with paper. */
  readonly filled: boolean;
  /** Drawn in the third ink. */
  readonly soft: boolean;
}

/** How wide each weight is drawn on a screen, in CSS pixels. */
export const STROKE_WIDTHS_px: Readonly<Record<StrokeWeight, number>> = {
  outline: 1.7,
  inside: 0.9,
  hair: 0.6,
  window: 2.4,
  leg: 2.2,
};

/** 0: outline only, for a key plan. 1: main lines. 2: everything. */
export type Detail = 0 | 1 | 2;

const stroke = (
  d: string,
  weight: StrokeWeight,
  more: Partial<Omit<Stroke, "d" | "weight">> = {},
): Stroke => ({
  d,
  weight,
  dashed: more.dashed ?? false,
  filled: more.filled ?? false,
  soft: more.soft ?? false,
});

/** A body that hides what is behind it. */
export const shape = (d: string, weight: StrokeWeight = "outline"): Stroke =>
  stroke(d, weight, { filled: true });

/** A line on a body. */
export const line = (
  d: string,
  weight: StrokeWeight = "inside",
  look: { readonly dashed?: boolean; readonly soft?: boolean } = {},
): Stroke => stroke(d, weight, look);
