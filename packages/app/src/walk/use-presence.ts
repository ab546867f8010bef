import { useEffect, useRef } from "react";
import type { Keep } from "../keep/contract.ts";
import { isoWithOffset } from "../words/dates.ts";
import { awaySince, lastSeen, leaving, type Presence } from "./presence.ts";

const BEAT_ms = 15_000;

/**
 * Watches that someone is at a walk. A screen that was left for minutes (put away, switched off, killed) comes back
 * with the last three looks asked again; what it says is kept in the ledger.
 */
export function usePresence(keep: Keep, registration: string, walk: string | undefined): void {
  const telling = useRef(false);
  useEffect(() => {
    if (walk === undefined) return;
    const here = (): Presence => ({ registration, walk, at_ms: Date.now() });
    const beat = () => {
      if (document.visibilityState === "visible" && leaving.get() === null) lastSeen.set(here());
    };
    const back = async () => {
      if (document.visibilityState !== "visible" || telling.current || leaving.get() !== null) return;
      const seen = lastSeen.get();
      const away = seen?.walk === walk ? awaySince(seen, Date.now()) : null;
      if (away === null) {
        beat();
        return;
      }
      telling.current = true;
      try {
        await keep.append(registration, [
          {
            type: "walk.interrupted",
            body: {
              walk,
              cause: "away",
              left: isoWithOffset(away.at_ms),
              back: isoWithOffset(Date.now()),
            },
          },
        ]);
        lastSeen.set(here());
      } finally {
        telling.current = false;
      }
    };
    const onVisibility = () => {
      if (document.visibilityState === "hidden") lastSeen.set(here());
      else void back();
    };
    void back();
    const timer = setInterval(beat, BEAT_ms);
    document.addEventListener("visibilitychange", onVisibility);
    return () => {
      clearInterval(timer);
      document.removeEventListener("visibilitychange", onVisibility);
    };
  }, [keep, registration, walk]);
}
