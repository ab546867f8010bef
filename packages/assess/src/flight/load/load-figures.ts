import type { Book, LoadEnvelope, Loading } from "@witnessmark/book";
import { type BurnState, envelopeFaults, InputError, loadedState } from "@witnessmark/engine";
import type { FlightPlan } from "@witnessmark/ledger";
import { densityOf } from "../density.ts";
import { type InputFault, type Limited, limited, type MissingPart, worstStatus } from "../figures.ts";
import { totaliserOf } from "../fuel/totaliser.ts";
import { plannedBurn } from "../planned-burn.ts";
import { whenAsked } from "../when-asked.ts";
import { type Aboard, allAboard, asLoadItem, groupFigures, stationFigures } from "./aboard.ts";
import { doubted, doubtOf, withFuel } from "./doubt.ts";
import { emptyInForce, emptyItem } from "./empty-mass.ts";
import { envelopeFigures } from "./envelope-figures.ts";
import type { LoadFigures, LoadMoment, LoadPart, LoadState } from "./figures.ts";
import { type FuelThen, loadParts } from "./load-parts.ts";
import { loadState } from "./load-state.ts";
import { type TanksAboard, tanksAboard } from "./tanks-aboard.ts";
import { pathBetween, volumesAt_m3, type WholeBurn, wholeBurn } from "./whole-burn.ts";

type LoadBook = Pick<Book, "loading" | "fuel" | "gauges">;

const NOTHING_KNOWN: LoadFigures = {
  status: "open",
  states: [],
  path: [],
  stations: [],
  groups: [],
  tanks: [],
  fuel: {
    density_kgPerM3: undefined,
    measured: false,
    usable_kg: undefined,
    taxi_kg: undefined,
    trip_kg: undefined,
  },
  knowledge: [],
  faults: [],
  missing: [{ part: "book-loading", what: "where mass may lie and what the whole may weigh, in the book" }],
  complete: false,
};

const faultsOfEnvelope = new WeakMap<LoadEnvelope, string | undefined>();

/** What is wrong with an envelope of the book, in words; looked for once. */
function faultOf(envelope: LoadEnvelope): string | undefined {
  if (!faultsOfEnvelope.has(envelope)) faultsOfEnvelope.set(envelope, envelopeFaults(envelope)[0]?.says);
  return faultsOfEnvelope.get(envelope);
}

interface InForce {
  readonly envelope: LoadEnvelope | undefined;
  readonly faults: readonly InputFault[];
}

/** The envelope that the plan names, or the book's first; none where that is not in the book or is no envelope. */
function envelopeInForce(loading: Loading, plan: FlightPlan): InForce {
  const named = plan.load?.envelope;
  const found = named === undefined ? loading.envelopes[0] : loading.envelopes.find(({ id }) => id === named);
  const id = named ?? found?.id ?? "";
  const fault = (says: string): InForce => ({
    envelope: undefined,
    faults: [{ where: { kind: "envelope", id }, says }],
  });
  if (found === undefined) {
    const there = loading.envelopes.map((one) => one.id).join(", ");
    return fault(`Envelope: expected one of the book (${there}), received "${id}"`);
  }
  const wrong = faultOf(found);
  return wrong === undefined
    ? { envelope: found, faults: [] }
    : fault(`Envelope "${found.name}" of the book: ${wrong}`);
}

/** Of what has no tank: any density does, nothing is in it. */
const NO_FUEL: ReturnType<typeof densityOf> = {
  density_kgPerM3: 1,
  temperature_K: undefined,
  measured: false,
  faults: [],
  missing: [],
};
const NOTHING_BURNT: ReturnType<typeof plannedBurn> = {
  time_s: undefined,
  taxi_kg: 0,
  taxiGiven: false,
  trip_kg: 0,
  tripGiven: false,
  tripMost_kg: 0,
  alternate_kg: 0,
  contingency_kg: 0,
  contingency_1: 0,
  extra_kg: 0,
  faults: [],
  missing: [],
};

/** The burn, or why the book's tanks lead to none. */
function burnOf(
  book: LoadBook,
  plan: FlightPlan,
  items: Parameters<typeof wholeBurn>[0],
  { tanks }: TanksAboard,
  density_kgPerM3: number | undefined,
  parts: Parameters<typeof wholeBurn>[4],
): { readonly burn?: WholeBurn; readonly missing: readonly MissingPart[] } {
  const order = tanks.length === 0 ? [] : book.fuel?.order;
  if (density_kgPerM3 === undefined || order === undefined || plan.load === undefined) return { missing: [] };
  try {
    const burn = wholeBurn(items, tanks, density_kgPerM3, order, parts);
    return burn === undefined ? { missing: [] } : { burn, missing: [] };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return {
      missing: [
        { part: "book-tanks", what: `tanks that can be reckoned with, in the book: ${error.message}` },
      ],
    };
  }
}

const largest = (states: readonly BurnState[], value: (state: BurnState) => number): number =>
  states.reduce((most, state) => Math.max(most, Math.abs(value(state))), 0);

const tankFigures = (
  loading: Loading,
  { tanks, said }: TanksAboard,
  density_kgPerM3: number | undefined,
  burn: WholeBurn | undefined,
): LoadFigures["tanks"] =>
  loading.tanks.map(({ id, name, side, capacity_m3, unusable_m3 }) => {
    const volume_m3 = said.has(id) ? tanks.find((tank) => tank.id === id)?.volume_m3 : undefined;
    const isKnown = volume_m3 !== undefined && density_kgPerM3 !== undefined;
    return {
      id,
      name,
      side,
      capacity_m3,
      unusable_m3,
      volume_m3,
      mass_kg: isKnown ? volume_m3 * density_kgPerM3 : undefined,
      atLanding_m3: isKnown ? burn?.landing?.volumes_m3[id] : undefined,
    };
  });

const nameOfTank = ({ tanks }: Loading, id: string): string =>
  tanks.find((tank) => tank.id === id)?.name ?? id;

const leastChance = (states: readonly LoadState[]): number | undefined =>
  states.length === 0 ? undefined : Math.min(...states.map(({ chance_1 }) => chance_1));

/** The figures together with what they were made from, for ways out. */
export interface WorkedLoad {
  readonly figures: LoadFigures;
  readonly aboard: readonly Aboard[];
  readonly burn?: WholeBurn;
}

/**
 * The load of a flight: everything that the screen shows, from the book and the plan alone. What cannot be is named at
 * its place and what is not there is named too; with either, a total is never clear.
 *
 * @param plan values as a person typed them, in any unit of their dimension
 */
export const loadFigures = (book: LoadBook, plan: FlightPlan): LoadFigures => workLoad(book, plan).figures;

/** `loadFigures`, with what they were made from. */
export function workLoad(book: LoadBook, plan: FlightPlan): WorkedLoad {
  const { loading } = book;
  if (loading === undefined) return { figures: NOTHING_KNOWN, aboard: [] };
  const load = plan.load;
  const people = allAboard(loading, load);
  const tanks = tanksAboard(loading, load);
  const inForce = envelopeInForce(loading, plan);
  // a glider has nothing to burn: neither its density nor how long it flies moves its mass
  const isGlider = loading.tanks.length === 0;
  const density = isGlider ? NO_FUEL : densityOf(book, plan);
  const planned = isGlider ? NOTHING_BURNT : plannedBurn(book, plan, density.density_kgPerM3);
  const empty = emptyInForce(loading);
  const items = [emptyItem(empty), ...people.aboard.map(asLoadItem)];
  const made = burnOf(book, plan, items, tanks, density.density_kgPerM3, planned);
  const { burn } = made;
  const ofPeople = people.faults.length === 0 && people.missing.length === 0;
  const ofFuel = tanks.faults.length === 0 && tanks.missing.length === 0 && burn !== undefined;
  const complete = ofPeople && ofFuel;
  const { envelope } = inForce;

  const doubt = doubtOf(people.aboard);
  const gear_kgm = loading.gearMoment_kgm ?? 0;
  const partsWith = (volumes_m3: FuelThen["volumes_m3"], gearUp: boolean): readonly LoadPart[] => {
    const { density_kgPerM3 = 0 } = density; // no burn without one, and no fuel of which this is asked
    const named = tanks.tanks.map((tank) => ({ ...tank, name: nameOfTank(loading, tank.id) }));
    const fuel = { tanks: named, volumes_m3, density_kgPerM3 };
    return loadParts({ empty, aboard: people.aboard }, fuel, gearUp ? gear_kgm : 0);
  };
  const stateAt = (at: LoadMoment, state: BurnState | undefined): readonly LoadState[] => {
    const density_kgPerM3 = density.density_kgPerM3;
    if (state === undefined || envelope === undefined || density_kgPerM3 === undefined) return [];
    const whole = withFuel(doubt, book, tanks.tanks, state.volumes_m3, density_kgPerM3);
    const parts = whenAsked(() => partsWith(state.volumes_m3, false));
    return [loadState(loading, envelope, at, state, doubted(state, whole), complete, parts)];
  };
  const dry = loadedState(items);
  const zeroFuel: readonly LoadState[] =
    envelope === undefined
      ? []
      : [
          loadState(
            loading,
            envelope,
            "zero-fuel",
            { ...dry, fuel_kg: 0 },
            doubted(dry, doubt),
            ofPeople,
            whenAsked(() => loadParts({ empty, aboard: people.aboard }, undefined, 0)),
          ),
        ];
  const states = [
    ...zeroFuel,
    ...stateAt("ramp", burn?.ramp),
    ...stateAt("take-off", burn?.takeOff),
    ...stateAt("landing", burn?.landing),
    ...stateAt("alternate", burn?.alternate),
  ];
  const flown = states.filter(({ at }) => at !== "zero-fuel" && at !== "ramp");
  const inEnvelope =
    envelope === undefined
      ? undefined
      : envelopeFigures(envelope, burn, gear_kgm, complete, leastChance(flown), (burnt_kg, gearUp) =>
          burn === undefined ? [] : partsWith(volumesAt_m3(burn, burnt_kg), gearUp),
        );
  const faulty = faultyStations(load?.items ?? [], people.faults);
  const stations = stationFigures(loading, people.aboard, faulty);
  const groups = groupFigures(loading, people.aboard, faulty);
  const end = burn?.alternate ?? burn?.landing ?? burn?.dry;
  const inAir = burn === undefined || end === undefined ? [] : pathBetween(burn.path, burn.ramp, end).states;
  const lateral = held(
    loading.limits.lateralMoment_kgm,
    largest(inAir, (one) => one.lateralMoment_kgm),
    inAir,
    complete,
  );
  const imbalance = held(
    loading.limits.fuelImbalance_kg,
    largest(inAir, (one) => one.imbalance_kg),
    inAir,
    ofFuel,
  );
  const lightest = flown.length === 0 ? undefined : Math.min(...flown.map(({ mass_kg }) => mass_kg));
  const minimum = atLeast(loading.limits.minimumFlight_kg, lightest, complete);
  const faults = [
    ...people.faults,
    ...tanks.faults,
    ...inForce.faults,
    ...density.faults,
    ...planned.faults,
    ...totaliserOf(book, plan, density.density_kgPerM3).faults,
  ];
  const missing = unique([
    ...people.missing,
    ...tanks.missing,
    ...density.missing,
    ...planned.missing,
    ...made.missing,
  ]);
  const figures: LoadFigures = {
    status: worstStatus([
      ...states.map(({ status }) => status),
      ...stations.map(({ status }) => status),
      ...groups.map(({ limit }) => limit.status),
      ...(inEnvelope === undefined ? [] : [inEnvelope.status]),
      ...[minimum, lateral, imbalance].flatMap((one) => (one === undefined ? [] : [one.status])),
      faults.length > 0 || missing.length > 0 ? "open" : "clear",
    ]),
    empty: { mass_kg: empty.mass_kg, arm_m: empty.arm_m, on: empty.on, by: empty.by },
    states,
    ...(inEnvelope === undefined ? {} : { envelope: inEnvelope }),
    path: (burn?.path.states ?? []).map(({ burnt_kg, mass_kg, arm_m }) => ({ burnt_kg, mass_kg, arm_m })),
    stations,
    groups,
    tanks: tankFigures(loading, tanks, density.density_kgPerM3, burn),
    fuel: {
      density_kgPerM3: density.density_kgPerM3,
      measured: density.measured,
      usable_kg: ofFuel ? burn?.ramp.fuel_kg : undefined,
      taxi_kg: planned.taxi_kg,
      trip_kg: planned.trip_kg,
    },
    ...(minimum === undefined ? {} : { minimum }),
    ...(lateral === undefined ? {} : { lateral }),
    ...(imbalance === undefined ? {} : { imbalance }),
    knowledge: people.aboard.map(({ knowledge }) => knowledge),
    faults,
    missing,
    complete: complete && inForce.faults.length === 0,
  };
  return { figures, aboard: people.aboard, ...(burn === undefined ? {} : { burn }) };
}

const held = (
  limit: number | undefined,
  value: number,
  states: readonly BurnState[],
  complete: boolean,
): Limited | undefined =>
  limit === undefined || states.length === 0 ? undefined : limited(value, limit, { complete });

/** Held against a least mass: what is left is what it is heavier by. Something not known would only add to it. */
function atLeast(
  least_kg: number | undefined,
  mass_kg: number | undefined,
  complete: boolean,
): Limited | undefined {
  if (least_kg === undefined || mass_kg === undefined) return undefined;
  const { left, status } = limited(-mass_kg, -least_kg, { complete });
  return { value: mass_kg, limit: least_kg, left, status: complete ? status : "open" };
}

/** Stations of which an item cannot be, so that what they carry is not known. */
const faultyStations = (
  items: readonly { readonly id: string; readonly station: string }[],
  faults: readonly InputFault[],
): ReadonlySet<string> =>
  new Set(
    items.filter(({ id }) => faults.some(({ where }) => where.id === id)).map(({ station }) => station),
  );

const unique = (missing: readonly MissingPart[]): readonly MissingPart[] =>
  missing.filter(({ what }, at) => missing.findIndex((other) => other.what === what) === at);
