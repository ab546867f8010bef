import type { Author } from "@witnessmark/ledger";
import type { Greeting, Outcome } from "./exchange/exchange.ts";
import { readPeople } from "./people.ts";
import type { Connection } from "./storage/open-database.ts";
import type { DeviceRow, Settings } from "./storage/schema.ts";

/** What holds for the phone as a whole, whatever the aircraft. */
export interface PhoneState {
  readonly device: DeviceRow | null;
  readonly people: readonly Author[];
  readonly person: Author | null;
  /** Whose records the server keeps; `null` until it was met once. */
  readonly operator: string | null;
  readonly server: "never-reached" | "reached" | "out-of-reach";
  readonly lastReachedAt_ms: number | null;
  readonly clockOffset_ms: number | null;
  readonly photosToSend: number;
}

export const UNKNOWN_PHONE: PhoneState = {
  device: null,
  people: [],
  person: null,
  operator: null,
  server: "never-reached",
  lastReachedAt_ms: null,
  clockOffset_ms: null,
  photosToSend: 0,
};

/** Reads it from the storage. Whether the server is in reach now only an exchange can tell. */
export async function readPhone(connection: Connection, before: PhoneState): Promise<PhoneState> {
  const { people, person } = await readPeople(connection);
  return await connection.run(async (database) => {
    // Each name stands for one kind of value (see `Settings`); the store's type does not say which.
    const get = async <K extends keyof Settings>(name: K) =>
      (await database.get("settings", name)) as Settings[K] | undefined;
    const lastReachedAt_ms = (await get("lastReachedAt_ms")) ?? null;
    return {
      device: (await get("device")) ?? before.device,
      people,
      person,
      // known from an exchange that has ended, and perhaps not written down yet
      operator: (await get("operator")) ?? before.operator,
      server: serverNow(before, lastReachedAt_ms),
      lastReachedAt_ms: latest(before.lastReachedAt_ms, lastReachedAt_ms),
      clockOffset_ms: (await get("clockOffset_ms")) ?? before.clockOffset_ms,
      photosToSend: await database.countFromIndex("uploads", "byState", "waiting"),
    };
  });
}

const latest = (a: number | null, b: number | null): number | null =>
  a === null || b === null ? (a ?? b) : Math.max(a, b);

/** The last exchange that is known of, be it of another tab or of this phone's last page. */
function serverNow(before: PhoneState, reachedAt_ms: number | null): PhoneState["server"] {
  if (reachedAt_ms === null) return before.server;
  const isNews = before.lastReachedAt_ms === null || reachedAt_ms > before.lastReachedAt_ms;
  return isNews ? "reached" : before.server;
}

/** How far the clock must have moved against the server's to be written down again. */
const OFFSET_STEP_MS = 1_000;
/** How often the time of the last exchange is written down. */
const REACHED_STEP_MS = 30_000;

/** The phone as it is now, and what of it is worth writing down. */
export interface Learned {
  readonly phone: PhoneState;
  readonly write: Partial<Settings>;
}

/** Takes in who the server is, as soon as it has said so: without its operator nothing can be kept. */
export function afterGreeting(
  phone: PhoneState,
  { operator: theirs, clockOffset_ms: measured_ms }: Greeting,
): Learned {
  const operator = phone.operator ?? theirs;
  const clockOffset_ms = measured_ms ?? phone.clockOffset_ms;
  const write: { -readonly [K in keyof Settings]?: Settings[K] } = {};
  if (operator !== phone.operator) write.operator = operator;
  if (clockOffset_ms !== null && !isNear(clockOffset_ms, phone.clockOffset_ms, OFFSET_STEP_MS)) {
    write.clockOffset_ms = clockOffset_ms;
  }
  return { phone: { ...phone, operator, clockOffset_ms }, write };
}

/** Takes in how an exchange went. */
export function afterExchange(phone: PhoneState, { reached }: Outcome, now_ms: number): Learned {
  if (!reached) {
    const server = phone.lastReachedAt_ms === null ? "never-reached" : "out-of-reach";
    return { phone: { ...phone, server }, write: {} };
  }
  const isNews = stepOf(now_ms) !== stepOf(phone.lastReachedAt_ms);
  return {
    phone: { ...phone, server: "reached", lastReachedAt_ms: now_ms },
    write: isNews ? { lastReachedAt_ms: now_ms } : {},
  };
}

const stepOf = (time_ms: number | null): number | null =>
  time_ms === null ? null : Math.floor(time_ms / REACHED_STEP_MS);

const isNear = (a: number, b: number | null, step: number): boolean => b !== null && Math.abs(a - b) < step;
