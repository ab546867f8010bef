import type { Book, OxygenOutlet, Station } from "@witnessmark/book";
import type { FlightPlan } from "@witnessmark/ledger";
import { allAboard } from "../load/aboard.ts";

/** A seat in use and the outlet from which its person breathes. What lies on a seat is counted as a person. */
export interface SeatInUse {
  readonly station: Station;
  readonly outlet: OxygenOutlet | undefined;
}

export function seatsInUse(book: Pick<Book, "loading" | "oxygen">, plan: FlightPlan): readonly SeatInUse[] {
  const { loading, oxygen } = book;
  if (loading === undefined) return [];
  const { aboard } = allAboard(loading, plan.load);
  return loading.stations
    .filter(
      (station) =>
        station.kind === "seat" && aboard.some((one) => one.station.id === station.id && one.mass_kg > 0),
    )
    .map((station) => ({ station, outlet: oxygen?.outlets.find(({ seat }) => seat === station.id) }));
}
