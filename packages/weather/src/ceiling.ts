import { toSI } from "@witnessmark/engine";
import type { CloudLayer, SkyStatement } from "./groups/clouds.ts";

/**
 * The ceiling by the rule of the United States: the lowest broken or overcast layer, or the vertical visibility, at
 * any height.
 *
 * none: the report says that there is none; `reach_m` is how far up it speaks (CLR 12,000 ft, NSC and CAVOK 5,000 ft
 * or the minimum sector altitude), absent when it sets no bound. unknown: the report does not settle it; `lowest_m` is
 * the lowest that it may be, where the report shows one.
 */
export type Ceiling =
  | { readonly kind: "height"; readonly height_m: number; readonly height_ft: number }
  | { readonly kind: "none"; readonly reach_m?: number; readonly reach_ft?: number }
  | { readonly kind: "unknown"; readonly lowest_m?: number; readonly lowest_ft?: number };

export interface Sky {
  readonly clouds: readonly CloudLayer[];
  /** `null`: the sky is hidden, and how far up one sees is not known. Absent: the sky is not hidden. */
  readonly verticalVisibility_ft?: number | null;
  readonly sky?: SkyStatement;
  readonly cavok?: true;
  readonly cloudsNotObserved?: true;
}

const REACH_FT: Readonly<Partial<Record<SkyStatement | "CAVOK", number>>> = {
  CLR: 12_000,
  NSC: 5_000,
  CAVOK: 5_000,
};

export const heightCeiling = (height_ft: number): Ceiling => ({
  kind: "height",
  height_m: toSI(height_ft, "ft"),
  height_ft,
});

const makesCeiling = ({ amount }: CloudLayer): boolean => amount === "BKN" || amount === "OVC";

/** @returns `undefined` when the groups say nothing of the sky at all */
export function ceilingOf(said: Sky): Ceiling | undefined {
  const upward = said.verticalVisibility_ft;
  const heights = said.clouds.filter(makesCeiling).map(({ base_ft }) => base_ft);
  if (upward !== undefined) heights.push(upward);
  const possible = said.clouds.filter(({ amount }) => amount === null).map(({ base_ft }) => base_ft);
  const known = heights.filter((height) => height !== null);
  if (known.length < heights.length || possible.length > 0 || said.cloudsNotObserved) {
    const all = [...heights, ...possible];
    const lowest_ft = Math.min(...[...known, ...possible.filter((height) => height !== null)]);
    if (all.length === 0 || all.includes(null) || !Number.isFinite(lowest_ft)) return { kind: "unknown" };
    return { kind: "unknown", lowest_ft, lowest_m: toSI(lowest_ft, "ft") };
  }
  if (known.length > 0) return heightCeiling(Math.min(...known));
  const statement = said.cavok ? "CAVOK" : said.sky;
  if (statement !== undefined) {
    const reach_ft = REACH_FT[statement];
    return { kind: "none", ...(reach_ft === undefined ? {} : { reach_ft, reach_m: toSI(reach_ft, "ft") }) };
  }
  return said.clouds.length > 0 ? { kind: "none" } : undefined;
}
