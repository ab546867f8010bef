import type { Loading } from "@witnessmark/book";
import type { PlannedLoad } from "@witnessmark/ledger";
import type { PastLoad } from "../../flight/past-loads.ts";
import { siOf } from "../../flight/plan-load.ts";
import { Popup } from "../../frame/popup.tsx";
import { clockTime, shortDay } from "../../words/dates.ts";
import { tally } from "../../words/figures.ts";
import { type LoadUnits, plain, symbolOf } from "./load-units.ts";

interface PastLoadsPopupProps {
  readonly past: readonly PastLoad[];
  readonly loading: Loading;
  readonly units: LoadUnits;
  readonly onLoad: (load: PlannedLoad) => void;
  readonly onClose: () => void;
}

/** Loads that were flown or planned before: one is taken as it was, and then changed. */
export function PastLoadsPopup({ past, loading, units, onLoad, onClose }: PastLoadsPopupProps) {
  return (
    <Popup title="Use a past load" onClose={onClose}>
      <ul className="popup-list">
        {past.map(({ id, flight, load }) => (
          <li key={id}>
            <button type="button" onClick={() => onLoad(load)}>
              <span>
                {flight.from} to {flight.to}
              </span>
              <span>
                {shortDay(Date.parse(flight.offBlocks))}, {clockTime(Date.parse(flight.offBlocks))}
              </span>
              <small>{wordsOf(load, loading, units)}</small>
            </button>
          </li>
        ))}
      </ul>
    </Popup>
  );
}

function wordsOf({ items, fuel }: PlannedLoad, loading: Loading, units: LoadUnits): string {
  const seats = new Set(loading.stations.filter(({ kind }) => kind === "seat").map(({ id }) => id));
  const people = items.filter(({ station }) => seats.has(station));
  const bags_kg = items
    .filter(({ station }) => !seats.has(station))
    .reduce((sum, { mass }) => sum + (siOf(mass, "mass") ?? 0), 0);
  const fuel_m3 = fuel.reduce((sum, { volume }) => sum + (siOf(volume, "volume") ?? 0), 0);
  return `${tally(people.length, "seat")} taken, ${plain(bags_kg, units.mass)} ${symbolOf(units.mass)} in the bays, ${plain(fuel_m3, units.volume)} ${symbolOf(units.volume)} of fuel`;
}
