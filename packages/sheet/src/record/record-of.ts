import type { TimedFigure } from "@witnessmark/assess";
import type { Book } from "@witnessmark/book";
import { type AircraftState, bookInForce, type LedgerEvent, type LocalDate } from "@witnessmark/ledger";
import type { AircraftRecord, RecordLedger } from "./aircraft-record.ts";
import { dayOf, dayWords } from "./day-words.ts";
import { decisionsOf } from "./decision-record.ts";
import { discrepanciesOf } from "./discrepancy-record.ts";
import { counterName, countWords, type Names } from "./names.ts";
import type { RecordPeriod } from "./period.ts";
import { timedDoneOf, timedOf } from "./timed-record.ts";
import { walksOf } from "./walk-record.ts";
import { correctionsOf, writersOf } from "./writers.ts";

/** On every page of a record: it tells what was written down, and answers for nobody. */
export const RECORD_CAUTION =
  "The pilot in command decides. This record tells what was written down; the aircraft's own maintenance record, the approved manual, the rules where it is flown and licensed people come before it.";

export interface RecordRequest {
  /** As it stood at the end of the period, with later corrections heeded. */
  readonly state: AircraftState;
  /** The events that the state was folded from: who signed, who took back what. */
  readonly entries: readonly LedgerEvent[];
  /** The book in force then; without one, ids stand for names. */
  readonly book: Book | undefined;
  /** What runs out, as `assess` has it for that moment. */
  readonly timed: readonly TimedFigure[];
  readonly period: RecordPeriod;
  /** The day at whose end it stood so. */
  readonly standsOn: LocalDate;
  /** ISO 8601 with offset. */
  readonly madeAt: string;
  readonly ledger: RecordLedger;
}

function bookWords(state: AircraftState): string {
  const adopted = bookInForce(state);
  return adopted === undefined
    ? "No book was adopted"
    : `Revision ${adopted.revision}, adopted ${dayWords(dayOf(adopted.recordedAt))}, SHA-256 ${adopted.sha256}`;
}

/** What the aircraft's record says of a period. Judges nothing: it tells what is in the ledger, and what `assess` says. */
export function recordOf(request: RecordRequest): AircraftRecord {
  const { state, entries, book, period } = request;
  const names: Names = { book, state };
  const isIn = (at: string) => dayOf(at) >= period.from && dayOf(at) <= period.to;
  const signed = new Set(entries.flatMap(({ id, signature }) => (signature === undefined ? [] : [id])));
  const adopted = bookInForce(state);
  return {
    registration: adopted?.registration ?? state.aircraft,
    type: adopted?.type ?? "",
    period,
    standsOn: request.standsOn,
    madeAt: request.madeAt,
    book: bookWords(state),
    counters: [...state.counters.entries()].flatMap(([id, readings]) => {
      const last = readings.at(-1);
      if (last === undefined) return [];
      return [
        {
          name: counterName(id, names),
          says: `${countWords(id, last.shown, names)}, read ${dayWords(dayOf(last.at))}`,
        },
      ];
    }),
    ledger: request.ledger,
    discrepancies: discrepanciesOf(state, names, signed, request),
    timed: timedOf(request.timed),
    timedDone: timedDoneOf(state, names, signed, isIn),
    decisions: decisionsOf(
      state.decisions.filter(({ recordedAt }) => isIn(recordedAt)),
      names,
    ),
    walks: walksOf(state, names, isIn),
    corrections: correctionsOf(entries, isIn),
    writers: writersOf(entries, state, isIn),
    caution: RECORD_CAUTION,
    notice: book?.notice ?? "",
  };
}
