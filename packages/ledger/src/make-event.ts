import { InputError } from "@witnessmark/engine";
import type { Author, Bodies, EventType, KnownEvent } from "./event.ts";
import { hashOfEvent } from "./hash.ts";
import { DRIFT_BOUND_MS, merge, tick } from "./hlc.ts";
import { SCHEMA_VERSION } from "./known.ts";
import { parseEvent, saysOfFaults } from "./parse-event.ts";
import { mustBeSigned, sign } from "./signature.ts";
import { wallTime } from "./wall-time.ts";

/** One fact to be kept, before it has ids, clocks, sequence and hashes. */
export type EventDraft = {
  readonly [T in EventType]: { readonly type: T; readonly body: Bodies[T] };
}[EventType];

/** Where a device's chain on one aircraft has got to. */
export interface ChainEnd {
  readonly deviceSeq: number;
  readonly hash: string;
}

/** Everything that an event takes from around it. */
export interface MakeContext {
  readonly operator: string;
  /** The aircraft's registration. */
  readonly aircraft: string;
  readonly device: string;
  readonly author: Author;
  /** The device's last event on this aircraft; `null` before its first, which is `device.introduced`. */
  readonly last: ChainEnd | null;
  /** The last stamp made or merged on this device; `null` before the first. */
  readonly clock: string | null;
  /** The device's wall time, milliseconds since 1970 UTC. */
  readonly now_ms: number;
  /** Local time minus UTC, in minutes, east positive: `-new Date().getTimezoneOffset()`. */
  readonly zone_min: number;
  /** Device clock minus server clock at the last exchange; leave out when never measured. */
  readonly clockOffset_ms?: number;
  /** Makes a UUIDv7 (`newId`). */
  readonly newId: () => string;
  /** The device's private key; `null` when it can keep none. */
  readonly key: CryptoKey | null;
}

export interface MadeEvents {
  readonly events: readonly KnownEvent[];
  /** What the next call starts from; to be kept only together with the events. */
  readonly last: ChainEnd | null;
  readonly clock: string | null;
}

/**
 * Makes sealed events of drafts: stamped, numbered, chained, hashed, and signed where their type asks for it and the
 * device has a key. Changes nothing of what it is given.
 *
 * @throws {InputError} when a draft is not what its type asks for; nothing is made then
 */
export async function makeEvents(context: MakeContext, drafts: readonly EventDraft[]): Promise<MadeEvents> {
  const events: KnownEvent[] = [];
  const now_ms = writable_ms(context.now_ms);
  let { last, clock } = context;
  for (const draft of drafts) {
    clock = tick(clock, now_ms);
    const unsealed: UnsealedEvent = {
      id: context.newId(),
      operator: context.operator,
      aircraft: context.aircraft,
      device: context.device,
      deviceSeq: (last?.deviceSeq ?? 0) + 1,
      author: context.author,
      hlc: clock,
      recordedAt: wallTime(now_ms, context.zone_min),
      ...(context.clockOffset_ms === undefined ? {} : { clockOffset_ms: context.clockOffset_ms }),
      schemaVersion: SCHEMA_VERSION,
      previousHash: last?.hash ?? null,
      ...draft,
    };
    const parsed = parseEvent({ ...unsealed, hash: UNSEALED_HASH });
    if (!parsed.ok) {
      throw new InputError("out-of-range", draft.type, {
        expected: "an event as its type asks",
        received: saysOfFaults(parsed.faults),
      });
    }
    const event = await sealEvent(unsealed, context.key);
    events.push(event);
    last = { deviceSeq: event.deviceSeq, hash: event.hash };
  }
  return { events, last, clock };
}

const UNSEALED_HASH = "0".repeat(64);
/** The last day of the year 9999, the last that a wall time can be written in. */
const LAST_DAY_MS = Date.UTC(9999, 11, 31);

/** A wrong clock is recorded, never refused: what no wall time can say is drawn in to what one can. */
const writable_ms = (now_ms: number): number => Math.min(Math.max(now_ms, DAY_MS), LAST_DAY_MS);
const DAY_MS = 86_400_000;

/** An event that has everything but its hash and signature. */
export type UnsealedEvent = KnownEvent extends infer E
  ? E extends KnownEvent
    ? Omit<E, "hash" | "signature">
    : never
  : never;

/** Hashes an event, and signs it where its type asks for it and there is a key. */
export async function sealEvent(unsealed: UnsealedEvent, key: CryptoKey | null): Promise<KnownEvent> {
  const hash = await hashOfEvent(unsealed);
  const signature = key !== null && mustBeSigned(unsealed.type) ? await sign(key, hash) : undefined;
  return {
    ...unsealed,
    hash,
    ...(signature === undefined ? {} : { signature }),
  } as KnownEvent; // the parts of one member of the union, put back together
}

/**
 * The clock of a device that starts again from its store: after all of its own events, so that it never goes back,
 * and after those of others as far as `merge` follows them.
 */
export function clockOf(
  events: Iterable<{ readonly hlc: string; readonly device: string }>,
  device: string,
  wall_ms: number,
  bound_ms: number = DRIFT_BOUND_MS,
): string | null {
  let clock: string | null = null;
  for (const event of events) {
    if (event.device !== device) clock = merge(clock, event.hlc, wall_ms, bound_ms).clock;
    else if (clock === null || event.hlc > clock) clock = event.hlc;
  }
  return clock;
}
