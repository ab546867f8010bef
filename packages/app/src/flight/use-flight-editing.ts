import type { Flight } from "@witnessmark/assess";
import { useCallback, useEffect, useMemo, useRef, useState } from "react";
import type { OpenAircraft } from "../frame/open-aircraft.ts";
import { canUndoFlight, setFlight, undoFlight } from "./flight-in-hand.ts";

/** Rested this long, the change goes to the rest of the app, which assesses everything anew. */
const PAUSE_ms = 350;
/** The same under a finger that is still down: it may move again, and all that is made anew would be in its way. */
const HELD_PAUSE_ms = 900;

export interface FlightEditing {
  /** As it stands on this screen now, a step ahead of what the rest of the app knows. */
  readonly flight: Flight | null;
  /** Shows it at once; the rest of the app hears of it after a pause. */
  change(next: Flight): void;
  /** The same for a finger that moves: the screen shows it already, and is made of it after the pause. */
  follow(next: Flight): void;
  /** A finger is on a slider: all that follows until `release` is one step for Undo. */
  hold(): void;
  release(): void;
  readonly held: boolean;
  readonly canUndo: boolean;
  undo(): void;
}

/**
 * The flight under the finger. Figures are worked out from it in the same frame, while the assessment of the whole
 * aircraft, which costs many frames on a slow phone, waits for a pause.
 */
export function useFlightEditing(open: OpenAircraft): FlightEditing {
  const { registration, state } = open;
  const [ahead, setAhead] = useState<Flight | null>(null);
  const [held, setHeld] = useState(false);
  const pending = useRef<Flight | null>(null);
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);
  const holding = useRef<"no" | "yes" | "stepped">("no");
  const stateNow = useRef(state);
  stateNow.current = state;

  const flush = useCallback(() => {
    clearTimeout(timer.current);
    const next = pending.current;
    if (next === null) return;
    pending.current = null;
    // the first writing of a hold is the step that Undo comes back to before
    setFlight(registration, stateNow.current, next, holding.current !== "stepped");
    if (holding.current === "yes") holding.current = "stepped";
    setAhead(null);
  }, [registration]);

  const change = useCallback(
    (next: Flight) => {
      pending.current = next;
      setAhead(next);
      clearTimeout(timer.current);
      timer.current = setTimeout(flush, PAUSE_ms);
    },
    [flush],
  );
  const follow = useCallback(
    (next: Flight) => {
      pending.current = next;
      clearTimeout(timer.current);
      timer.current = setTimeout(flush, HELD_PAUSE_ms);
    },
    [flush],
  );
  const hold = useCallback(() => {
    flush();
    holding.current = "yes";
    setHeld(true);
  }, [flush]);
  const release = useCallback(() => {
    flush();
    holding.current = "no";
    setHeld(false);
  }, [flush]);
  const undo = useCallback(() => {
    flush();
    undoFlight(registration, stateNow.current);
  }, [flush, registration]);

  // nothing that was said is lost when the page is left
  useEffect(() => {
    const left = () => document.visibilityState === "hidden" && flush();
    document.addEventListener("visibilitychange", left);
    return () => {
      document.removeEventListener("visibilitychange", left);
      flush();
    };
  }, [flush]);

  const flight = ahead ?? open.flight;
  const canUndo = ahead !== null || canUndoFlight(registration);
  return useMemo(
    () => ({ flight, change, follow, hold, release, held, canUndo, undo }),
    [flight, change, follow, hold, release, held, canUndo, undo],
  );
}
