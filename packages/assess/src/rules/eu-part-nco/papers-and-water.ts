import type { Citations } from "../ruling.ts";

export const NCO_CITATIONS: Citations = [
  {
    title:
      "Regulation (EU) 965/2012, NCO.GEN.135: documents; NCO.GEN.155: the list; NCO.IDE.A.175: over water",
    edition: "2021 consolidation; GEN.135(b) from a summary",
    status: "published",
  },
];

/** Which papers may stay at the aerodrome on a flight that takes off and lands there. @source NCO.GEN.135(b) */
const MAY_STAY: readonly string[] = [
  "registration",
  "certificate of airworthiness",
  "noise certificate",
  "specific approvals",
  "radio licence",
  "third-party insurance",
  "journey log",
];

export const mayStayOnGround = (paper: string, sameAerodrome: boolean): boolean =>
  sameAerodrome && MAY_STAY.includes(paper);

const FIFTY_NM_m = 50 * 1852;
const HALF_HOUR_s = 1800;

/** Farther than this from land the pilot decides on rafts and survival equipment. @source NCO.IDE.A.175(c) */
export const overWaterDecision_m = (cruise_mps: number): number =>
  Math.min(FIFTY_NM_m, cruise_mps * HALF_HOUR_s);

/** A list of one aircraft is never less strict than the master list, and the authority is told. @source NCO.GEN.155 */
export const listEntryAcceptable = (master_d: number, own_d: number, notified: boolean): boolean =>
  notified && own_d <= master_d;
