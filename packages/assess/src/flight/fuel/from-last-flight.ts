import type { Book, Check, Tank } from "@witnessmark/book";
import { fuelFromLastFlight, toSI, UNITS } from "@witnessmark/engine";
import type { AircraftState, Read, RecordedReading, Servicing } from "@witnessmark/ledger";
import { gaugeUncertainty_m3 } from "../load/tanks-aboard.ts";
import { remembered } from "../remembered.ts";
import { checksOfTank } from "./tank-readings.ts";

/** What is in the tanks by what was left in them after the last flight, and what was filled in or drained since. */
export interface LastFlightFuel {
  /** All that can be used. */
  readonly fuel_kg: number;
  readonly standardUncertainty_kg: number;
  readonly left_kg: number;
  readonly added_kg: number;
  readonly drained_kg: number;
  /** The readings and the servicings that it rests on. */
  readonly evidence: readonly string[];
}

/** Meters of fuel trucks and pumps are taken as within one per cent of what they counted. From memory: no finer than that. */
const METER_1 = 0.01;
/** Of a bound, taken as equally likely all over. @source JCGM 100:2008, 4.3.7 */
const BOUND = Math.sqrt(3);
/** A fuelling and its amount are one thing when they are told within so long of each other. */
const SAME_FUELLING_MS = 30 * 60_000;

const at_ms = ({ recordedAt }: { readonly recordedAt: string }): number => Date.parse(recordedAt);

/** When the last flight ended, as a flight that was made or somebody who only said that it was flown has it. */
function lastLanding_ms({ flightsMade, happenings }: AircraftState): number | undefined {
  const all = [
    ...flightsMade.map(({ landing }) => Date.parse(landing)),
    ...happenings.filter(({ kind }) => kind === "flown").map((flown) => flown.at_ms),
  ].filter(Number.isFinite);
  return all.length === 0 ? undefined : all.reduce((last, one) => Math.max(last, one));
}

const isFuel = ({ of }: Servicing): boolean => of === "fuel";

interface LeftIn {
  readonly volume_m3: number;
  readonly uncertainty_m3: number;
  readonly reading: RecordedReading;
}

/** The closest reading of a tank after a landing and before anything went in or out. */
function leftIn(
  book: Pick<Book, "checks" | "gauges">,
  tank: Tank,
  { checks }: AircraftState,
  from_ms: number,
  until_ms: number,
): LeftIn | undefined {
  const found = checksOfTank(book, tank).flatMap(({ id }: Check): readonly LeftIn[] => {
    const reading = checks
      .get(id)
      ?.readings.findLast((one) => at_ms(one) >= from_ms && at_ms(one) < until_ms);
    const gauge = reading === undefined ? undefined : book.gauges.get(reading.gauge);
    if (reading === undefined || gauge === undefined || UNITS[reading.read.unit].dimension !== "volume")
      return [];
    const volume_m3 = toSI(reading.read.value, reading.read.unit);
    const uncertainty_m3 = gaugeUncertainty_m3(gauge);
    return volume_m3 >= 0 && uncertainty_m3 > 0 ? [{ volume_m3, uncertainty_m3, reading }] : [];
  });
  return found.toSorted((a, b) => a.uncertainty_m3 - b.uncertainty_m3)[0];
}

/** Kilograms; undefined where no amount was written down, or one that is none of fuel. */
function amount_kg(amount: Read | undefined, density_kgPerM3: number): number | undefined {
  if (amount === undefined || !(amount.value >= 0)) return undefined;
  const { dimension } = UNITS[amount.unit];
  const valueSI = toSI(amount.value, amount.unit);
  return dimension === "mass" ? valueSI : dimension === "volume" ? valueSI * density_kgPerM3 : undefined;
}

/**
 * The fuel by arithmetic from the last flight. Undefined where it cannot be reckoned: no flight on the record, a tank
 * that nobody read after it, or fuel that went in or out without its amount.
 */
export const fuelSinceLastFlight = (
  book: Pick<Book, "checks" | "gauges" | "loading">,
  state: AircraftState,
  density_kgPerM3: number | undefined,
): LastFlightFuel | undefined =>
  rememberedLast(state, [book, density_kgPerM3], () => reckon(book, state, density_kgPerM3));

const rememberedLast = remembered<LastFlightFuel | undefined>();

function reckon(
  book: Pick<Book, "checks" | "gauges" | "loading">,
  state: AircraftState,
  density_kgPerM3: number | undefined,
): LastFlightFuel | undefined {
  const landed_ms = lastLanding_ms(state);
  const tanks = book.loading?.tanks ?? [];
  if (landed_ms === undefined || density_kgPerM3 === undefined || tanks.length === 0) return undefined;
  const since = state.servicings.filter((one) => isFuel(one) && one.at_ms >= landed_ms);
  const fuelled = state.happenings.filter(({ kind, at_ms: when }) => kind === "fuelled" && when >= landed_ms);
  const untold = fuelled.some(({ at_ms: when }) =>
    since.every((one) => Math.abs(one.at_ms - when) > SAME_FUELLING_MS),
  );
  if (untold) return undefined;
  const moved_ms = [...since, ...fuelled].map((one) => one.at_ms);
  const until_ms = moved_ms.reduce((first, one) => Math.min(first, one), Number.POSITIVE_INFINITY);
  const left = tanks.map((tank) => leftIn(book, tank, state, landed_ms, until_ms));
  const known = left.filter((one) => one !== undefined);
  if (known.length < tanks.length) return undefined;
  let [added_kg, drained_kg, variance_kg2] = [0, 0, 0];
  for (const { what, amount } of since) {
    const moved_kg = amount_kg(amount, density_kgPerM3);
    if (moved_kg === undefined || (what !== "refilled" && what !== "drained")) return undefined;
    if (what === "refilled") added_kg += moved_kg;
    else drained_kg += moved_kg;
    variance_kg2 += ((METER_1 * moved_kg) / BOUND) ** 2;
  }
  const unusable_m3 = tanks.reduce((sum, tank) => sum + tank.unusable_m3, 0);
  const volume_m3 = known.reduce((sum, one) => sum + one.volume_m3, 0);
  const left_kg = Math.max(0, (volume_m3 - unusable_m3) * density_kgPerM3);
  variance_kg2 += known.reduce((sum, one) => sum + (one.uncertainty_m3 * density_kgPerM3) ** 2, 0);
  return {
    fuel_kg: fuelFromLastFlight.compute({ left_kg, added_kg, drained_kg }),
    standardUncertainty_kg: Math.sqrt(variance_kg2),
    left_kg,
    added_kg,
    drained_kg,
    evidence: [...known.map(({ reading }) => reading.event), ...since.map(({ event }) => event)],
  };
}
