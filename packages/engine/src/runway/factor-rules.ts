import { InputError } from "../input-error.ts";

/** A factor, or why the rule gives none. */
export type FactorAnswer =
  | { readonly ok: true; readonly factor_1: number }
  | {
      readonly ok: false;
      readonly why: "beyond the rule" | "no rule";
      readonly asked: number;
      /** The furthest that the rule goes. */
      readonly nearest?: number;
    };

/** `share_1` of the distance for each `per_mPerS` of wind, counted in proportion, up to `most_mPerS`. */
export interface WindNote {
  readonly share_1: number;
  readonly per_mPerS: number;
  readonly most_mPerS: number;
}

/** What a table's note says of wind: "less 10 % for each 9 kt headwind", "plus 10 % for each 2 kt tailwind up to 10 kt". */
export interface WindNotes {
  readonly headwind?: WindNote;
  readonly tailwind?: WindNote;
}

/** A conversion's noise must not push a wind of exactly the note's end beyond it. */
const ROUNDING_1 = 1e-9;

function requireNote({ share_1, per_mPerS, most_mPerS }: WindNote, name: string, most_1: number): void {
  const total_1 = (share_1 * most_mPerS) / per_mPerS;
  if (share_1 >= 0 && per_mPerS > 0 && most_mPerS >= 0 && total_1 <= most_1) return;
  throw new InputError("out-of-range", name, {
    expected: `a share of zero or more for a speed above zero, coming to at most ${most_1 * 100} %`,
    received: `${share_1 * 100} % for each ${per_mPerS} m/s up to ${most_mPerS} m/s`,
    remedy: "mend the table's note in the book",
  });
}

function requireNumber(name: string, value: number): void {
  if (Number.isFinite(value)) return;
  throw new InputError("not-a-number", name, { expected: "a finite number", received: String(value) });
}

/**
 * What a table's note makes of the wind. In proportion: 18 kt at 10 % for each 9 kt is 20 %, not 19. A headwind beyond
 * the note counts as its end; a tailwind beyond it has no figure.
 *
 * @param along_mPerS headwind above zero, tailwind below; what the rules let count, not what blows
 * @throws {InputError} `not-a-number`, `out-of-range` (a note that is none)
 * @source notes of printed tables, such as FAA-H-8083-25C figures 11-24 and 11-32
 */
export function windNoteFactor(along_mPerS: number, notes: WindNotes): FactorAnswer {
  requireNumber("along_mPerS", along_mPerS);
  if (along_mPerS === 0) return { ok: true, factor_1: 1 };
  if (along_mPerS > 0) {
    if (notes.headwind === undefined) return { ok: true, factor_1: 1 }; // no credit is the safe side
    requireNote(notes.headwind, "headwind", 0.9);
    const counted_mPerS = Math.min(along_mPerS, notes.headwind.most_mPerS);
    return { ok: true, factor_1: 1 - (notes.headwind.share_1 * counted_mPerS) / notes.headwind.per_mPerS };
  }
  const { tailwind } = notes;
  if (tailwind === undefined) return { ok: false, why: "no rule", asked: along_mPerS };
  requireNote(tailwind, "tailwind", 10);
  if (-along_mPerS > tailwind.most_mPerS * (1 + ROUNDING_1))
    return { ok: false, why: "beyond the rule", asked: along_mPerS, nearest: -tailwind.most_mPerS };
  return { ok: true, factor_1: 1 + (tailwind.share_1 * -along_mPerS) / tailwind.per_mPerS };
}

/** `perSlope_1` of the distance for a slope of 1 (5: 5 % for each 1 %), up to a slope of `most_1`. */
export interface SlopeRule {
  readonly perSlope_1: number;
  readonly most_1: number;
}

/**
 * 5 % for each 1 % of slope, to 2 %; no credit for a slope that helps.
 *
 * @source AMC2 CAT.POL.A.305 and AMC CAT.POL.A.330, runway slope (UK consolidated copy, 2020/2021)
 */
export const EUROPEAN_SLOPE_RULE: SlopeRule = { perSlope_1: 5, most_1: 0.02 };

/**
 * What a slope makes of a distance: up is against a take-off, down against a landing. A slope that helps gives no
 * credit; one that is against it beyond the rule has no figure.
 *
 * @param slope_1 in the direction of take-off or landing, up above zero
 * @throws {InputError} `not-a-number`
 */
export function slopeFactor(slope_1: number, phase: "take-off" | "landing", rule: SlopeRule): FactorAnswer {
  requireNumber("slope_1", slope_1);
  const against_1 = phase === "take-off" ? slope_1 : -slope_1;
  if (against_1 > rule.most_1 * (1 + ROUNDING_1)) {
    const nearest = phase === "take-off" ? rule.most_1 : -rule.most_1;
    return { ok: false, why: "beyond the rule", asked: slope_1, nearest };
  }
  return { ok: true, factor_1: 1 + rule.perSlope_1 * Math.max(0, against_1) };
}
