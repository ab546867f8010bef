import { type Flight, flightInHand } from "@witnessmark/assess";
import { type AircraftState, newId, plannedFlight } from "@witnessmark/ledger";
import type { Keep } from "../keep/contract.ts";
import { isRecord, stored } from "../preferences/stored.ts";

/**
 * The flight in hand of each aircraft: what the ledger holds, or what was changed on this screen since and is not in
 * the ledger yet. A change stands here at once, so that figures follow the finger, and is kept in the ledger when the
 * person rests.
 */
interface Draft {
  /** `null`: the flight in the ledger was given up. */
  readonly flight: Flight | null;
  /** The event of the ledger's plan that it grew from; `null` when there was none. */
  readonly from: string | null;
}

const drafts = stored<Readonly<Record<string, Draft>>>("flights-in-hand", (found) => {
  const given = isRecord(found) ? found : {};
  return Object.fromEntries(
    Object.entries(given).flatMap(([registration, draft]) =>
      isRecord(draft) && (draft["flight"] === null || isFlight(draft["flight"]))
        ? [
            [
              registration,
              {
                flight: draft["flight"],
                from: typeof draft["from"] === "string" ? draft["from"] : null,
              },
            ] as const,
          ]
        : [],
    ),
  );
});

/** Only this app writes it, and the ledger looks at every part again before it keeps it. */
function isFlight(found: unknown): found is Flight {
  return (
    isRecord(found) &&
    typeof found["id"] === "string" &&
    typeof found["from"] === "string" &&
    typeof found["to"] === "string" &&
    typeof found["offBlocks"] === "string"
  );
}

/** Earlier flights of this sitting, the latest last, for Undo. */
const before = new Map<string, (Flight | null)[]>();
const UNDO_MOST = 200;

const draftOf = (registration: string): Draft | undefined => drafts.get()[registration];

function setDraft(registration: string, draft: Draft | null): void {
  const rest = Object.fromEntries(Object.entries(drafts.get()).filter(([key]) => key !== registration));
  drafts.set(draft === null ? rest : { ...rest, [registration]: draft });
}

/** The flight in hand; renders again when it changes. The same flight is the same object. */
export function useFlight(registration: string, state: AircraftState, now_ms: number): Flight | null {
  const draft = drafts.use()[registration];
  return draft === undefined ? flightInHand(state, now_ms) : draft.flight;
}

/** A flight as it begins: it has an id, so that what is said of it later is of this one. */
export const newFlight = (given: Pick<Flight, "from" | "to" | "offBlocks">): Flight => ({
  id: newId(),
  ...given,
});

/**
 * Changes the flight in hand on this screen.
 *
 * @param step whether Undo comes back to before this change; false while a finger is still moving
 */
export function setFlight(
  registration: string,
  state: AircraftState,
  next: Flight | null,
  step = true,
): void {
  const draft = draftOf(registration);
  const now = draft === undefined ? flightInHand(state, Date.now()) : draft.flight;
  if (now === next) return;
  if (step) {
    const past = before.get(registration) ?? [];
    before.set(registration, [...past.slice(-UNDO_MOST + 1), now]);
  }
  setDraft(registration, {
    flight: next,
    from: draft === undefined ? (plannedFlight(state)?.event ?? null) : draft.from,
  });
}

/** Whether Undo has something to come back to. */
export const canUndoFlight = (registration: string): boolean => (before.get(registration)?.length ?? 0) > 0;

export function undoFlight(registration: string, state: AircraftState): void {
  const past = before.get(registration) ?? [];
  const last = past.at(-1);
  if (last === undefined) return;
  before.set(registration, past.slice(0, -1));
  setFlight(registration, state, last, false);
}

/** Whether another device has planned the flight anew since the draft on this screen was begun. */
export function plannedElsewhere(registration: string, state: AircraftState): boolean {
  const draft = draftOf(registration);
  if (draft === undefined) return false;
  return (plannedFlight(state)?.event ?? null) !== draft.from;
}

/** Whether something was changed here that the ledger does not hold yet. */
export const useUnkept = (registration: string): boolean => drafts.use()[registration] !== undefined;

/** Lets go of what was changed here: what the ledger holds is in hand again. */
export const takeTheirs = (registration: string): void => setDraft(registration, null);

/** Keeps the flight in hand in the ledger, when it is not there yet. @throws {NotKept} */
export async function keepFlight(keep: Keep, registration: string, state: AircraftState): Promise<void> {
  const draft = draftOf(registration);
  if (draft === undefined) return;
  const { flight } = draft;
  const held = plannedFlight(state);
  if (flight !== null && flight.id !== undefined) {
    if (JSON.stringify(held?.planned) !== JSON.stringify(flight)) {
      await keep.append(registration, [
        { type: "flight.planned", body: { flight: flight.id, planned: flight } },
      ]);
    }
  } else if (held !== undefined) {
    await keep.append(registration, [
      { type: "flight.dropped", body: { flight: held.id, why: "Given up by the pilot" } },
    ]);
  }
  const after = draftOf(registration);
  if (after === draft) setDraft(registration, null);
  else if (after !== undefined) {
    // changed again while it was being kept: what was kept is what it grew from now
    const now = keep.snapshot().aircraft.get(registration)?.state ?? state;
    setDraft(registration, { ...after, from: plannedFlight(now)?.event ?? null });
  }
}
