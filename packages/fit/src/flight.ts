import { type BurnPath, type BurnState, burnPath, type LoadItem } from "@witnessmark/engine";
import { stationOf } from "./check-input.ts";
import { type FitEnvelope, type FitInput, lateralOf } from "./fit-input.ts";

/** A part of the burn and an envelope that it has to be in. */
export interface Leg {
  readonly path: BurnPath;
  readonly envelope: FitEnvelope;
}

/** A flight along its burn: once with the gear's moment and once without, where there is one. */
export interface Flight {
  readonly paths: readonly BurnPath[];
  /** From take-off to the last usable fuel, with each envelope and gear. */
  readonly legs: readonly Leg[];
  readonly ramp: BurnState;
  readonly takeOff: BurnState;
  readonly landing: BurnState;
  readonly zeroFuel: BurnState;
  /** Fuel that taxi, trip and reserve ask for beyond what is aboard; zero where it suffices. */
  readonly short_kg: number;
}

/** Mass that is added, or taken where the sign is minus, at a station. */
export interface Added {
  readonly station: string;
  readonly mass_kg: number;
}

function withoutFuel(input: FitInput, added?: Added): readonly LoadItem[] {
  const items = input.items.map(({ at, mass_kg }) => ({ at, mass_kg }));
  if (added !== undefined) items.push({ at: added.station, mass_kg: added.mass_kg });
  return [
    input.empty,
    ...items.map(({ at, mass_kg }) => {
      const station = stationOf(input, at);
      return { mass_kg, arm_m: station.arm_m, lateralArm_m: lateralOf(station) };
    }),
  ];
}

const last = (path: BurnPath): BurnState => {
  const state = path.states.at(-1);
  if (state === undefined) throw new Error("a burn path without a state"); // burnPath gives one at least
  return state;
};

/** An envelope is for the flight: on the ramp nothing holds but the ramp's own mass. */
function legsOf(input: FitInput, path: BurnPath): readonly Leg[] {
  const at = path.states.indexOf(path.marks["taxi"] ?? last(path));
  const air: BurnPath = { ...path, states: path.states.slice(at), pieces: path.pieces.slice(at) };
  return input.envelopes.map((envelope) => ({ path: air, envelope }));
}

/**
 * The states of the flight from ramp to the last usable fuel.
 *
 * @throws {InputError} of `burnPath`: tanks, order, burns
 */
export function flightOf(input: FitInput, added?: Added): Flight {
  const { tanks, density_kgPerM3, order, burn, gearMoment_kgm = 0 } = input;
  const aboard = withoutFuel(input, added);
  const burns = [
    { id: "taxi", mass_kg: burn.taxi_kg },
    { id: "trip", mass_kg: burn.trip_kg },
    { id: "reserve", mass_kg: burn.reserve_kg ?? 0 },
  ];
  const pathWith = (moment_kgm: number): BurnPath =>
    burnPath({
      withoutFuel: [...aboard, { mass_kg: 0, arm_m: 0, extraMoment_kgm: moment_kgm }],
      tanks,
      density_kgPerM3,
      order,
      burns,
    });
  const down = pathWith(0);
  const [ramp] = down.states;
  const dry = last(down);
  const paths = gearMoment_kgm === 0 ? [down] : [down, pathWith(gearMoment_kgm)];
  return {
    paths,
    legs: paths.flatMap((path) => legsOf(input, path)),
    ramp: ramp ?? dry,
    takeOff: down.marks["taxi"] ?? dry,
    landing: down.marks["trip"] ?? dry,
    zeroFuel: dry,
    short_kg: down.short_kg,
  };
}

/** The same load with other contents of the tanks. */
export const withVolumes = (input: FitInput, volumes_m3: Readonly<Record<string, number>>): FitInput => ({
  ...input,
  tanks: input.tanks.map((tank) => ({ ...tank, volume_m3: volumes_m3[tank.id] ?? tank.volume_m3 })),
});

/** The same load with items in other places; what is missing from the map stays behind. */
export const withPlaces = (input: FitInput, places: ReadonlyMap<string, string>): FitInput => ({
  ...input,
  items: input.items.flatMap((item) => {
    const at = places.get(item.id);
    return at === undefined ? [] : [{ ...item, at }];
  }),
});
