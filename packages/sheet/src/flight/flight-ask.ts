import {
  type Assessment,
  type FieldFigures,
  type FieldRole,
  type Flight,
  type FuelFigures,
  fieldFigures,
  fuelFigures,
  fuelSinceLastFlight,
  type LoadFigures,
  leavingAt,
  loadFigures,
  type OxygenFigures,
  oxygenFigures,
  type TimedFigure,
  tankReconciled,
  timedFigures,
  type Verdict,
} from "@witnessmark/assess";
import type { Book } from "@witnessmark/book";
import type { AircraftState, FlightPlan, RecordedReading } from "@witnessmark/ledger";

/** The figures of one planned flight, as they were at the moment of its assessment. */
export interface FlightAsk {
  readonly book: Book;
  readonly flight: Flight;
  readonly plan: FlightPlan;
  readonly load: LoadFigures;
  readonly fuel: FuelFigures;
  readonly oxygen: OxygenFigures;
  /** What runs out by hours flown, nearest its end first. */
  readonly byHours: readonly TimedFigure[];
  readonly field: (role: FieldRole) => FieldFigures | undefined;
  readonly verdict: (id: string) => Verdict | undefined;
}

/** Readings count for the figures where the assessment counted them: it names them as its evidence. */
function countedReadings(
  state: AircraftState,
  verdicts: readonly Verdict[],
  check: string,
): RecordedReading | undefined {
  const named = new Set(verdicts.flatMap(({ evidence }) => evidence));
  return state.checks.get(check)?.readings.findLast(({ event }) => named.has(event));
}

function readTanks(book: Book, load: LoadFigures, readingOf: (check: string) => RecordedReading | undefined) {
  const { density_kgPerM3 } = load.fuel;
  return load.tanks.flatMap(({ id, volume_m3 }) => {
    const tank = book.loading?.tanks.find((one) => one.id === id);
    if (tank === undefined || volume_m3 === undefined || density_kgPerM3 === undefined) return [];
    return tankReconciled(book, tank, volume_m3, density_kgPerM3, (check) => readingOf(check.id)) ?? [];
  });
}

/** The arithmetic from the last flight, where the assessment counted with all of it. */
function countedLast(book: Book, state: AircraftState, load: LoadFigures, verdicts: readonly Verdict[]) {
  const named = new Set(verdicts.flatMap(({ evidence }) => evidence));
  const last = fuelSinceLastFlight(book, state, load.fuel.density_kgPerM3);
  return last?.evidence.every((event) => named.has(event)) === true ? last : undefined;
}

/** Works the figures of an assessment's flight out, from the same book, ledger and moment; undefined without a plan. */
export function askFlight(book: Book, state: AircraftState, assessment: Assessment): FlightAsk | undefined {
  const { flight, verdicts } = assessment;
  const plan = flight?.plan;
  if (flight === null || plan === undefined) return undefined;
  const now_ms = Date.parse(assessment.at);
  const leaving = leavingAt(flight, now_ms);
  const ofFuel = verdicts.filter(({ topic }) => topic === "fuel");
  const ofOxygen = verdicts.filter(({ topic }) => topic === "oxygen");
  const load = loadFigures(book, plan);
  const tanks = readTanks(book, load, (check) => countedReadings(state, ofFuel, check));
  const cylinder = book.oxygen?.cylinder.check;
  const massAt = (moment: "take-off" | "landing"): number | undefined =>
    load.complete ? load.states.find(({ at }) => at === moment)?.mass_kg : undefined;
  const masses = { takeOff_kg: massAt("take-off"), landing_kg: massAt("landing") };
  const fields = new Map<FieldRole, FieldFigures | undefined>();
  const byId = new Map(verdicts.map((verdict) => [verdict.id, verdict]));
  return {
    book,
    flight,
    plan,
    load,
    fuel: fuelFigures(book, leaving, plan, load, tanks, countedLast(book, state, load, ofFuel)),
    oxygen: oxygenFigures(
      book,
      plan,
      cylinder === undefined ? undefined : countedReadings(state, ofOxygen, cylinder),
    ),
    byHours: timedFigures({
      book,
      state,
      flight: leaving,
      clock: { now_ms, offset_min: 0 }, // hours know no local day
      pilot: undefined,
    }).filter(({ nearest }) => nearest?.by === "counter" && nearest.counter.unit === "h"),
    field: (role) => {
      if (!fields.has(role)) fields.set(role, fieldFigures(book, flight, role, now_ms, { masses }));
      return fields.get(role);
    },
    verdict: (id) => byId.get(id),
  };
}
