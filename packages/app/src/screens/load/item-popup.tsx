import type { Loading, Station } from "@witnessmark/book";
import { STANDARD_MASSES, type StandardMass, withSymbol } from "@witnessmark/engine";
import type { LoadedItem, PlannedLoad } from "@witnessmark/ledger";
import { useState } from "react";
import { itemsAt, swapped, withItem, withoutItem } from "../../flight/plan-load.ts";
import { Popup } from "../../frame/popup.tsx";
import type { InHand } from "./in-hand.ts";

interface ItemPopupProps {
  readonly loading: Loading;
  readonly load: PlannedLoad;
  readonly item: LoadedItem;
  readonly onLoad: (load: PlannedLoad) => void;
  readonly onHand: (hand: InHand) => void;
  readonly onClose: () => void;
}

const KNOWN: readonly (readonly [LoadedItem["known"], string])[] = [
  ["weighed", "Weighed"],
  ["stated", "As stated"],
  ["standard", "Standard figure"],
];

const AUTHORITY: Readonly<Record<StandardMass["authority"], string>> = {
  faa: "United States",
  easa: "European",
};

/** Everything else about a person or a bag: who, how the mass is known, and where it goes. */
export function ItemPopup({ loading, load, item, onLoad, onHand, onClose }: ItemPopupProps) {
  const [what, setWhat] = useState(item.what);
  const station = loading.stations.find(({ id }) => id === item.station);
  const bag = station?.kind === "bay";
  const standards = STANDARD_MASSES.filter((one) =>
    bag ? one.what === "bag" : one.what === "passenger" || (station?.crew === true && one.what === "crew"),
  );
  const set = (change: Partial<LoadedItem>) =>
    onLoad(withItem(load, { ...item, what: what.trim(), ...change }));
  const done = () => {
    if (what.trim() !== item.what) set({});
    onClose();
  };
  const chosen = standards.find(
    ({ printed }) =>
      item.known === "standard" && printed.value === item.mass.value && printed.unit === item.mass.unit,
  );
  return (
    <Popup title={station?.name ?? "Aboard"} onClose={done}>
      <form
        className="popup-body"
        onSubmit={(event) => {
          event.preventDefault();
          done();
        }}
      >
        <label className="field">
          <span>{bag ? "What is it?" : "Who is it?"}</span>
          <input
            value={what}
            maxLength={120}
            autoComplete="off"
            onChange={(event) => setWhat(event.target.value)}
          />
        </label>
        <fieldset className="item-known">
          <legend>How the mass is known</legend>
          <div className="choices of-3">
            {KNOWN.map(([known, name]) => (
              <button
                key={known}
                type="button"
                aria-pressed={item.known === known}
                onClick={() => set({ known })}
              >
                {name}
              </button>
            ))}
          </div>
        </fieldset>
        <label className="field">
          <span>
            A published standard figure, in place of {withSymbol(String(item.mass.value), item.mass.unit)}
          </span>
          <select
            value={chosen?.id ?? ""}
            onChange={(event) => {
              const found = standards.find(({ id }) => id === event.target.value);
              if (found !== undefined) set({ mass: found.printed, known: "standard" });
            }}
          >
            <option value="">None</option>
            {standards.map((one) => (
              <option key={one.id} value={one.id}>
                {AUTHORITY[one.authority]}, {one.name}:{" "}
                {withSymbol(String(one.printed.value), one.printed.unit)}
              </option>
            ))}
          </select>
        </label>
        {chosen === undefined ? null : (
          <p className="note">
            {chosen.source.title}
            {chosen.source.locator === undefined ? "" : `, ${chosen.source.locator}`} ({chosen.source.status}
            ).
          </p>
        )}
        <label className="field">
          <span>Where it is</span>
          <select
            value={item.station}
            onChange={(event) => {
              const { next, hand } = moved(load, { ...item, what: what.trim() }, loading, event.target.value);
              onLoad(next);
              onHand(hand);
              onClose();
            }}
          >
            {station === undefined ? <option value={item.station}>Not in the book</option> : null}
            {loading.stations.map((one) => (
              <option key={one.id} value={one.id}>
                {one.name}
                {one.id === item.station ? "" : takenText(load, one)}
              </option>
            ))}
          </select>
        </label>
        <div className="row-of-buttons">
          <button type="submit" className="button filled">
            Done
          </button>
          <button
            type="button"
            className="button"
            onClick={() => {
              onLoad(withoutItem(load, item.id));
              onHand({ kind: "station", id: item.station });
              onClose();
            }}
          >
            Not aboard
          </button>
        </div>
      </form>
    </Popup>
  );
}

const takenText = (load: PlannedLoad, { id, kind }: Station): string =>
  kind === "seat" && itemsAt(load, id).length > 0 ? ": change seats" : "";

/** To another place; where somebody sits there, the two change seats. */
function moved(
  load: PlannedLoad,
  item: LoadedItem,
  loading: Loading,
  to: string,
): { readonly next: PlannedLoad; readonly hand: InHand } {
  const named = withItem(load, item);
  const target = loading.stations.find(({ id }) => id === to);
  const taken = target?.kind === "seat" && itemsAt(load, to).length > 0;
  return {
    next: taken ? swapped(named, item.station, to) : withItem(named, { ...item, station: to }),
    hand: { kind: "station", id: to, item: item.id },
  };
}
