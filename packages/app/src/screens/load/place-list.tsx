import { faultsAt, type LoadFigures, type StationFigures, type TankFigures } from "@witnessmark/assess";
import type { Loading } from "@witnessmark/book";
import { withSymbol } from "@witnessmark/engine";
import type { PlannedLoad } from "@witnessmark/ledger";
import { itemsAt } from "../../flight/plan-load.ts";
import { Mark } from "../../marks/mark.tsx";
import { figure } from "../../words/figures.ts";
import { stationFaults } from "./faults-at.ts";
import { type InHand, isInHand } from "./in-hand.ts";
import { type LoadUnits, plain, safe, symbolOf } from "./load-units.ts";

interface PlaceListProps {
  readonly loading: Loading;
  readonly load: PlannedLoad;
  readonly figures: LoadFigures;
  readonly units: LoadUnits;
  readonly hand: InHand;
  readonly onHand: (hand: InHand) => void;
}

/** Every seat, bay and tank in words: the way by keyboard, and where a fault is told at its place. */
export function PlaceList(props: PlaceListProps) {
  const { loading, figures, hand, onHand } = props;
  const strangers = props.load.items.filter(
    ({ station }) => !loading.stations.some(({ id }) => id === station),
  );
  return (
    <section className="places" aria-label="Seats, bays and tanks">
      <h2>Seats and bays</h2>
      <ul>
        {loading.stations.map((station) => (
          <StationRow key={station.id} {...props} id={station.id} />
        ))}
      </ul>
      {strangers.map((item) => (
        <p key={item.id} className="place-fault stop">
          {faultsAt(figures, "item", item.id)[0]?.says ?? `${item.what}: no such place in the book`}
        </p>
      ))}
      <h2>Fuel</h2>
      <ul>
        {figures.tanks.map((tank) => (
          <TankRow key={tank.id} {...props} tank={tank} />
        ))}
        {figures.tanks.length < 2 ? null : (
          <li>
            <button
              type="button"
              aria-pressed={hand.kind === "tanks"}
              onClick={() => onHand({ kind: "tanks" })}
            >
              <b>{figures.tanks.length === 2 ? "Both tanks" : "All tanks"}</b>
              <span>The same in each</span>
            </button>
          </li>
        )}
      </ul>
    </section>
  );
}

function StationRow({
  id,
  loading,
  load,
  figures,
  units,
  hand,
  onHand,
}: PlaceListProps & { readonly id: string }) {
  const station = loading.stations.find((one) => one.id === id);
  const found = figures.stations.find((one) => one.id === id);
  const items = itemsAt(load, id);
  const faults = [
    ...items.flatMap((item) => faultsAt(figures, "item", item.id).map(({ says }) => says)),
    ...stationFaults(id, figures, units),
  ];
  const things = items
    .map(({ what, mass, known }) => {
      const name = what.trim() === "" ? (station?.kind === "bay" ? "Bag" : "Somebody") : what;
      const how = known === "stated" ? "" : known === "weighed" ? ", weighed" : ", standard figure";
      return items.length > 1
        ? `${name} ${withSymbol(figure(mass.value, Number.isInteger(mass.value) ? 0 : 1), mass.unit)}${how}`
        : `${name}${how}`;
    })
    .join(", ");
  return (
    <li>
      <button
        type="button"
        aria-pressed={isInHand(hand, "station", id)}
        onClick={() => onHand({ kind: "station", id })}
      >
        <b>{station?.name ?? id}</b>
        <span>{items.length === 0 ? "Empty" : things}</span>
        <StationFigure found={found} units={units} />
      </button>
      {faults.map((words) => (
        <p key={words} className="place-fault stop">
          {words}
        </p>
      ))}
    </li>
  );
}

function StationFigure({
  found,
  units,
}: {
  readonly found: StationFigures | undefined;
  readonly units: LoadUnits;
}) {
  if (found === undefined) return null;
  const most_kg = Math.min(found.limit.limit, found.floor?.limit ?? Number.POSITIVE_INFINITY);
  return (
    <em>
      {found.status === "clear" ? null : <Mark status={found.status} size_px={18} />}
      <strong>{plain(found.mass_kg, units.mass)}</strong> of {safe(most_kg, units.mass, "down")}{" "}
      {symbolOf(units.mass)}
    </em>
  );
}

function TankRow({ tank, figures, units, hand, onHand }: PlaceListProps & { readonly tank: TankFigures }) {
  const { id, name, volume_m3, mass_kg, capacity_m3, atLanding_m3 } = tank;
  const volume = (value: number, way: "up" | "down") =>
    `${safe(value, units.volume, way)} ${symbolOf(units.volume)}`;
  return (
    <li>
      <button
        type="button"
        aria-pressed={isInHand(hand, "tank", id)}
        onClick={() => onHand({ kind: "tank", id })}
      >
        <b>{name}</b>
        <span>
          {volume_m3 === undefined
            ? "Not said"
            : atLanding_m3 === undefined
              ? massText(mass_kg, units)
              : `${massText(mass_kg, units)}, ${volume(atLanding_m3, "down")} at landing`}
        </span>
        <em>
          <strong>{volume_m3 === undefined ? "–" : plain(volume_m3, units.volume)}</strong> of{" "}
          {volume(capacity_m3, "down")}
        </em>
      </button>
      {faultsAt(figures, "tank", id).map(({ says }) => (
        <p key={says} className="place-fault stop">
          {says}
        </p>
      ))}
    </li>
  );
}

const massText = (mass_kg: number | undefined, units: LoadUnits) =>
  mass_kg === undefined ? "Mass not known" : `${plain(mass_kg, units.mass)} ${symbolOf(units.mass)}`;
