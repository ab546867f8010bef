import type { LoadFigures, StationFigures, TankFigures } from "@witnessmark/assess";
import { memo } from "react";
import { Hatch } from "../../instruments/hatch.tsx";
import { MarkAt } from "../../marks/mark.tsx";
import type { Box, DrawnPlaces, DrawnStation, DrawnTank } from "./drawn-load.ts";
import { type InHand, isInHand } from "./in-hand.ts";
import { type LoadUnits, plain, symbolOf } from "./load-units.ts";
import type { LoadLayout } from "./plan-layout.ts";

interface LoadPlacesProps {
  readonly places: DrawnPlaces;
  readonly at: LoadLayout;
  readonly figures: LoadFigures;
  readonly units: LoadUnits;
  readonly hand: InHand;
}

/** Seats, bays and tanks, each with what is in it; the one in hand is filled. */
export function LoadPlaces({ places, at, figures, units, hand }: LoadPlacesProps) {
  return (
    <>
      {places.tanks.map((drawn) => (
        <TankPlace
          key={drawn.tank.id}
          drawn={drawn}
          figures={figures.tanks.find(({ id }) => id === drawn.tank.id)}
          units={units}
          inHand={isInHand(hand, "tank", drawn.tank.id)}
        />
      ))}
      {places.stations.map((drawn) => {
        const { id } = drawn.station;
        const found = figures.stations.find((one) => one.id === id);
        return drawn.station.kind === "seat" ? (
          <Seat
            key={id}
            drawn={drawn}
            figures={found}
            units={units}
            k={at.pxPerMetre}
            inHand={isInHand(hand, "station", id)}
          />
        ) : (
          <Bay key={id} drawn={drawn} figures={found} units={units} inHand={isInHand(hand, "station", id)} />
        );
      })}
    </>
  );
}

interface StationProps {
  readonly drawn: DrawnStation;
  readonly figures: StationFigures | undefined;
  readonly units: LoadUnits;
  readonly inHand: boolean;
}

const stationClass = (inHand: boolean, empty: boolean) =>
  `load-place${inHand ? " load-in-hand" : ""}${empty ? " load-empty" : ""}`;

const textOf = (figures: StationFigures | undefined, units: LoadUnits) =>
  figures === undefined || figures.items.length === 0 ? null : plain(figures.mass_kg, units.mass);

/** A chair from above, its back rest aft, with the mass of who sits in it. */
function Seat({ drawn, figures, units, k, inHand }: StationProps & { readonly k: number }) {
  const { x, y, halfX, halfY } = drawn.box;
  const text = textOf(figures, units);
  const ease = 0.09 * k;
  const d = `M${f(x - halfX)},${f(y - halfY)}h${f(2 * halfX - ease)}q${f(ease)},0 ${f(ease)},${f(ease)}v${f(2 * halfY - 2 * ease)}q0,${f(ease)} ${f(-ease)},${f(ease)}h${f(ease - 2 * halfX)}z`;
  return (
    <>
      <path className={stationClass(inHand, text === null)} d={d} />
      {text === null ? null : (
        <path className="load-back" d={`M${f(x + halfX)},${f(y - halfY - 1)}v${f(2 * halfY + 2)}`} />
      )}
      <MassText box={drawn.box} text={text} inHand={inHand} />
      <Corner box={drawn.box} figures={figures} />
    </>
  );
}

function Bay({ drawn, figures, units, inHand }: StationProps) {
  const { x, y, halfX, halfY } = drawn.box;
  const text = textOf(figures, units);
  return (
    <>
      <rect
        className={stationClass(inHand, text === null)}
        x={x - halfX}
        y={y - halfY}
        width={2 * halfX}
        height={2 * halfY}
      />
      {text === null || inHand ? null : <BayHatch box={drawn.box} />}
      <MassText box={drawn.box} text={text} inHand={inHand} halo={!inHand} />
      <Corner box={drawn.box} figures={figures} />
    </>
  );
}

const BayHatch = memo(function BayHatch({ box }: { readonly box: Box }) {
  return (
    <Hatch x={box.x - box.halfX} y={box.y - box.halfY} width={2 * box.halfX} height={2 * box.halfY} gap={6} />
  );
});

function MassText({
  box,
  text,
  inHand,
  halo = false,
}: {
  readonly box: Box;
  readonly text: string | null;
  readonly inHand: boolean;
  readonly halo?: boolean;
}) {
  if (text === null) return null;
  const size_px = Math.max(13, Math.min(19, box.halfX * 1.05));
  return (
    <text
      className={`load-mass${inHand ? " load-mass-in-hand" : ""}${halo ? " halo halo-load" : ""}`}
      x={box.x - 1}
      y={box.y + size_px * 0.34}
      fontSize={size_px}
      textAnchor="middle"
    >
      {text}
    </text>
  );
}

/** A place that is not within its limits wears its mark; what is wrong stands in words in the list and below. */
function Corner({ box, figures }: { readonly box: Box; readonly figures: StationFigures | undefined }) {
  if (figures === undefined || figures.status === "clear") return null;
  return <MarkAt status={figures.status} x={box.x - box.halfX} y={box.y - box.halfY} size_px={22} />;
}

function TankPlace({
  drawn,
  figures,
  units,
  inHand,
}: {
  readonly drawn: DrawnTank;
  readonly figures: TankFigures | undefined;
  readonly units: LoadUnits;
  readonly inHand: boolean;
}) {
  const { box, path } = drawn;
  const { volume_m3, mass_kg } = figures ?? {};
  const low = box.halfY < 26;
  const mass = mass_kg === undefined ? "–" : plain(mass_kg, units.mass);
  const volume =
    volume_m3 === undefined ? "not said" : `${plain(volume_m3, units.volume)} ${symbolOf(units.volume)}`;
  return (
    <>
      <path className={`load-tank${inHand ? " load-in-hand" : ""}`} d={path} />
      <text
        className={inHand ? "load-mass load-mass-in-hand" : "load-mass"}
        x={box.x}
        y={box.y + (low ? 0 : 1)}
        fontSize={low ? 16 : 19}
        textAnchor="middle"
      >
        {mass}
      </text>
      <text
        className={inHand ? "load-volume load-mass-in-hand" : "load-volume"}
        x={box.x}
        y={box.y + (low ? 14 : 17)}
        textAnchor="middle"
      >
        {volume}
      </text>
    </>
  );
}

const f = (value: number) => value.toFixed(1);
