import type { FieldFigures } from "@witnessmark/assess";

type Distance = NonNullable<FieldFigures["distance"]["value"]>;

/** One dimension under the runway: the table's figure, what each factor makes of it, what there is. */
export interface DistanceRow {
  readonly key: string;
  readonly to_m: number;
  /** Without the figure itself: "× 1.15 wet". */
  readonly words: string;
  /** The ground roll that the factor is of, where it is not of the figure above. */
  readonly ofRoll_m?: number;
  readonly kind: "table" | "factor" | "needed" | "there";
}

const factorText = (factor_1: number): string => `× ${Number(factor_1.toPrecision(4))}`;

/** The chain of the need with the least left, a row each, none rounded; the last factor's is what is needed. */
export function distanceRows(distance: Distance): readonly DistanceRow[] {
  const { nearest, start, steps } = distance;
  const figureOf = ({ groundRoll_m, total_m }: Distance["start"]): number | undefined =>
    nearest.name === "ground roll" ? groundRoll_m : total_m;
  const first_m = figureOf(start) ?? nearest.exact_m;
  const factors = steps.flatMap(({ factor, before, after }): readonly DistanceRow[] => {
    const to_m = figureOf(after);
    if (to_m === undefined) return [];
    const isOfRoll = factor.of === "ground-roll" && nearest.name !== "ground roll";
    return [
      {
        key: factor.id,
        to_m,
        words: `${factorText(factor.factor_1)} ${factor.title}`,
        ...(isOfRoll && before.groundRoll_m !== undefined ? { ofRoll_m: before.groundRoll_m } : {}),
        kind: "factor",
      },
    ];
  });
  const last = factors.length - 1;
  const chain: readonly DistanceRow[] =
    factors.length === 0
      ? [{ key: "table", to_m: nearest.exact_m, words: "by the table", kind: "needed" }]
      : [
          { key: "table", to_m: first_m, words: "by the table", kind: "table" },
          ...factors.map((row, index) => (index === last ? { ...row, kind: "needed" as const } : row)),
        ];
  return [...chain, { key: "there", to_m: nearest.available_m, words: nearest.availableName, kind: "there" }];
}

/** About as wide as a figure of the drawing's text is, for choosing whether it goes into its line. */
export const textWidth_px = (text: string): number => text.length * 7.6;

/** How the words of a row stand to its dimension, which ends at a place of a drawing so wide. */
export type Standing = "inside" | "beside" | "below";

/** Inside the dimension or behind its end where they have room, else on a line of their own under it. */
export function standingOf(text: string, end_px: number, width_px: number): Standing {
  const wide_px = textWidth_px(text);
  if (wide_px < end_px - 34) return "inside";
  return end_px + 8 + wide_px <= width_px - 2 ? "beside" : "below";
}
