import { canonical } from "../canonical.ts";
import type { LedgerEvent } from "../event.ts";
import { sha256 } from "../hash.ts";

/** The version of the file's layout; not of the events in it. */
export const LEDGER_FILE_VERSION = 1;

export interface LedgerFileAbout {
  readonly aircraft: string;
  readonly operator: string;
  /** ISO 8601 with offset. */
  readonly exportedAt: string;
}

/** The first line of a ledger file. */
export interface LedgerHeader extends LedgerFileAbout {
  readonly witnessmark: "ledger";
  readonly version: number;
  readonly events: number;
}

/** The last line: without it the file was cut short. */
export interface LedgerFooter {
  readonly end: true;
  readonly events: number;
  /** SHA-256 of the header's line, which no event covers. */
  readonly header: string;
  /** The last deviceSeq of each device and that event's hash. */
  readonly heads: Readonly<Record<string, readonly [number, string]>>;
}

/**
 * A ledger as JSON Lines, line by line and without line ends: a header, each event as canonical JSON, a footer. Photos
 * are in it by their SHA-256 only.
 *
 * @param count how many events will come; the header says it before they do
 * @throws {Error} when another number of events came
 */
export async function* ledgerLines(
  about: LedgerFileAbout,
  count: number,
  events: Iterable<LedgerEvent> | AsyncIterable<LedgerEvent>,
): AsyncGenerator<string, void, undefined> {
  const header: LedgerHeader = {
    witnessmark: "ledger",
    version: LEDGER_FILE_VERSION,
    aircraft: about.aircraft,
    operator: about.operator,
    exportedAt: about.exportedAt,
    events: count,
  };
  const headerLine = JSON.stringify(header);
  yield headerLine;
  const heads = new Map<string, readonly [number, string]>();
  let written = 0;
  for await (const event of events) {
    yield canonical(event);
    written += 1;
    const head = heads.get(event.device);
    if (head === undefined || event.deviceSeq > head[0])
      heads.set(event.device, [event.deviceSeq, event.hash]);
  }
  if (written !== count) {
    throw new Error(
      `ledger file: expected ${count} events of ${about.aircraft}, received ${written}; start the export again`,
    );
  }
  const footer: LedgerFooter = {
    end: true,
    events: written,
    header: await sha256(headerLine),
    heads: Object.fromEntries([...heads].sort(([a], [b]) => (a < b ? -1 : 1))),
  };
  yield JSON.stringify(footer);
}

/** The whole file as one text, each line ended. */
export async function writeLedger(about: LedgerFileAbout, events: readonly LedgerEvent[]): Promise<string> {
  const lines: string[] = [];
  for await (const line of ledgerLines(about, events.length, events)) lines.push(line);
  return `${lines.join("\n")}\n`;
}
