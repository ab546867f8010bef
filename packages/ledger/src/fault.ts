import type { LedgerEvent } from "./event.ts";

/** What can be wrong with a ledger: somebody changed it, lost part of it, or mixed it with another. */
export type FaultCode =
  /** Its contents are not those that were hashed. */
  | "hash-wrong"
  /** It does not follow the event that it says it follows. */
  | "chain-broken"
  | "number-missing"
  | "number-twice"
  /** One number of one device, two different events: the device went on from an old copy of itself. */
  | "fork"
  | "id-twice"
  | "signature-wrong"
  | "signature-missing"
  /** There is a signature and no key to judge it by. */
  | "key-unknown"
  /** A device whose first event does not introduce it. */
  | "device-unknown"
  | "aircraft-foreign"
  | "operator-foreign"
  /** Of a file only: a line that is no JSON, no event, or not written as this program writes it. */
  | "line-unreadable"
  | "event-malformed"
  | "line-changed"
  | "header-wrong"
  | "footer-wrong"
  | "cut-short";

/** What is odd about a clock. Recorded and shown; never a reason to refuse an event. */
export type RemarkCode = "clock-apart" | "clock-back" | "clock-wrong" | "stamp-back" | "far-future";

/** The event it is about, where there is one; in a run of events, the first. */
export interface Named {
  readonly event?: string;
  readonly device?: string;
  readonly deviceSeq?: number;
  /** Line of the file, from 1, when it came from one. */
  readonly line?: number;
}

export interface LedgerFault extends Named {
  readonly code: FaultCode;
  /** One sentence that names what, where, what was expected and what was found. */
  readonly says: string;
}

export interface ClockRemark extends Named {
  readonly code: RemarkCode;
  readonly says: string;
  /** The last deviceSeq of the run; the same as `deviceSeq` for one event. */
  readonly toSeq: number;
}

export const nameOf = (event: LedgerEvent, line: number | undefined): Named => ({
  event: event.id,
  device: event.device,
  deviceSeq: event.deviceSeq,
  ...(line === undefined ? {} : { line }),
});

/** `event 5 of device 0190… (0190…)`: enough to find it by any of its names. */
export const spoken = (event: LedgerEvent): string =>
  `event ${event.deviceSeq} of device ${event.device} (${event.type}, ${event.id})`;
