import type { AircraftState } from "@witnessmark/ledger";
import { useEffect, useState } from "react";
import type { Keep } from "../keep/contract.ts";
import { keepFlight, useUnkept } from "./flight-in-hand.ts";

/** Rested this long, a person is taken to have said what they wanted to say. */
const REST_ms = 2_000;

/**
 * Keeps the flight in hand in the ledger when nothing was changed for a moment, and when the page is left.
 *
 * @returns why it was not kept, or `null`; what was changed stays on this screen until it is
 */
export function useFlightKeeping(
  keep: Keep,
  registration: string,
  state: AircraftState,
  flight: unknown,
): string | null {
  const unkept = useUnkept(registration);
  const [trouble, setTrouble] = useState<string | null>(null);
  // each change of the flight begins the rest anew
  // biome-ignore lint/correctness/useExhaustiveDependencies: the flight is what the rest is counted from
  useEffect(() => {
    if (!unkept) return;
    const keepIt = () => {
      keepFlight(keep, registration, state).then(
        () => setTrouble(null),
        (error: unknown) => setTrouble(error instanceof Error ? error.message : String(error)),
      );
    };
    const timer = setTimeout(keepIt, REST_ms);
    const left = () => document.visibilityState === "hidden" && keepIt();
    document.addEventListener("visibilitychange", left);
    return () => {
      clearTimeout(timer);
      document.removeEventListener("visibilitychange", left);
    };
  }, [keep, registration, state, unkept, flight]);
  return trouble;
}
