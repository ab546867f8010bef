import type { Verdict } from "@witnessmark/assess";
import type { Discrepancy } from "@witnessmark/ledger";

/** The first reason of a stop, for a line under what is said: "It runs out during this flight."; none otherwise. */
export const whyItStops = (verdict: Verdict | undefined): string | undefined =>
  verdict?.status === "stop" ? `${verdict.because[0]}.` : undefined;

/** Why a relief that is on record does not cover the flight; none where no relief was ever signed. */
export const whyNoRelief = ({ reliefs }: Discrepancy, verdict: Verdict | undefined): string | undefined =>
  reliefs.length === 0 ? undefined : whyItStops(verdict);
