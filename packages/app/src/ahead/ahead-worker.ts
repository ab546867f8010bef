import { type Flight, type Timeline, type Tips, timeline, tipsOfFlight } from "@witnessmark/assess";
import type { Book } from "@witnessmark/book";
import type { AircraftState } from "@witnessmark/ledger";
import { answerQuestions } from "../keep/ask-worker.ts";

export interface AheadQuestion {
  readonly book: Book;
  readonly state: AircraftState;
  readonly flight: Flight | null;
  readonly now_ms: number;
}

/** What lies ahead of an answer: how it turns with time, and where it tips over. */
export interface Ahead {
  readonly at_ms: number;
  readonly timeline: Timeline;
  readonly tips: Tips;
}

answerQuestions<AheadQuestion, Ahead>(async ({ book, state, flight, now_ms }) => ({
  at_ms: now_ms,
  timeline: timeline(book, state, flight, now_ms),
  tips: tipsOfFlight(book, state, flight, now_ms),
}));
