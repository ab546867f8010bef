import { localDayOf, timedFigures } from "@witnessmark/assess";
import { type Book, readBook } from "@witnessmark/book";
import { dayNumber } from "@witnessmark/engine";
import {
  bookInForce,
  compareEvents,
  fold,
  type LedgerEvent,
  type LedgerFault,
  type LocalDate,
  sha256,
  verifyLedger,
  wallTime,
  writeLedger,
} from "@witnessmark/ledger";
import { offset_min } from "../local-time.ts";
import type { AircraftRecord, RecordLedger } from "./aircraft-record.ts";
import { dayOf } from "./day-words.ts";
import { type PeriodResult, periodOf, type RecordPeriod } from "./period.ts";
import { recordOf } from "./record-of.ts";

const DAY_MS = 86_400_000;
const MIN_MS = 60_000;

export type RecordResult =
  | {
      readonly ok: true;
      readonly record: AircraftRecord;
      /** The whole ledger as JSON Lines: the file that the record names, and that its PDF carries. */
      readonly ledgerText: string;
    }
  | { readonly ok: false; readonly why: "no-events"; readonly says: string }
  | ({ readonly why: "bad-period" } & Extract<PeriodResult, { readonly ok: false }>);

export const SOUND = "Every hash, every device's chain and every signature in it was checked, and holds.";

export const ledgerFileName = (aircraft: string): string => `${aircraft.replaceAll(/[^\w-]/g, "_")}.jsonl`;

async function attached(
  events: readonly LedgerEvent[],
  first: LedgerEvent,
  exportedAt: string,
  asRead: readonly LedgerFault[],
): Promise<{ readonly ledger: RecordLedger; readonly text: string }> {
  const { aircraft, operator } = first;
  const text = await writeLedger({ aircraft, operator, exportedAt }, events);
  // a fault found while reading is not found again in what was read: a file that was cut short ends well here
  const faults = [...asRead, ...(await verifyLedger(events)).faults];
  const sound = faults.length === 0;
  const [worst] = faults;
  const says = sound
    ? SOUND
    : `It does not hold: ${faults.length} ${faults.length === 1 ? "fault" : "faults"}; the first: ${worst?.says ?? ""}.`;
  return {
    text,
    ledger: {
      file: ledgerFileName(aircraft),
      sha256: await sha256(text),
      events: events.length,
      devices: new Set(events.map(({ device }) => device)).size,
      isSound: sound,
      says,
    },
  };
}

/** What was known by the end of a day; what was taken back later counts as taken back. */
const upTo = (events: readonly LedgerEvent[], day: LocalDate): readonly LedgerEvent[] =>
  events.filter(({ recordedAt, type }) => dayOf(recordedAt) <= day || type === "event.withdrawn");

async function bookOf(text: string | undefined): Promise<Book | undefined> {
  if (text === undefined) return undefined;
  const result = await readBook(text, "the book in the ledger");
  return result.ok ? result.book : undefined;
}

/**
 * The record of an aircraft for a period, out of nothing but its ledger.
 *
 * @param events all events of the aircraft, in any order
 */
export async function recordOfLedger(
  events: readonly LedgerEvent[],
  given: {
    readonly from?: LocalDate | undefined;
    readonly to?: LocalDate | undefined;
    /** Now, milliseconds since 1970 UTC. */
    readonly now_ms: number;
    /** What was wrong with the file that the events were read from. */
    readonly faults?: readonly LedgerFault[];
  },
): Promise<RecordResult> {
  const ordered = events.toSorted(compareEvents);
  const [first] = ordered;
  const last = ordered.at(-1);
  if (first === undefined || last === undefined)
    return { ok: false, why: "no-events", says: "There are no events in this ledger" };
  const begin = ordered.map(({ recordedAt }) => dayOf(recordedAt)).sort()[0];
  const asked = frameOf({ last, begin }, given);
  if (!asked.ok) return { ...asked, why: "bad-period" };
  const { frame } = asked;
  const { ledger, text } = await attached(ordered, first, frame.madeAt, given.faults ?? []);
  return { ok: true, record: await recordIn(frame, ordered, ledger), ledgerText: text };
}

/** The period that a record is asked for, and the moment that it stands for. */
export interface RecordFrame {
  readonly period: RecordPeriod;
  readonly standsOn: LocalDate;
  readonly madeAt: string;
  readonly clock: Parameters<typeof timedFigures>[0]["clock"];
}

/** @param ledger its last event in ledger order, and the first day on which anything was written */
export function frameOf(
  { last, begin }: { readonly last: LedgerEvent; readonly begin: LocalDate | undefined },
  given: {
    readonly from?: LocalDate | undefined;
    readonly to?: LocalDate | undefined;
    readonly now_ms: number;
  },
): { readonly ok: true; readonly frame: RecordFrame } | Extract<PeriodResult, { readonly ok: false }> {
  const east_min = offset_min(last.recordedAt);
  const today = localDayOf(given.now_ms, east_min);
  const asked = periodOf(given, { from: begin ?? today, to: today });
  if (!asked.ok) return asked;
  const { period } = asked;
  const standsOn = [period.to, today].toSorted()[0] ?? today;
  const endOfDay_ms = (dayNumber(standsOn) + 1) * DAY_MS - east_min * MIN_MS - 1;
  const clock = { now_ms: Math.min(given.now_ms, endOfDay_ms), offset_min: east_min };
  return { ok: true, frame: { period, standsOn, madeAt: wallTime(given.now_ms, east_min), clock } };
}

/**
 * What the record says.
 *
 * @param ordered in ledger order: every event, or of a long ledger those that the record of this period rests on
 */
export async function recordIn(
  { period, standsOn, madeAt, clock }: RecordFrame,
  ordered: readonly LedgerEvent[],
  ledger: RecordLedger,
): Promise<AircraftRecord> {
  const entries = upTo(ordered, period.to);
  const state = fold(entries);
  // before the first book there is a later one at least for the names
  const inForce = bookInForce(state);
  const book = await bookOf((inForce ?? bookInForce(fold(ordered)))?.text);
  const timed =
    book === undefined || inForce === undefined
      ? []
      : timedFigures({ book, state, flight: null, clock, pilot: undefined });
  return recordOf({ state, entries, book, timed, period, standsOn, madeAt, ledger });
}
