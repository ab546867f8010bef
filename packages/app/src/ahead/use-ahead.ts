import { allTips, type Timeline, type Tips } from "@witnessmark/assess";
import { useEffect, useState } from "react";
import type { OpenAircraft } from "../frame/open-aircraft.ts";
import { askWorker } from "../keep/ask-worker.ts";
import type { HoursQuestion, TipsQuestion } from "./ahead-worker.ts";

/** What lies ahead of an answer: how it turns with time, and where it tips over. */
export interface Ahead {
  readonly timeline: Timeline;
  readonly tips: Tips;
}

/** Worked out when nothing has changed for this long: a finger that still moves asks for nothing. */
const REST_ms = 400;
/** One that has answered before answers several times as fast: it is kept while a flight is being looked at. */
const IDLE_ms = 120_000;

const AHEAD_WORKER = {
  start: () => new Worker(new URL("./ahead-worker.ts", import.meta.url), { type: "module" }),
  broke: (detail: string) => new Error(detail || "it could not be started"),
  failed: ({ name, message }: { readonly name: string; readonly message: string }) =>
    new Error(`${name}: ${message}`),
  idle_ms: IDLE_ms,
};

const askHours = askWorker<HoursQuestion, Timeline>(AHEAD_WORKER);
/** Where an answer tips over takes twice as long as how it turns: two look for it, each at half of the values. */
const askTips = [0, 1].map(() => askWorker<TipsQuestion, Tips>(AHEAD_WORKER));

async function askAhead(
  { book, state, flight }: Pick<OpenAircraft, "book" | "state" | "flight">,
  now_ms: number,
): Promise<Ahead> {
  const asked = { book, state, flight, now_ms };
  const tips = askTips.map((ask, part) =>
    ask({ ...asked, what: "tips", share: { part, of: askTips.length } }),
  );
  const [turns, ...found] = await Promise.all([askHours({ ...asked, what: "hours" }), ...tips]);
  return { timeline: turns, tips: allTips(found) };
}

/** What the workers are at: each answers one after another, so that what nobody waits for any more is not asked behind it. */
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
      const asked = askAhead({ book, state, flight }, now_ms);
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
