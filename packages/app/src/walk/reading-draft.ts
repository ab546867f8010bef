import { isUnitId } from "@witnessmark/engine";
import type { Read } from "@witnessmark/ledger";
import { isRecord, stored } from "../preferences/stored.ts";

/** A reading that was typed but not yet answered with: a killed app must not lose it. */
export interface ReadingDraft {
  readonly read: Read | null;
  readonly temperature: Read | null;
}

interface Drafts {
  readonly walk: string;
  readonly byCheck: Readonly<Record<string, ReadingDraft>>;
  /** The last temperature of each thing in this walk: two tyres on one morning are asked for it once. */
  readonly temperatures: Readonly<Record<string, Read>>;
}

const readOf = (found: unknown): Read | null => {
  if (!isRecord(found)) return null;
  const { value, unit } = found as { value?: unknown; unit?: unknown };
  return typeof value === "number" && Number.isFinite(value) && typeof unit === "string" && isUnitId(unit)
    ? { value, unit }
    : null;
};

const drafts = stored<Drafts>("readings", (found) => {
  const given = isRecord(found) ? found : {};
  const byCheck: Record<string, ReadingDraft> = {};
  for (const [check, draft] of Object.entries(isRecord(given["byCheck"]) ? given["byCheck"] : {})) {
    if (isRecord(draft)) {
      byCheck[check] = { read: readOf(draft["read"]), temperature: readOf(draft["temperature"]) };
    }
  }
  const temperatures: Record<string, Read> = {};
  for (const [of, value] of Object.entries(isRecord(given["temperatures"]) ? given["temperatures"] : {})) {
    const read = readOf(value);
    if (read !== null) temperatures[of] = read;
  }
  return { walk: typeof given["walk"] === "string" ? given["walk"] : "", byCheck, temperatures };
});

export function draftOf(walk: string, check: string): ReadingDraft | undefined {
  const held = drafts.get();
  return held.walk === walk ? held.byCheck[check] : undefined;
}

export function keepDraft(walk: string, check: string, draft: ReadingDraft): void {
  const held = drafts.get();
  const same = held.walk === walk ? held : { walk, byCheck: {}, temperatures: {} };
  drafts.set({ ...same, byCheck: { ...same.byCheck, [check]: draft } });
}

export function dropDraft(walk: string, check: string): void {
  const held = drafts.get();
  if (held.walk !== walk || held.byCheck[check] === undefined) return;
  const rest = Object.fromEntries(Object.entries(held.byCheck).filter(([id]) => id !== check));
  drafts.set({ ...held, byCheck: rest });
}

/** The temperature last given in this walk for the same kind of thing. */
export const temperatureSaid = (walk: string, of: string): Read | undefined =>
  drafts.get().walk === walk ? drafts.get().temperatures[of] : undefined;

export function keepTemperature(walk: string, of: string, temperature: Read): void {
  const held = drafts.get();
  const same = held.walk === walk ? held : { walk, byCheck: {}, temperatures: {} };
  drafts.set({ ...same, temperatures: { ...same.temperatures, [of]: temperature } });
}
