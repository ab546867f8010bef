import type { CounterValues } from "@witnessmark/ledger";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";

/** Where a component of a serial number was last, on another aircraft of this phone, and what it had run when it came off. */
export function lastSeenElsewhere(
  { snapshot, registration }: Pick<OpenAircraft, "snapshot" | "registration">,
  serial: string,
): { readonly registration: string; readonly on: string; readonly ran: CounterValues } | undefined {
  if (serial === "") return undefined;
  return [...snapshot.aircraft.values()]
    .filter((entry) => entry.registration !== registration)
    .flatMap((entry) =>
      entry.state.componentMoves
        .filter((move) => move.serial === serial && !move.fitted)
        .map(({ on, ran }) => ({ registration: entry.registration, on, ran })),
    )
    .toSorted((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0))
    .at(-1);
}
