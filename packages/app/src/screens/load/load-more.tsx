import { type Flight, faultsAt, type Limited, type LoadFigures } from "@witnessmark/assess";
import type { Loading } from "@witnessmark/book";
import { withSymbol } from "@witnessmark/engine";
import type { AircraftState, PlannedLoad, PlannedRoute } from "@witnessmark/ledger";
import { memo, useState } from "react";
import { pastLoads } from "../../flight/past-loads.ts";
import { RouteForm } from "../../flight/route-form.tsx";
import { Mark } from "../../marks/mark.tsx";
import { dayMonth } from "../../words/dates.ts";
import { figure } from "../../words/figures.ts";
import { FigurePopup } from "../walk/figure-popup.tsx";
import { understandFigure } from "../walk/understand-figure.ts";
import { armText, type LoadUnits, marginWords, plain, symbolOf } from "./load-units.ts";
import { PastLoadsPopup } from "./past-loads-popup.tsx";

/** A part that is undefined is taken away: it is not known. */
export type LoadPart = { readonly [K in keyof PlannedLoad]?: PlannedLoad[K] | undefined };

interface LoadMoreProps {
  readonly state: AircraftState;
  readonly loading: Loading;
  /** Whether the aircraft has a fuel totaliser. */
  readonly hasTotaliser: boolean;
  readonly load: PlannedLoad;
  readonly figures: LoadFigures;
  readonly units: LoadUnits;
  readonly flight: Flight;
  readonly onLoadPart: (part: LoadPart) => void;
  readonly onRoute: (route: PlannedRoute) => void;
}

/** What is said once: trip, temperature of the fuel, envelope, and what else the book holds a load to. */
export const LoadMore = memo(function LoadMore(props: LoadMoreProps) {
  const { state, loading, hasTotaliser, load, figures, units, flight, onLoadPart, onRoute } = props;
  const [asking, setAsking] = useState<"trip" | "temperature" | "totaliser" | "past" | null>(null);
  const close = () => setAsking(null);
  const past = pastLoads(state, flight.id);
  const { route } = flight.plan ?? {};
  const temperature = load.fuelTemperature;
  const { density_kgPerM3, measured, trip_kg, taxi_kg } = figures.fuel;
  const mass = (value_kg: number) => `${plain(value_kg, units.mass)} ${symbolOf(units.mass)}`;
  const routeFaults = figures.faults.filter(({ where }) => where.kind === "route");
  return (
    <section className="places" aria-label="The flight and its limits">
      <ul>
        <li>
          <button type="button" onClick={() => setAsking("trip")}>
            <b>The trip</b>
            <span>
              {route === undefined
                ? "Say how far, how long and how high"
                : `${withSymbol(String(route.distance.value), route.distance.unit)}, ${withSymbol(String(route.time.value), route.time.unit)}, ${withSymbol(figure(route.level.value), route.level.unit)}`}
            </span>
            <em>
              {trip_kg === undefined || taxi_kg === undefined
                ? "not known"
                : `${mass(trip_kg + taxi_kg)} to burn`}
            </em>
          </button>
          {routeFaults.map(({ says }) => (
            <p key={says} className="place-fault stop">
              {says}
            </p>
          ))}
        </li>
        <li>
          <button type="button" onClick={() => setAsking("temperature")}>
            <b>Temperature of the fuel</b>
            <span>
              {density_kgPerM3 === undefined
                ? "Its density is not known"
                : `${figure(density_kgPerM3 / 1000, 3)} kg/L${measured ? "" : ", taken as at 15 °C"}`}
            </span>
            <em>
              {temperature === undefined
                ? "not known"
                : withSymbol(figure(temperature.value), temperature.unit)}
            </em>
          </button>
          {faultsAt(figures, "fuel-temperature", "fuel-temperature").map(({ says }) => (
            <p key={says} className="place-fault stop">
              {says}
            </p>
          ))}
        </li>
        {hasTotaliser || load.totaliser !== undefined ? (
          <li>
            <button type="button" onClick={() => setAsking("totaliser")}>
              <b>Fuel totaliser</b>
              <span>Usable fuel that it shows, held against gauge and dipstick</span>
              <em>
                {load.totaliser === undefined
                  ? "not known"
                  : withSymbol(figure(load.totaliser.value), load.totaliser.unit)}
              </em>
            </button>
            {faultsAt(figures, "totaliser", "totaliser").map(({ says }) => (
              <p key={says} className="place-fault stop">
                {says}
              </p>
            ))}
          </li>
        ) : null}
        {past.length === 0 ? null : (
          <li>
            <button type="button" onClick={() => setAsking("past")}>
              <b>Use a past load</b>
              <span>
                The last: {past[0]?.flight.from} to {past[0]?.flight.to},{" "}
                {dayMonth(Date.parse(past[0]?.flight.offBlocks ?? ""))}
              </span>
            </button>
          </li>
        )}
      </ul>
      {loading.envelopes.length < 2 ? null : (
        <fieldset className="load-envelopes">
          <legend>Envelope</legend>
          <div className="choices">
            {loading.envelopes.map(({ id, name }) => (
              <button
                key={id}
                type="button"
                aria-pressed={id === (load.envelope ?? loading.envelopes[0]?.id)}
                onClick={() => onLoadPart({ envelope: id })}
              >
                {name}
              </button>
            ))}
          </div>
        </fieldset>
      )}
      <AlsoHeld figures={figures} units={units} />
      {asking === "trip" ? <RouteForm route={route} onRoute={onRoute} onClose={close} /> : null}
      {asking === "temperature" ? (
        <FigurePopup
          title="Temperature of the fuel"
          units={["degC", "degF"]}
          unit={temperature?.unit ?? units.temperature}
          value={temperature?.value ?? null}
          decimals={0}
          step={1}
          hint="Its density goes with it. Fuel that stood overnight is as warm as the night was."
          understand={(text, unit) => understandFigure(text, unit, "8")}
          onSet={(read) => {
            onLoadPart({ fuelTemperature: read });
            close();
          }}
          onEmpty={() => {
            onLoadPart({ fuelTemperature: undefined });
            close();
          }}
          onClose={close}
        />
      ) : null}
      {asking === "totaliser" ? (
        <FigurePopup
          title="Fuel totaliser"
          units={["L", "kg", "USgal", "lb"]}
          unit={load.totaliser?.unit ?? "L"}
          value={load.totaliser?.value ?? null}
          decimals={0}
          step={1}
          hint="What it shows before start-up. It counts only what was burnt: it is as right as what was set in it."
          understand={(text, unit) => understandFigure(text, unit, "384")}
          onSet={(read) => {
            onLoadPart({ totaliser: read });
            close();
          }}
          onEmpty={() => {
            onLoadPart({ totaliser: undefined });
            close();
          }}
          onClose={close}
        />
      ) : null}
      {asking === "past" ? (
        <PastLoadsPopup
          past={past}
          loading={loading}
          units={units}
          onLoad={(next) => {
            onLoadPart(next);
            close();
          }}
          onClose={close}
        />
      ) : null}
    </section>
  );
});

/** Limits that are in no picture: shared ones, sideways, fuel of one side, and where the empty mass comes from. */
function AlsoHeld({ figures, units }: { readonly figures: LoadFigures; readonly units: LoadUnits }) {
  const { groups, lateral, imbalance, empty } = figures;
  const rows: readonly { readonly name: string; readonly limit: Limited; readonly inMass: boolean }[] = [
    ...groups.map(({ name, limit }) => ({ name, limit, inMass: true })),
    ...(imbalance === undefined
      ? []
      : [{ name: "Fuel, one side over the other", limit: imbalance, inMass: true }]),
    ...(lateral === undefined ? [] : [{ name: "Moment to one side", limit: lateral, inMass: false }]),
  ];
  return (
    <>
      <ul className="also-held">
        {rows.map(({ name, limit, inMass }) => (
          <li key={name}>
            <b>{name}</b>
            <span>
              {inMass
                ? `${plain(limit.value, units.mass)} of ${plain(limit.limit, units.mass)} ${symbolOf(units.mass)}`
                : `${figure(limit.value)} of ${figure(limit.limit)} kg·m`}
            </span>
            <em className={limit.status}>
              {inMass
                ? marginWords(limit.left, units.mass)
                : limit.left < 0
                  ? "over"
                  : `${figure(Math.floor(limit.left))} kg·m left`}
            </em>
            <Mark status={limit.status} size_px={22} />
          </li>
        ))}
      </ul>
      {empty === undefined ? null : (
        <p className="note load-empty-mass">
          Empty {plain(empty.mass_kg, units.mass)} {symbolOf(units.mass)} at {armText(empty.arm_m, units.arm)}{" "}
          {symbolOf(units.arm)}, as of {dayMonth(Date.parse(empty.on))} {empty.on.slice(0, 4)}, {empty.by}.
        </p>
      )}
    </>
  );
}
