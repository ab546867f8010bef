import { type Flight, type Timeline, type TippingPoint, timeline, tippingPoints } from "@witnessmark/assess";
import type { Book } from "@witnessmark/book";
import type { AircraftState } from "@witnessmark/ledger";

export interface AheadRequest {
  readonly request: number;
  readonly book: Book;
  readonly state: AircraftState;
  readonly flight: Flight | null;
  readonly now_ms: number;
}

/** What lies ahead of an answer: how it turns with time, and where it tips over. */
export interface Ahead {
  readonly at_ms: number;
  readonly timeline: Timeline;
  readonly tips: readonly TippingPoint[];
}

export type AheadAnswer = { readonly request: number } & (
  | { readonly ahead: Ahead }
  | { readonly failure: string }
);

addEventListener("message", ({ data }: MessageEvent<AheadRequest>) => {
  const { request, book, state, flight, now_ms } = data;
  try {
    const ahead: Ahead = {
      at_ms: now_ms,
      timeline: timeline(book, state, flight, now_ms),
      tips: tippingPoints(book, state, flight, now_ms),
    };
    postMessage({ request, ahead } satisfies AheadAnswer);
  } catch (error) {
    const failure = error instanceof Error ? `${error.name}: ${error.message}` : String(error);
    postMessage({ request, failure } satisfies AheadAnswer);
  }
});
