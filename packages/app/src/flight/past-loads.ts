import type { AircraftState, PlannedFlight, PlannedLoad } from "@witnessmark/ledger";

/** A load that was planned before, and the flight it was for. */
export interface PastLoad {
  readonly id: string;
  readonly flight: PlannedFlight;
  readonly load: PlannedLoad;
}

/** Loads of other flights of this aircraft, the latest first; those with nothing in them are left out. */
export function pastLoads(state: AircraftState, current: string | undefined): readonly PastLoad[] {
  return [...state.flights.values()]
    .flatMap(({ id, planned }): PastLoad[] => {
      const load = planned.plan?.load;
      if (load === undefined || id === current) return [];
      return load.items.length === 0 && load.fuel.length === 0 ? [] : [{ id, flight: planned, load }];
    })
    .toSorted((a, b) => Date.parse(b.flight.offBlocks) - Date.parse(a.flight.offBlocks));
}
