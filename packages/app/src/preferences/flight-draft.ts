import type { Flight } from "@witnessmark/assess";
import { isRecord, type Stored, stored } from "./stored.ts";

/** The flight a person means to make, as far as they said: kept on this screen until a decision carries it. */
export type FlightDraft = { readonly from: string; readonly to: string; readonly offBlocks: string };

const text = (found: unknown) => (typeof found === "string" ? found : "");

const drafts = stored<Readonly<Record<string, FlightDraft>>>("flights", (found) => {
  const given = isRecord(found) ? found : {};
  return Object.fromEntries(
    Object.entries(given).flatMap(([registration, draft]) =>
      isRecord(draft)
        ? [
            [
              registration,
              { from: text(draft["from"]), to: text(draft["to"]), offBlocks: text(draft["offBlocks"]) },
            ] as const,
          ]
        : [],
    ),
  );
});

const whole = new WeakMap<FlightDraft, Flight>();

/** A flight needs all three; half a one is none. The same draft gives the same object, so that nothing is reckoned twice. */
export function flightOf(draft: FlightDraft | undefined): Flight | null {
  if (draft === undefined || draft.from === "" || draft.to === "" || draft.offBlocks === "") return null;
  const found = whole.get(draft);
  if (found !== undefined) return found;
  const flight: Flight = { from: draft.from, to: draft.to, offBlocks: draft.offBlocks };
  whole.set(draft, flight);
  return flight;
}

export const flightDrafts: Stored<Readonly<Record<string, FlightDraft>>> = drafts;

export function setFlight(registration: string, draft: FlightDraft | null): void {
  const rest = Object.fromEntries(Object.entries(drafts.get()).filter(([key]) => key !== registration));
  drafts.set(draft === null ? rest : { ...rest, [registration]: draft });
}
