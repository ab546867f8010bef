import { type FitInput, openFit } from "@witnessmark/fit";
import wasm from "highs/runtime?url";
import type { WhatFits } from "./what-fits.ts";

export interface FitRequest {
  readonly input: FitInput;
  readonly places: readonly string[];
}
export type FitAnswer = { readonly fits: WhatFits } | { readonly failure: string };

const fit = openFit({ url: wasm });
/** A slow phone takes ten times as long as a desk; who changes the load meanwhile is not kept waiting by it. */
const PATIENCE = { limit_s: 30 } as const;

async function answer({ input, places }: FitRequest): Promise<WhatFits> {
  const breaches = fit.breaches(input);
  if (breaches.length > 0) {
    return { kind: "broken", breaches, arrangement: await fit.arrange(input, PATIENCE) };
  }
  return {
    kind: "within",
    fuel: fit.mostFuel(input),
    places: await fit.mostBags(input, places, PATIENCE),
  };
}

addEventListener("message", ({ data }: MessageEvent<FitRequest>) => {
  answer(data).then(
    (fits) => postMessage({ fits } satisfies FitAnswer),
    (error: unknown) => {
      const failure = error instanceof Error ? error.message : String(error);
      postMessage({ failure } satisfies FitAnswer);
    },
  );
});
