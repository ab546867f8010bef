import type { Performance } from "@witnessmark/book";
import { countedWind } from "@witnessmark/engine";
import type { WorkingLine } from "../../assessment.ts";
import { ktTenths } from "./texts.ts";

/** The wind along a runway, and what of it the book counts. */
export interface CountedWind {
  /** Headwind above zero. */
  readonly along_mPerS: number;
  readonly counted_mPerS: number;
  readonly performance: Pick<Performance, "headwindCredit_1" | "tailwindCharge_1">;
  /** Whether anything here goes by it: a table without an axis of wind does not. */
  readonly isUsed: boolean;
}

const windAlong = (along_mPerS: number): string =>
  along_mPerS < 0 ? `tailwind ${ktTenths(-along_mPerS, "up")}` : `headwind ${ktTenths(along_mPerS, "down")}`;

const shareOf = ({ along_mPerS, performance }: CountedWind): number =>
  along_mPerS < 0 ? performance.tailwindCharge_1 : performance.headwindCredit_1;

const percent = (share_1: number): string => `${Number((share_1 * 100).toPrecision(4))}\u00A0%`;

/** The wind along the runway, and the share of it that counts. */
export function countedWindLines(wind: CountedWind): readonly WorkingLine[] {
  if (!wind.isUsed) {
    return [
      { label: "Wind along the runway", value: windAlong(wind.along_mPerS) },
      { label: "Wind that is counted", value: "none: the book's table has no wind" },
    ];
  }
  const share_1 = shareOf(wind);
  const share = share_1 === 1 ? "all of it" : `${percent(share_1)} of it`;
  return [
    { label: "Wind along the runway", value: windAlong(wind.along_mPerS) },
    { label: "Wind that is counted", value: `${share}, ${windAlong(wind.counted_mPerS)}` },
  ];
}

/** The rule with its figures: `credit × headwind, or charge × tailwind: 0.5 × 13.8 kt`. */
export function countedWindFormula(wind: CountedWind): { readonly id: string; readonly formula: string } {
  const { along_mPerS } = wind;
  const speed = ktTenths(Math.abs(along_mPerS), along_mPerS < 0 ? "up" : "down");
  return {
    id: countedWind.id,
    formula: `${countedWind.formula}: ${Number(shareOf(wind).toPrecision(4))} × ${speed}`,
  };
}
