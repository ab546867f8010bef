import { faultsAt, type LoadFigures, type TankFigures } from "@witnessmark/assess";
import type { Loading } from "@witnessmark/book";
import { withSymbol } from "@witnessmark/engine";
import type { PlannedLoad, Status } from "@witnessmark/ledger";
import { memo } from "react";
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
export const PlaceList = memo(function PlaceList(props: PlaceListProps) {
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
});

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
  const most_kg = Math.min(
    found?.limit?.limit ?? Number.POSITIVE_INFINITY,
    found?.floor?.limit ?? Number.POSITIVE_INFINITY,
  );
  return (
    <PlaceRow
      kind="station"
      id={id}
      name={station?.name ?? id}
      says={items.length === 0 ? "Empty" : things}
      figure={found === undefined ? "–" : plain(found.mass_kg, units.mass)}
      of={
        found === undefined
          ? ""
          : Number.isFinite(most_kg)
            ? `${safe(most_kg, units.mass, "down")} ${symbolOf(units.mass)}`
            : "no limit given"
      }
      status={found?.status ?? "clear"}
      faults={faults.join("\n")}
      inHand={isInHand(hand, "station", id)}
      onHand={onHand}
    />
  );
}

function TankRow({ tank, figures, units, hand, onHand }: PlaceListProps & { readonly tank: TankFigures }) {
  const { id, name, volume_m3, mass_kg, capacity_m3, atLanding_m3 } = tank;
  const volume = (value: number, way: "up" | "down") =>
    `${safe(value, units.volume, way)} ${symbolOf(units.volume)}`;
  return (
    <PlaceRow
      kind="tank"
      id={id}
      name={name}
      says={
        volume_m3 === undefined
          ? "Not said"
          : atLanding_m3 === undefined
            ? massText(mass_kg, units)
            : `${massText(mass_kg, units)}, ${volume(atLanding_m3, "down")} at landing`
      }
      figure={volume_m3 === undefined ? "–" : plain(volume_m3, units.volume)}
      of={volume(capacity_m3, "down")}
      status={volume_m3 === undefined ? "open" : "clear"}
      faults={faultsAt(figures, "tank", id)
        .map(({ says }) => says)
        .join("\n")}
      inHand={isInHand(hand, "tank", id)}
      onHand={onHand}
    />
  );
}

interface PlaceRowProps {
  readonly kind: "station" | "tank";
  readonly id: string;
  readonly name: string;
  readonly says: string;
  readonly figure: string;
  readonly of: string;
  readonly status: Status;
  /** What is wrong here, a line each. */
  readonly faults: string;
  readonly inHand: boolean;
  readonly onHand: (hand: InHand) => void;
}

/** In plain values, so that a row whose words stay is not made again while another changes. */
const PlaceRow = memo(function PlaceRow(props: PlaceRowProps) {
  const { kind, id, name, says, of, status, faults, inHand, onHand } = props;
  return (
    <li>
      <button type="button" aria-pressed={inHand} onClick={() => onHand({ kind, id })}>
        <b>{name}</b>
        <span>{says}</span>
        <em>
          {status === "clear" ? null : <Mark status={status} size_px={18} />}
          <strong>{props.figure}</strong> {of === "" ? "" : `of ${of}`}
        </em>
      </button>
      {faults === ""
        ? null
        : faults.split("\n").map((words) => (
            <p key={words} className="place-fault stop">
              {words}
            </p>
          ))}
    </li>
  );
});

const massText = (mass_kg: number | undefined, units: LoadUnits) =>
  mass_kg === undefined ? "Mass not known" : `${plain(mass_kg, units.mass)} ${symbolOf(units.mass)}`;
