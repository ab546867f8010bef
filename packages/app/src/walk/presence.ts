import { isRecord, stored } from "../preferences/stored.ts";

/** Away longer than this, and the last looks are asked again: a break of a minute already needs a step back. */
export const AWAY_AFTER_ms = 3 * 60_000;

export interface Presence {
  readonly registration: string;
  readonly walk: string;
  readonly at_ms: number;
}

const read = (found: unknown): Presence | null => {
  const given = isRecord(found) ? found : {};
  const { registration, walk, at_ms } = given as { [K in keyof Presence]?: unknown };
  return typeof registration === "string" && typeof walk === "string" && typeof at_ms === "number"
    ? { registration, walk, at_ms }
    : null;
};

/** The last moment at which someone was seen at a walk, on this screen; `null` when none is under way. */
export const lastSeen = stored<Presence | null>("last-seen", read);

/** Set from "I am leaving" until the return. */
export const leaving = stored<Presence | null>("leaving", read);

/** The interruption of which this screen has told: its event's id. */
export const backTold = stored<string>("back-told", (found) => (typeof found === "string" ? found : ""));

/** How long the screen was left, when that is long enough to matter; `null` otherwise. */
export function awaySince(seen: Presence | null, now_ms: number): Presence | null {
  return seen !== null && now_ms - seen.at_ms > AWAY_AFTER_ms ? seen : null;
}
