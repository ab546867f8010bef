import type { PlannedFlight } from "@witnessmark/ledger";
import type { Context } from "../context.ts";
import type { Finding } from "../finding.ts";
import { loadVerdicts } from "./load/load-verdicts.ts";

/** The verdicts of the flight's numbers. A flight that is only named, or none, has none. */
export function flightVerdicts(context: Context, flight: PlannedFlight | null): readonly Finding[] {
  const plan = flight?.plan;
  if (flight === null || plan === undefined) return [];
  return [...loadVerdicts(context, plan)];
}
