import type { FitInput, Way } from "@witnessmark/fit";
import { useCallback, useEffect, useRef, useState } from "react";
import type { FitAnswer, FitRequest } from "./fit-worker.ts";
import type { WhatFits } from "./what-fits.ts";

/** Asked when nothing has changed for this long. */
const REST_ms = 500;

/** The ways of moving things that are known, and whether there is another. */
export interface KnownWays {
  readonly ways: readonly Way[];
  readonly more: "not asked" | "asked" | "none";
}

export type FitState =
  | { readonly kind: "unknown" }
  | { readonly kind: "working" }
  | ({ readonly kind: "known"; readonly fits: WhatFits } & KnownWays)
  | { readonly kind: "failed"; readonly why: string };

interface Fitting {
  readonly found: FitState;
  /** Asks for one more way of moving things. */
  readonly askAnother: () => void;
}

const waysOf = (fits: WhatFits): readonly Way[] =>
  fits.kind === "broken" && fits.arrangement.status === "found" ? [fits.arrangement] : [];

/** What is known once another answer has come. */
function after(was: FitState, answer: FitAnswer): FitState {
  if ("failure" in answer) return { kind: "failed", why: answer.failure };
  if ("fits" in answer)
    return { kind: "known", fits: answer.fits, ways: waysOf(answer.fits), more: "not asked" };
  if (was.kind !== "known") return was;
  return answer.another === null
    ? { ...was, more: "none" }
    : { ...was, ways: [...was.ways, answer.another], more: "not asked" };
}

/**
 * What still fits, worked out away from the screen. A solve cannot be interrupted from outside, so a load that changes
 * meanwhile ends its worker and starts another.
 *
 * @param places stations that are asked about
 */
export function useFit(input: FitInput | null, places: readonly string[]): Fitting {
  const [found, setFound] = useState<FitState>({ kind: "unknown" });
  const worker = useRef<Worker | null>(null);
  const asked =
    input === null ? null : JSON.stringify({ ask: "what fits", input, places } satisfies FitRequest);
  useEffect(() => {
    if (asked === null) {
      setFound({ kind: "unknown" });
      return;
    }
    setFound({ kind: "working" });
    const timer = setTimeout(() => {
      const begun = new Worker(new URL("./fit-worker.ts", import.meta.url), { type: "module" });
      worker.current = begun;
      begun.addEventListener("message", ({ data }: MessageEvent<FitAnswer>) =>
        setFound((was) => after(was, data)),
      );
      begun.addEventListener("error", (event) =>
        setFound({ kind: "failed", why: event.message || "it could not be started" }),
      );
      begun.postMessage(JSON.parse(asked));
    }, REST_ms);
    return () => {
      clearTimeout(timer);
      worker.current?.terminate();
      worker.current = null;
    };
  }, [asked]);
  const askAnother = useCallback(() => {
    if (found.kind !== "known" || found.more !== "not asked" || input === null) return;
    setFound({ ...found, more: "asked" });
    worker.current?.postMessage({
      ask: "another way",
      input,
      earlier: found.ways,
    } satisfies FitRequest);
  }, [found, input]);
  return { found, askAnother };
}
