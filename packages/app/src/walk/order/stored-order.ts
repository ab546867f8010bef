import type { OrderedStop } from "@witnessmark/planner";
import { isRecord } from "../../preferences/stored.ts";

/** Stops as they were kept, or nothing where what was found is something else. */
export function readStops(found: unknown): readonly OrderedStop[] | undefined {
  if (!Array.isArray(found)) return undefined;
  const stops = found.flatMap((one: unknown): readonly OrderedStop[] => {
    const { stance, steps } = (isRecord(one) ? one : {}) as { stance?: unknown; steps?: unknown }; // looked at below
    const isWhole = typeof stance === "string" && Array.isArray(steps);
    return isWhole ? [{ stance, steps: steps.filter((id) => typeof id === "string") }] : [];
  });
  return stops.length === found.length ? stops : undefined;
}

export const numberIn = (found: Readonly<Record<string, unknown>>, name: string): number => {
  const value = found[name];
  return typeof value === "number" && Number.isFinite(value) && value >= 0 ? value : 0;
};
