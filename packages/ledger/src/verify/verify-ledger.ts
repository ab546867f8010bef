import type { LedgerEvent } from "../event.ts";
import { type ClockRemark, type LedgerFault, nameOf, spoken } from "../fault.ts";
import { hashOfEvent } from "../hash.ts";
import { DRIFT_BOUND_MS } from "../hlc.ts";
import { chainFaults } from "./chain.ts";
import { clockRemarks } from "./clocks.ts";
import type { Placed } from "./placed.ts";
import { signatureFaults } from "./signatures.ts";

export interface VerifyOptions {
  /** Now, milliseconds since 1970 UTC, to tell what lies in the future; left out, nothing does. */
  readonly now_ms?: number;
  /** How far clocks may be apart without a remark. */
  readonly bound_ms?: number;
  /** The line of the file each event came from, in the same order. */
  readonly lines?: readonly number[];
}

export interface LedgerReport {
  readonly events: number;
  /** `true` when there is no fault; remarks may stand. */
  readonly sound: boolean;
  /** By device and deviceSeq. */
  readonly faults: readonly LedgerFault[];
  readonly remarks: readonly ClockRemark[];
}

/**
 * Whether a ledger is as its devices wrote it: contents, chain, numbers and signatures of every event, by itself and
 * without anything but the ledger. Events come in any order.
 *
 * What it cannot know: whether the newest events of a device, when they are unsigned, were cut off or rewritten by
 * someone who also recomputed their hashes. A later event, a signature or another copy gives that away.
 */
export async function verifyLedger(
  events: readonly LedgerEvent[],
  options: VerifyOptions = {},
): Promise<LedgerReport> {
  const placed = events.map((event, at) => ({ event, line: options.lines?.[at] }));
  const bound_ms = options.bound_ms ?? DRIFT_BOUND_MS;
  const faults: LedgerFault[] = [...mixedFaults(placed), ...idFaults(placed)];
  const remarks: ClockRemark[] = [];
  const devices = Map.groupBy(placed, ({ event }) => event.device);
  for (const device of [...devices.keys()].sort()) {
    const chain = (devices.get(device) ?? []).toSorted((a, b) => a.event.deviceSeq - b.event.deviceSeq);
    faults.push(...(await hashFaults(chain)), ...chainFaults(chain), ...(await signatureFaults(chain)));
    remarks.push(...clockRemarks(chain, bound_ms, options.now_ms));
  }
  return { events: events.length, sound: faults.length === 0, faults, remarks };
}

/** Digests are independent of each other: enough at once to keep the platform busy, few enough to hold in memory. */
const AT_ONCE = 256;

async function hashFaults(chain: readonly Placed[]): Promise<readonly LedgerFault[]> {
  const faults: LedgerFault[] = [];
  for (let from = 0; from < chain.length; from += AT_ONCE) {
    const some = await Promise.all(chain.slice(from, from + AT_ONCE).map(hashFault));
    faults.push(...some.filter((fault) => fault !== null));
  }
  return faults;
}

async function hashFault({ event, line }: Placed): Promise<LedgerFault | null> {
  const hash = await hashOrReason(event);
  if (hash === event.hash) return null;
  return {
    code: "hash-wrong",
    ...nameOf(event, line),
    says: `${spoken(event)} was changed after it was made: it says its hash is ${event.hash}, its contents give ${hash}`,
  };
}

async function hashOrReason(event: LedgerEvent): Promise<string> {
  try {
    return await hashOfEvent(event);
  } catch (error) {
    return `none (${error instanceof Error ? error.message : String(error)})`;
  }
}

/** One ledger is of one aircraft and one operator: the first event's. */
function mixedFaults(placed: readonly Placed[]): readonly LedgerFault[] {
  const first = placed[0]?.event;
  if (first === undefined) return [];
  return placed.flatMap(({ event, line }) => {
    const faults: LedgerFault[] = [];
    if (event.aircraft !== first.aircraft) {
      const says = `${spoken(event)} is of aircraft ${event.aircraft}; this ledger began with ${first.aircraft}`;
      faults.push({ code: "aircraft-foreign", ...nameOf(event, line), says });
    }
    if (event.operator !== first.operator) {
      const says = `${spoken(event)} is of operator ${event.operator}; this ledger began with ${first.operator}`;
      faults.push({ code: "operator-foreign", ...nameOf(event, line), says });
    }
    return faults;
  });
}

/** Different events with one id. The same number and the same device are a matter of the chain. */
function idFaults(placed: readonly Placed[]): readonly LedgerFault[] {
  const byId = new Map<string, LedgerEvent>();
  return placed.flatMap(({ event, line }) => {
    const other = byId.get(event.id);
    byId.set(event.id, other ?? event);
    const isSamePlace = other?.device === event.device && other.deviceSeq === event.deviceSeq;
    if (other === undefined || isSamePlace) return [];
    const says = `${spoken(event)} has the id of another: ${spoken(other)}`;
    return [{ code: "id-twice", ...nameOf(event, line), says }];
  });
}
