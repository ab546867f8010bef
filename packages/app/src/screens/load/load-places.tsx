import type { LoadFigures, StationFigures, TankFigures } from "@witnessmark/assess";
import type { Status } from "@witnessmark/ledger";
import { memo } from "react";
import { Hatch } from "../../instruments/hatch.tsx";
import { MarkAt } from "../../marks/mark.tsx";
import type { Box, DrawnPlaces, DrawnStation, DrawnTank } from "./drawn-load.ts";
import { type LiveLoad, useFollowing, useLive } from "./follow/live-load.ts";
import { useParts } from "./follow/parts.ts";
import { type InHand, isInHand } from "./in-hand.ts";
import { type LoadUnits, plain, symbolOf } from "./load-units.ts";
import type { LoadLayout } from "./plan-layout.ts";

interface LoadPlacesProps {
  readonly places: DrawnPlaces;
  readonly at: LoadLayout;
  readonly figures: LoadFigures;
  readonly units: LoadUnits;
  readonly hand: InHand;
  readonly live: LiveLoad;
}

/** Seats, bays and tanks, each with what is in it; the one in hand is filled. Only what changed is drawn again. */
export function LoadPlaces({ places, at, figures, units, hand, live }: LoadPlacesProps) {
  return (
    <>
      {places.tanks.map((drawn) => (
        <TankPlace
          key={drawn.tank.id}
          drawn={drawn}
          {...tankTexts(
            figures.tanks.find(({ id }) => id === drawn.tank.id),
            units,
          )}
          inHand={isInHand(hand, "tank", drawn.tank.id)}
          units={units}
          live={live}
        />
      ))}
      {places.stations.map((drawn) => {
        const { id, kind } = drawn.station;
        const found = figures.stations.find((one) => one.id === id);
        const shown = {
          drawn,
          text: textOf(found, units),
          status: found?.status ?? "clear",
          inHand: isInHand(hand, "station", id),
          units,
          live,
        };
        return kind === "seat" ? <Seat key={id} {...shown} k={at.pxPerMetre} /> : <Bay key={id} {...shown} />;
      })}
    </>
  );
}

interface StationProps {
  readonly drawn: DrawnStation;
  /** The mass; `null` where nothing is. */
  readonly text: string | null;
  readonly status: Status;
  readonly inHand: boolean;
  readonly units: LoadUnits;
  readonly live: LiveLoad;
}

const stationClass = (inHand: boolean, empty: boolean) =>
  `load-place${inHand ? " load-in-hand" : ""}${empty ? " load-empty" : ""}`;

const textOf = (figures: StationFigures | undefined, units: LoadUnits) =>
  figures === undefined || figures.items.length === 0 ? null : plain(figures.mass_kg, units.mass);

/** A chair from above, its back rest aft, with the mass of who sits in it. */
const Seat = memo(function Seat(props: StationProps & { readonly k: number }) {
  const { drawn, text, status, inHand, live, k } = props;
  const { x, y, halfX, halfY } = drawn.box;
  const ease = 0.09 * k;
  const d = `M${f(x - halfX)},${f(y - halfY)}h${f(2 * halfX - ease)}q${f(ease)},0 ${f(ease)},${f(ease)}v${f(2 * halfY - 2 * ease)}q0,${f(ease)} ${f(-ease)},${f(ease)}h${f(ease - 2 * halfX)}z`;
  return (
    <>
      <path className={stationClass(inHand, text === null)} d={d} />
      {text === null ? null : (
        <path className="load-back" d={`M${f(x + halfX)},${f(y - halfY - 1)}v${f(2 * halfY + 2)}`} />
      )}
      <MassText {...props} />
      <Corner drawn={drawn} status={status} live={live} />
    </>
  );
});

const Bay = memo(function Bay(props: StationProps) {
  const { drawn, text, status, inHand, live } = props;
  const { x, y, halfX, halfY } = drawn.box;
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
      <MassText {...props} halo={!inHand} />
      <Corner drawn={drawn} status={status} live={live} />
    </>
  );
});

const BayHatch = memo(function BayHatch({ box }: { readonly box: Box }) {
  return (
    <Hatch x={box.x - box.halfX} y={box.y - box.halfY} width={2 * box.halfX} height={2 * box.halfY} gap={6} />
  );
});

function MassText({
  drawn,
  text,
  inHand,
  units,
  live,
  halo = false,
}: StationProps & { readonly halo?: boolean }) {
  const { box, station } = drawn;
  const parts = useParts();
  useFollowing(
    live,
    ({ figures }) =>
      textOf(
        figures.stations.find(({ id }) => id === station.id),
        units,
      ),
    (now) => {
      if ((now === null) !== (text === null)) return false;
      if (now !== null) parts.say("mass", now);
      return true;
    },
    "drawing",
  );
  if (text === null) return null;
  const size_px = Math.max(13, Math.min(19, box.halfX * 1.05));
  return (
    <text
      ref={parts.ref("mass")}
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
function Corner(props: Pick<StationProps, "drawn" | "status" | "live">) {
  const { box, station } = props.drawn;
  const status = useLive(
    props.live,
    props.status,
    ({ figures }) => figures.stations.find(({ id }) => id === station.id)?.status ?? "clear",
  );
  if (status === "clear") return null;
  return <MarkAt status={status} x={box.x - box.halfX} y={box.y - box.halfY} size_px={22} />;
}

/** Less than this above and below the middle, and a tank has room for its mass alone. */
const LOW_px = 17;

const tankTexts = (figures: TankFigures | undefined, units: LoadUnits) => ({
  mass: figures?.mass_kg === undefined ? "–" : plain(figures.mass_kg, units.mass),
  volume:
    figures?.volume_m3 === undefined
      ? "not said"
      : `${plain(figures.volume_m3, units.volume)} ${symbolOf(units.volume)}`,
});

/** About the width of a letter of this size; a figure in a tank that it does not go in is in the list. */
const LETTER_px = 6.4;
const fitting = (text: string, { halfX }: Box) => (text.length * LETTER_px > 2 * halfX ? "" : text);

const TankPlace = memo(function TankPlace({
  drawn,
  mass,
  volume,
  inHand,
  units,
  live,
}: {
  readonly drawn: DrawnTank;
  readonly mass: string;
  readonly volume: string;
  readonly inHand: boolean;
  readonly units: LoadUnits;
  readonly live: LiveLoad;
}) {
  const { box, path, tank } = drawn;
  const parts = useParts();
  useFollowing(
    live,
    ({ figures }) =>
      tankTexts(
        figures.tanks.find(({ id }) => id === tank.id),
        units,
      ),
    (now) => {
      parts.say("mass", now.mass);
      parts.say("volume", fitting(now.volume, box));
      return true;
    },
    "drawing",
  );
  const low = box.halfY < LOW_px;
  const size_px = low ? 16 : 19;
  return (
    <>
      <path className={`load-tank${inHand ? " load-in-hand" : ""}`} d={path} />
      <text
        ref={parts.ref("mass")}
        className={inHand ? "load-mass load-mass-in-hand" : "load-mass"}
        x={box.x}
        y={box.y + (low ? size_px * 0.34 : 1)}
        fontSize={size_px}
        textAnchor="middle"
      >
        {mass}
      </text>
      {low ? null : (
        <text
          ref={parts.ref("volume")}
          className={inHand ? "load-volume load-mass-in-hand" : "load-volume"}
          x={box.x}
          y={box.y + 17}
          textAnchor="middle"
        >
          {fitting(volume, box)}
        </text>
      )}
    </>
  );
});

const f = (value: number) => value.toFixed(1);
