import { hashOfEvent, type LedgerEvent, parseEvent, saysOfFaults } from "@witnessmark/ledger";
import type { NeededAnswer, PullAnswer } from "@witnessmark/server/client";

/** One place of the server's ledger: its event, or why what came is none of this aircraft's. */
export type CheckedEntry = { readonly ledgerSeq: number } & (
  | { readonly event: LedgerEvent }
  | { readonly fault: string; readonly value: unknown }
);

/** A page of the server's ledger, read and held against its hashes. */
export interface CheckedPage {
  readonly epoch: string;
  readonly head: number;
  readonly entries: readonly CheckedEntry[];
}

/** A page of what is needed of a long ledger: see `NeededAnswer` of the server's protocol. */
export interface CheckedNeeded extends CheckedPage, Pick<NeededAnswer, "upTo" | "to" | "wholeFrom"> {}

export async function checkNeeded(aircraft: string, answer: NeededAnswer): Promise<CheckedNeeded> {
  const { upTo, to, wholeFrom } = answer;
  return { ...(await checkPage(aircraft, answer)), upTo, to, wholeFrom };
}

/** What does not read or does not match its hash is told beside the rest, and does not hold it up. */
export async function checkPage(aircraft: string, { epoch, head, events }: PullAnswer): Promise<CheckedPage> {
  const entries: CheckedEntry[] = [];
  for (const entry of events) entries.push(await checkEntry(aircraft, entry));
  return { epoch, head, entries };
}

async function checkEntry(
  aircraft: string,
  { ledgerSeq, event: value }: PullAnswer["events"][number],
): Promise<CheckedEntry> {
  const parsed = parseEvent(value);
  if (!parsed.ok) return { ledgerSeq, fault: saysOfFaults(parsed.faults), value };
  const { event } = parsed;
  if (event.aircraft !== aircraft) return { ledgerSeq, fault: `it is of aircraft ${event.aircraft}`, value };
  if ((await hashOfEvent(event)) !== event.hash) {
    return { ledgerSeq, fault: "its contents do not match its hash", value };
  }
  return { ledgerSeq, event };
}
