import {
  type Flight,
  type Share,
  type Timeline,
  type Tips,
  timeline,
  tipsOfFlight,
} from "@witnessmark/assess";
import type { Book } from "@witnessmark/book";
import type { AircraftState } from "@witnessmark/ledger";
import { answerQuestions } from "../keep/ask-worker.ts";

interface Asked {
  readonly book: Book;
  readonly state: AircraftState;
  readonly flight: Flight | null;
  readonly now_ms: number;
}

/** How the answer turns in the next hours. */
export type HoursQuestion = Asked & { readonly what: "hours" };
/** Where the answer tips over, for some of the values. */
export type TipsQuestion = Asked & { readonly what: "tips"; readonly share: Share };

answerQuestions<HoursQuestion | TipsQuestion, Timeline | Tips>(async (asked) => {
  const { book, state, flight, now_ms } = asked;
  return asked.what === "hours"
    ? timeline(book, state, flight, now_ms)
    : tipsOfFlight(book, state, flight, now_ms, asked.share);
});
