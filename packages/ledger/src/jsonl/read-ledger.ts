import * as z from "zod/mini";
import { canonical } from "../canonical.ts";
import type { LedgerEvent } from "../event.ts";
import type { ClockRemark, LedgerFault } from "../fault.ts";
import { sha256 } from "../hash.ts";
import { parseEvent, saysOfFaults } from "../parse-event.ts";
import { verifyLedger } from "../verify/verify-ledger.ts";
import { LEDGER_FILE_VERSION, type LedgerFooter, type LedgerHeader } from "./write-ledger.ts";

export interface ReadLedger {
  /** `null` when the first line is none. */
  readonly header: LedgerHeader | null;
  /** Everything that is an event, in the order of the file, also when something is wrong with it. */
  readonly events: readonly LedgerEvent[];
  /** By line. Empty when the file is as it was written and every event as its device made it. */
  readonly faults: readonly LedgerFault[];
  readonly remarks: readonly ClockRemark[];
}

export interface ReadOptions {
  /** Now, milliseconds since 1970 UTC, to remark on stamps that lie in the future. */
  readonly now_ms?: number;
}

const Header = z.looseObject({
  witnessmark: z.literal("ledger"),
  version: z.number(),
  aircraft: z.string(),
  operator: z.string(),
  exportedAt: z.string(),
  events: z.number(),
});

const Footer = z.looseObject({
  end: z.literal(true),
  events: z.number(),
  header: z.string(),
  heads: z.record(z.string(), z.tuple([z.number(), z.string()])),
});

interface Line {
  readonly line: number;
  readonly text: string;
}

/**
 * Reads a ledger file and checks all of it: layout, every event, chain, signatures, and that nothing was cut off.
 * What can be read is returned whatever is wrong elsewhere.
 */
export async function readLedger(text: string, options: ReadOptions = {}): Promise<ReadLedger> {
  const lines = linesOf(text);
  const faults: LedgerFault[] = [];
  const header = readHeader(lines[0], faults);
  const footer = readFooter(lines.at(-1), faults);
  const middle = lines.slice(header === null ? 0 : 1, footer === null ? undefined : -1);
  const events: LedgerEvent[] = [];
  const eventLines: number[] = [];
  for (const line of middle) {
    if (header === null && line === lines[0] && !isEventLike(line.text)) continue;
    if (footer === null && line === lines.at(-1) && isFooterLike(line.text)) continue;
    const event = readEvent(line, faults);
    if (event === null) continue;
    events.push(event);
    eventLines.push(line.line);
  }
  if (header !== null) faults.push(...headerFaults(header, events, eventLines));
  if (footer !== null) {
    const footerLine = lines.at(-1)?.line ?? 1;
    const headerLine = header === null ? undefined : lines[0];
    faults.push(...(await footerFaults(footer, footerLine, headerLine, events)));
  }
  const report = await verifyLedger(events, { ...options, lines: eventLines });
  faults.push(...report.faults);
  return {
    header,
    events,
    faults: faults.sort((a, b) => (a.line ?? 0) - (b.line ?? 0)),
    remarks: report.remarks,
  };
}

/** Lines that say something, numbered from 1; a mark at the beginning and line ends of another system are no change. */
function linesOf(text: string): readonly Line[] {
  return text
    .replace(/^\uFEFF/, "")
    .split("\n")
    .map((line, at) => ({ line: at + 1, text: line.endsWith("\r") ? line.slice(0, -1) : line }))
    .filter((line) => line.text !== "");
}

/** For a first or last line that does not read: what was it meant to be? */
const isEventLike = (text: string): boolean => text.includes('"previousHash"');
const isFooterLike = (text: string): boolean => text.includes('"heads"') || text.startsWith('{"end"');

function readHeader(first: Line | undefined, faults: LedgerFault[]): LedgerHeader | null {
  const parsed = Header.safeParse(jsonOf(first?.text ?? ""));
  if (!parsed.success) {
    const says =
      'line 1 is no header: expected a ledger file, whose first line begins with {"witnessmark":"ledger"';
    faults.push({ code: "header-wrong", line: first?.line ?? 1, says });
    return null;
  }
  if (parsed.data.version !== LEDGER_FILE_VERSION) {
    const says = `the file is of version ${parsed.data.version}, expected ${LEDGER_FILE_VERSION}; read it with a newer Witnessmark`;
    faults.push({ code: "header-wrong", line: 1, says });
  }
  return parsed.data;
}

function readFooter(last: Line | undefined, faults: LedgerFault[]): LedgerFooter | null {
  const text = last?.text ?? "";
  const parsed = Footer.safeParse(jsonOf(text));
  if (parsed.success && JSON.stringify(parsed.data) === text) return parsed.data;
  const line = last?.line ?? 1;
  if (isFooterLike(text)) {
    const says = `line ${line}, the last, is damaged: expected {"end":true, the number of events, and each device's last`;
    faults.push({ code: "footer-wrong", line, says });
  } else {
    const says = `the file was cut short: line ${line} is its last, and it is not the closing line {"end":true …}; export it again`;
    faults.push({ code: "cut-short", line, says });
  }
  return null;
}

function jsonOf(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined; // the caller reports a line that does not read, with its number
  }
}

function readEvent({ line, text }: Line, faults: LedgerFault[]): LedgerEvent | null {
  const value = jsonOf(text);
  if (value === undefined) {
    const says = `line ${line} is not readable: expected an event as JSON, found ${JSON.stringify(text.slice(0, 60))}`;
    faults.push({ code: "line-unreadable", line, says });
    return null;
  }
  const parsed = parseEvent(value);
  if (!parsed.ok) {
    const says = `line ${line} is no event: ${saysOfFaults(parsed.faults)}`;
    faults.push({ code: "event-malformed", line, ...namesIn(value), says });
    return null;
  }
  if (canonical(parsed.event) !== text) {
    const says = `line ${line} is not written as this program writes it; a character was changed that its contents do not show, or another program wrote it`;
    faults.push({ code: "line-changed", line, ...namesIn(value), says });
  }
  return parsed.event;
}

/** The names of an event that is not one, as far as they can be read. */
function namesIn(value: unknown): Pick<LedgerFault, "event" | "device" | "deviceSeq"> {
  if (typeof value !== "object" || value === null) return {};
  const { id, device, deviceSeq } = value as Record<"id" | "device" | "deviceSeq", unknown>; // read as unknown, judged below
  return {
    ...(typeof id === "string" ? { event: id } : {}),
    ...(typeof device === "string" ? { device } : {}),
    ...(typeof deviceSeq === "number" ? { deviceSeq } : {}),
  };
}

function headerFaults(
  header: LedgerHeader,
  events: readonly LedgerEvent[],
  lines: readonly number[],
): readonly LedgerFault[] {
  const faults: LedgerFault[] = [];
  const wrong = (says: string) => faults.push({ code: "header-wrong", line: 1, says });
  if (header.events !== events.length) {
    wrong(`line 1 promises ${header.events} events, found ${events.length}`);
  }
  for (const [what, fieldOf] of [
    ["aircraft", (event: LedgerEvent) => event.aircraft],
    ["operator", (event: LedgerEvent) => event.operator],
  ] as const) {
    const at = events.findIndex((event) => fieldOf(event) !== header[what]);
    const event = events[at];
    if (event === undefined) continue;
    wrong(`line 1 says ${what} ${header[what]}, the event on line ${lines[at]} says ${fieldOf(event)}`);
  }
  return faults;
}

async function footerFaults(
  footer: LedgerFooter,
  footerLine: number,
  headerLine: Line | undefined,
  events: readonly LedgerEvent[],
): Promise<readonly LedgerFault[]> {
  const faults: LedgerFault[] = [];
  const wrong = (says: string) => faults.push({ code: "footer-wrong", line: footerLine, says });
  if (footer.events !== events.length) {
    wrong(`the closing line counts ${footer.events} events, found ${events.length}`);
  }
  if (headerLine !== undefined && (await sha256(headerLine.text)) !== footer.header) {
    const says = `line ${headerLine.line}, the header, is not the one that line ${footerLine}, the closing line, names: one of the two was changed`;
    faults.push({ code: "header-wrong", line: headerLine.line, says });
    wrong(says);
  }
  const heads = new Map<string, LedgerEvent>();
  for (const event of events) {
    const head = heads.get(event.device);
    if (head === undefined || event.deviceSeq > head.deviceSeq) heads.set(event.device, event);
  }
  for (const device of new Set([...heads.keys(), ...Object.keys(footer.heads)])) {
    const head = heads.get(device);
    const [seq, hash] = footer.heads[device] ?? [0, "none"];
    if (head?.deviceSeq === seq && head.hash === hash) continue;
    const found = head === undefined ? "none of it" : `event ${head.deviceSeq} with hash ${head.hash}`;
    wrong(`the last event of device ${device} should be ${seq} with hash ${hash}, found ${found}`);
  }
  return faults;
}
