import { useEffect, useState } from "react";
import type { OpenAircraft } from "../frame/open-aircraft.ts";
import type { Ahead, AheadAnswer, AheadRequest } from "./ahead-worker.ts";

/** Worked out when nothing has changed for this long: a finger that still moves asks for nothing. */
const REST_ms = 400;

export type AheadState =
  | { readonly kind: "working" }
  | { readonly kind: "known"; readonly ahead: Ahead }
  | { readonly kind: "failed"; readonly why: string };

/** What lies ahead of the answer that is on the screen, worked out away from it. */
export function useAhead({ book, state, flight }: OpenAircraft, minute: number): AheadState {
  const [found, setFound] = useState<AheadState>({ kind: "working" });
  useEffect(() => {
    let worker: Worker | null = null;
    setFound({ kind: "working" });
    const timer = setTimeout(() => {
      worker = new Worker(new URL("./ahead-worker.ts", import.meta.url), { type: "module" });
      worker.addEventListener("message", ({ data }: MessageEvent<AheadAnswer>) =>
        setFound(
          "ahead" in data ? { kind: "known", ahead: data.ahead } : { kind: "failed", why: data.failure },
        ),
      );
      worker.addEventListener("error", (event) =>
        setFound({ kind: "failed", why: event.message || "it could not be started" }),
      );
      const now_ms = Math.max(Date.now(), minute * 60_000);
      worker.postMessage({ request: 1, book, state, flight, now_ms } satisfies AheadRequest);
    }, REST_ms);
    return () => {
      clearTimeout(timer);
      worker?.terminate();
    };
  }, [book, state, flight, minute]);
  return found;
}
