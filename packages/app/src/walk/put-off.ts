import { isRecord, stored } from "../preferences/stored.ts";

/** Steps that a person put off in a walk, on this screen: nothing of the ledger, only the order in which they come. */
const skips = stored<{ readonly walk: string; readonly steps: readonly string[] }>("put-off", (found) => {
  const given = isRecord(found) ? found : {};
  const steps = Array.isArray(given["steps"]) ? given["steps"].filter((id) => typeof id === "string") : [];
  return { walk: typeof given["walk"] === "string" ? given["walk"] : "", steps };
});

const NONE: ReadonlySet<string> = new Set();

/** Reads what is put off in one walk; that of another walk no longer counts. */
export function usePutOff(walk: string): ReadonlySet<string> {
  const held = skips.use();
  return held.walk === walk && held.steps.length > 0 ? new Set(held.steps) : NONE;
}

export function putOff(walk: string, step: string): void {
  const held = skips.get();
  const steps = held.walk === walk ? held.steps.filter((id) => id !== step) : [];
  skips.set({ walk, steps: [...steps, step] });
}
