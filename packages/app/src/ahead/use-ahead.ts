import { useEffect, useState } from "react";
import type { OpenAircraft } from "../frame/open-aircraft.ts";
import { askWorker } from "../keep/ask-worker.ts";
import type { Ahead, AheadQuestion } from "./ahead-worker.ts";

/** Worked out when nothing has changed for this long: a finger that still moves asks for nothing. */
const REST_ms = 400;
/** One that has answered before answers several times as fast: it is kept while a flight is being looked at. */
const IDLE_ms = 120_000;

const askAhead = askWorker<AheadQuestion, Ahead>({
  start: () => new Worker(new URL("./ahead-worker.ts", import.meta.url), { type: "module" }),
  broke: (detail) => new Error(detail || "it could not be started"),
  failed: ({ name, message }) => new Error(`${name}: ${message}`),
  idle_ms: IDLE_ms,
});

/** What the worker is at: it answers one after another, so that what nobody waits for any more is not asked behind it. */
let underWay: Promise<unknown> = Promise.resolve();

export type AheadState =
  | { readonly kind: "working" }
  | { readonly kind: "known"; readonly ahead: Ahead }
  | { readonly kind: "failed"; readonly why: string };

/** What lies ahead of the answer that is on the screen, worked out away from it. */
export function useAhead({ book, state, flight }: OpenAircraft, minute: number): AheadState {
  const [found, setFound] = useState<AheadState>({ kind: "working" });
  useEffect(() => {
    let isCurrent = true;
    const show = (next: AheadState): void => {
      if (isCurrent) setFound(next);
    };
    setFound({ kind: "working" });
    const timer = setTimeout(async () => {
      await underWay;
      if (!isCurrent) return;
      const now_ms = Math.max(Date.now(), minute * 60_000);
      const asked = askAhead({ book, state, flight, now_ms });
      underWay = asked.catch(() => undefined); // told below
      await asked.then(
        (ahead) => show({ kind: "known", ahead }),
        (error: unknown) =>
          show({ kind: "failed", why: error instanceof Error ? error.message : String(error) }),
      );
    }, REST_ms);
    return () => {
      isCurrent = false;
      clearTimeout(timer);
    };
  }, [book, state, flight, minute]);
  return found;
}
