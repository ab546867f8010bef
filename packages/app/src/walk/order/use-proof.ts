import type { Book, WalkKind } from "@witnessmark/book";
import type { OrderedStop } from "@witnessmark/planner";
import { useEffect, useState } from "react";

/** What is known of the best order for a walk, so far. */
export interface ProofTold {
  readonly isDone: boolean;
  /** The least that was found, seconds of walking. */
  readonly best_s: number;
  /** No order takes less. */
  readonly bound_s: number;
  /** The best that was found; empty until it is done. */
  readonly stops: readonly OrderedStop[];
}

/** Begins when the screen has rested for this long. */
const REST_ms = 600;

/**
 * Looks, while the phone rests on this screen, for a better order and for how good the best can be. It is cancelled by
 * leaving the screen. What it finds is offered and never taken by itself: how far it comes depends on the phone.
 */
export function useProof(book: Book, kind: WalkKind, isWanted: boolean): ProofTold | null {
  const [told, setTold] = useState<ProofTold | null>(null);
  useEffect(() => {
    setTold(null);
    if (!isWanted) return;
    let worker: Worker | undefined;
    const timer = setTimeout(() => {
      worker = new Worker(new URL("./prove-worker.ts", import.meta.url), { type: "module" });
      worker.addEventListener("message", ({ data }: MessageEvent<ProofTold>) => {
        setTold(data);
        if (data.isDone) worker?.terminate();
      });
      worker.postMessage({ book, kind });
    }, REST_ms);
    return () => {
      clearTimeout(timer);
      worker?.terminate();
    };
  }, [book, kind, isWanted]);
  return told;
}
