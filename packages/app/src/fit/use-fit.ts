import type { FitInput } from "@witnessmark/fit";
import { useEffect, useState } from "react";
import type { FitAnswer, FitRequest } from "./fit-worker.ts";
import type { WhatFits } from "./what-fits.ts";

/** Asked when nothing has changed for this long. */
const REST_ms = 500;

export type FitState =
  | { readonly kind: "unknown" }
  | { readonly kind: "working" }
  | { readonly kind: "known"; readonly fits: WhatFits }
  | { readonly kind: "failed"; readonly why: string };

/**
 * What still fits, worked out away from the screen. A solve cannot be interrupted from outside, so a load that changes
 * meanwhile ends its worker and starts another.
 *
 * @param places stations that are asked about
 */
export function useFit(input: FitInput | null, places: readonly string[]): FitState {
  const [found, setFound] = useState<FitState>({ kind: "unknown" });
  const asked = input === null ? null : JSON.stringify({ input, places } satisfies FitRequest);
  useEffect(() => {
    if (asked === null) {
      setFound({ kind: "unknown" });
      return;
    }
    let worker: Worker | null = null;
    setFound({ kind: "working" });
    const timer = setTimeout(() => {
      worker = new Worker(new URL("./fit-worker.ts", import.meta.url), { type: "module" });
      worker.addEventListener("message", ({ data }: MessageEvent<FitAnswer>) =>
        setFound("fits" in data ? { kind: "known", fits: data.fits } : { kind: "failed", why: data.failure }),
      );
      worker.addEventListener("error", (event) =>
        setFound({ kind: "failed", why: event.message || "it could not be started" }),
      );
      worker.postMessage(JSON.parse(asked));
    }, REST_ms);
    return () => {
      clearTimeout(timer);
      worker?.terminate();
    };
  }, [asked]);
  return found;
}
