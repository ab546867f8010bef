import type { AircraftRow } from "../storage/schema.ts";
import { readRow } from "./aircraft-row.ts";
import type { CheckedEntry } from "./check-page.ts";
import type { ExchangeContext } from "./context.ts";
import { OutOfReach, PAGE_EVENTS } from "./server.ts";
import { takePage } from "./take-page.ts";

export interface FetchOlder {
  /** How many entries to go back by; all of them when left out. */
  readonly most?: number;
  readonly signal?: AbortSignal;
  /** Told how many entries are left at the server. */
  readonly onProgress?: (left: number) => void;
}

const SAYS_ITSELF = "Connect this phone; what has come stays here.";

/**
 * Brings what this phone left at the server onto it, the latest first, each step checked and kept by itself.
 *
 * @throws {Error} with a sentence for a person
 */
export async function fetchOlder(
  context: ExchangeContext,
  aircraft: string,
  { most = Number.POSITIVE_INFINITY, signal, onProgress }: FetchOlder,
): Promise<void> {
  let row = await readRow(context, aircraft);
  const stop = Math.max(1, (row.older?.wholeFrom ?? 1) - most);
  let hasCome = false;
  try {
    while (row.older !== undefined && row.older.wholeFrom > stop) {
      if (signal?.aborted) throw new Error("Stopped. What has come stays here.");
      const from = row;
      // In its turn with exchanges: they may find that the server counts anew.
      row = await context.locks.hold("exchange", () => fetchBefore(context, from, stop));
      hasCome = true;
      onProgress?.((row.older?.wholeFrom ?? 1) - 1);
    }
  } catch (error) {
    if (error instanceof OutOfReach) {
      throw new Error(`Not on this phone, and the server is out of reach. ${SAYS_ITSELF}`, { cause: error });
    }
    throw error;
  } finally {
    // The state is folded anew once, not after each step.
    if (hasCome) await context.tell({ aircraft, row, lookAgain: true });
  }
}

/** Takes the page before what is whole. @returns the row then */
async function fetchBefore(context: ExchangeContext, from: AircraftRow, stop: number): Promise<AircraftRow> {
  const { aircraft, older } = from;
  const end = (older?.wholeFrom ?? 1) - 1;
  const start = Math.max(stop - 1, end - PAGE_EVENTS);
  const entries: CheckedEntry[] = [];
  for (let after = start; after < end; ) {
    const page = await context.server.pull(aircraft, { after });
    const [first] = page.entries;
    if (page.epoch !== from.epoch || first?.ledgerSeq !== after + 1) throw new Error(CHANGED);
    entries.push(...page.entries.filter(({ ledgerSeq }) => ledgerSeq <= end));
    after = page.entries.at(-1)?.ledgerSeq ?? end;
  }
  const page = { epoch: from.epoch ?? "", head: end, entries };
  const taken = await takePage(context, aircraft, page, (row) => stepBack(row, from, start, entries), true);
  if (taken === null) throw new Error(CHANGED);
  return taken.row;
}

const CHANGED = "The server counts this record anew. Wait for the next exchange, then ask again.";

function stepBack(
  row: AircraftRow,
  from: AircraftRow,
  start: number,
  entries: readonly CheckedEntry[],
): AircraftRow | null {
  const { older, ...rest } = row;
  if (older === undefined || row.epoch !== from.epoch || older.wholeFrom !== from.older?.wholeFrom)
    return null;
  if (row.pulledTo === 0) return null;
  if (start === 0) return rest;
  const first = entries.find((entry) => "event" in entry);
  const since =
    first !== undefined && "event" in first
      ? { hlc: first.event.hlc, recordedAt: first.event.recordedAt }
      : older.since;
  return { ...rest, older: { ...older, wholeFrom: start + 1, since } };
}
