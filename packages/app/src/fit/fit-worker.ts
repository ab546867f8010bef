import {
  type Arrangement,
  type FitInput,
  type NotAnswered,
  type OtherWays,
  openFit,
  type Way,
} from "@witnessmark/fit";
import wasm from "highs/runtime?url";
import { inWholeSteps } from "./in-whole-steps.ts";
import type { WhatFits } from "./what-fits.ts";

export type FitRequest =
  | { readonly ask: "what fits"; readonly input: FitInput; readonly places: readonly string[] }
  | { readonly ask: "another way"; readonly input: FitInput; readonly earlier: readonly Way[] };

export type FitAnswer =
  | { readonly fits: WhatFits }
  /** `null` where there is no other, or none was found in time. */
  | { readonly another: Way | null }
  | { readonly failure: string };

const fit = openFit({ url: wasm });
/** A slow phone takes ten times as long as a desk; who changes the load meanwhile is not kept waiting by it. */
const PATIENCE = { limit_s: 30 } as const;

async function whatFits(input: FitInput, places: readonly string[]): Promise<WhatFits> {
  const breaches = fit.breaches(input);
  if (breaches.length > 0) {
    const arrangement = await fit.arrange(input, PATIENCE);
    return { kind: "broken", breaches, arrangement, others: await othersThan(arrangement, input) };
  }
  return {
    kind: "within",
    fuel: fit.mostFuel(input),
    places: await fit.mostBags(input, places, PATIENCE),
  };
}

/** The ways that are no moving about: where moving helps, with nothing moved. */
async function othersThan(arrangement: Arrangement | NotAnswered, input: FitInput): Promise<OtherWays> {
  const unmoved = await fit.otherWays(input, PATIENCE);
  const { lessFuel, ...rest }: OtherWays = {
    ...("status" in unmoved ? {} : unmoved),
    ...(arrangement.status === "none" ? arrangement.lastResort : {}),
  };
  // where the rules' reserve is not known, nobody is told to take less
  if (lessFuel === undefined || input.burn.reserve_kg === undefined) return rest;
  return { ...rest, lessFuel: inWholeSteps(lessFuel, input, fit.breaches) };
}

async function answer(request: FitRequest): Promise<FitAnswer> {
  const { input } = request;
  if (request.ask === "what fits") return { fits: await whatFits(input, request.places) };
  const another = await fit.arrangeOtherwise(input, request.earlier, PATIENCE);
  return { another: another?.status === "found" ? another : null };
}

addEventListener("message", ({ data }: MessageEvent<FitRequest>) => {
  answer(data).then(postMessage, (error: unknown) => {
    const failure = error instanceof Error ? error.message : String(error);
    postMessage({ failure } satisfies FitAnswer);
  });
});
