import { toSI } from "@witnessmark/engine";
import { holdsWhen } from "../relief.ts";
import { any, every, type RuledSteps, ruledSteps } from "../ruled-steps.ts";
import type { Citations } from "../ruling.ts";

export const SUBPART_F_CITATIONS: Citations = [
  {
    title: "14 CFR part 91, subpart F: 91.501, 91.509, 91.527",
    edition: "2021 consolidation",
    status: "published",
    note: "Large aeroplanes, turbojet multi-engine aeroplanes and fractional ownership only.",
  },
  {
    title: "14 CFR 91.7, 91.9 and 91.13: airworthiness, the flight manual, care",
    edition: "2021 consolidation",
    status: "published",
  },
];

/** Large: more than 12,500 lb. @source 14 CFR 1.1 */
const LARGE_kg = toSI(12_500, "lb");

export interface SubpartFInput {
  readonly engine?: "piston" | "turboprop" | "turbojet" | undefined;
  readonly engines_count?: number | undefined;
  readonly maxTakeOff_kg?: number | undefined;
}

/** Whether subpart F binds the aeroplane at all. Undefined: not known. */
export const subpartFApplies = ({
  engine,
  engines_count,
  maxTakeOff_kg,
}: SubpartFInput): boolean | undefined =>
  any(
    maxTakeOff_kg === undefined ? undefined : maxTakeOff_kg > LARGE_kg + 1e-6,
    every(
      engine === undefined ? undefined : engine === "turbojet",
      engines_count === undefined ? undefined : engines_count > 1,
    ),
  );

export interface FrostInput {
  readonly subpartF?: boolean | undefined;
  /** Frost adheres to the upper wing, polished or not. */
  readonly frostOnWing?: boolean | undefined;
  readonly manualAsksForCleanWing?: boolean | undefined;
}

/** Take-off with frost on the wing: the rule that really binds is the one that is quoted. */
export function takeOffWithFrost({ subpartF, frostOnWing, manualAsksForCleanWing }: FrostInput): RuledSteps {
  const clean = frostOnWing === undefined ? undefined : !frostOnWing;
  const not = (said: boolean | undefined): boolean | undefined => (said === undefined ? undefined : !said);
  if (subpartF === true) {
    const words = "No frost adheres to the wing; polished frost is frost";
    return ruledSteps([{ rule: "91.527(a)", words, holds: holdsWhen(clean, true) }], SUBPART_F_CITATIONS);
  }
  return ruledSteps(
    [
      {
        rule: "91.9(a)",
        words: "The flight manual's limits are kept: it asks for a clean aircraft",
        holds: holdsWhen(any(clean, not(manualAsksForCleanWing)), true),
      },
      {
        rule: "91.7",
        words: "The aircraft is airworthy, without frost on the wing",
        holds: holdsWhen(clean, true),
      },
      { rule: "91.13", words: "Nobody is endangered by carelessness", holds: holdsWhen(clean, true) },
    ],
    SUBPART_F_CITATIONS,
  );
}

export interface IcingInput {
  readonly ice?: "none" | "forecast" | "known" | undefined;
  /** Ice protection that works and is certified for it. */
  readonly protection?: boolean | undefined;
  /** Later reports show that the forecast ice will not be met. */
  readonly laterReportsClear?: boolean | undefined;
}

/** Flight by instruments into ice, for aeroplanes under subpart F. */
export const flightIntoIcing = ({ ice, protection, laterReportsClear }: IcingInput): RuledSteps =>
  ruledSteps(
    [
      {
        rule: "91.527(b)",
        words: "No ice is met, or the aeroplane is protected and equipped for it, or later reports show none",
        holds: holdsWhen(
          any(
            ice === undefined ? undefined : ice === "none",
            protection,
            every(ice === undefined ? undefined : ice === "forecast", laterReportsClear),
          ),
          true,
        ),
      },
    ],
    SUBPART_F_CITATIONS,
  );

const NM_m = 1852;
const HALF_HOUR_s = 1800;
/** Farther than this from shore a life vest for each is asked for. @source 14 CFR 91.509(a) */
const VESTS_m = 50 * NM_m;
/** Rafts beyond the lesser of this and half an hour. @source 14 CFR 91.509(b) */
const RAFTS_m = 100 * NM_m;

export interface OverWaterNeed {
  readonly raftsBeyond_m: number;
  readonly vests: boolean;
  readonly rafts: boolean;
}

/** What is asked of an aeroplane under subpart F so far from the nearest shore. */
export function overWater(cruise_mps: number, farthest_m: number): OverWaterNeed {
  const raftsBeyond_m = Math.min(RAFTS_m, cruise_mps * HALF_HOUR_s);
  return {
    raftsBeyond_m,
    vests: farthest_m > VESTS_m + 1e-6,
    rafts: farthest_m > raftsBeyond_m + 1e-6,
  };
}
