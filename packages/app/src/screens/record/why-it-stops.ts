import type { Verdict } from "@witnessmark/assess";

/** The first reason of a stop, for a line under what is said: "It runs out during this flight."; none otherwise. */
export const whyItStops = (verdict: Verdict | undefined): string | undefined =>
  verdict?.status === "stop" ? `${verdict.because[0]}.` : undefined;
