import type { Book, WalkKind } from "@witnessmark/book";
import { orderedStops, planOrder } from "@witnessmark/planner";
import type { ProofTold } from "./use-proof.ts";

/** What this phone may spend while it rests: rounds of search, states of proof. */
const ROUNDS = 200;
const STATES = 150_000;
const TELL_EVERY_ms = 200;

interface ProofQuestion {
  readonly book: Book;
  readonly kind: WalkKind;
}

const tell = (told: ProofTold): void => postMessage(told);

// it is ended from outside, with the worker: nothing else can be heard while it searches
addEventListener("message", ({ data: { book, kind } }: MessageEvent<ProofQuestion>) => {
  let told_ms = performance.now();
  const found = planOrder(book, kind, {
    rounds: ROUNDS,
    proofStates: STATES,
    target_1: 0,
    onProgress: ({ best_s, bound_s }) => {
      if (performance.now() - told_ms > TELL_EVERY_ms) {
        told_ms = performance.now();
        tell({ isDone: false, best_s, bound_s, stops: [] });
      }
      return false;
    },
  });
  tell({ isDone: true, best_s: found.cost_s, bound_s: found.bound_s, stops: orderedStops(found.stops) });
});
