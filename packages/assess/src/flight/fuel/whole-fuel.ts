import type { Book } from "@witnessmark/book";
import { type ReconciledFuel, reconcileFuel } from "@witnessmark/engine";
import type { FlightPlan, Status } from "@witnessmark/ledger";
import type { LastFlightFuel } from "./from-last-flight.ts";
import type { TankReading, TankReconciled } from "./tank-readings.ts";
import { totaliserOf } from "./totaliser.ts";

/** One way of knowing all the fuel that can be used. */
export interface WholeSource {
  readonly id: string;
  /** `Totaliser`, or the gauge by its name. */
  readonly name: string;
  readonly fuel_kg: number;
  readonly standardUncertainty_kg: number;
}

/** What gauges, dips and the totaliser say of all tanks, together and against the plan. */
export interface WholeFuel {
  readonly sources: readonly [WholeSource, ...WholeSource[]];
  readonly together: ReconciledFuel;
  readonly planned_kg: number;
  /** What the flight counts with: the least where they do not agree and none is told wrong; else all together. */
  readonly believed_kg: number;
  /** Planned beyond what is believed; below zero when less is planned. */
  readonly beyond_kg: number;
  readonly fits: boolean;
  /** The one way that alone does not fit the others. */
  readonly odd?: WholeSource;
  /** Of two that do not agree, the one that can be read more closely. */
  readonly finer?: WholeSource;
  /** How the arithmetic from the last flight goes, where it is one of the sources. */
  readonly last?: LastFlightFuel;
  readonly status: Extract<Status, "clear" | "caution">;
}

const COVERAGE = 1.96;
export const TOTALISER = "totaliser";
export const LAST_FLIGHT = "last-flight";

/** One gauge or stick over all tanks; nothing where it did not read each of them once. */
function byGauge(
  tanks: readonly TankReconciled[],
  unusable_kg: number,
  density_kgPerM3: number,
  isAll: boolean,
): readonly WholeSource[] {
  if (!isAll) return [];
  const all = tanks.flatMap(({ readings }) => readings);
  const gauges = [...new Set(all.map(({ reading }) => reading.gauge))];
  return gauges.flatMap((gauge): readonly WholeSource[] => {
    const each = tanks.map(({ readings }) => readings.filter(({ reading }) => reading.gauge === gauge));
    const read = each.flatMap((one): readonly TankReading[] => (one.length === 1 ? one : []));
    const [first] = read;
    if (first === undefined || read.length < tanks.length) return [];
    const volume_m3 = read.reduce((sum, one) => sum + one.volume_m3, 0);
    const variance = read.reduce((sum, one) => sum + one.standardUncertainty_m3 ** 2, 0);
    return [
      {
        id: gauge,
        name: first.gauge,
        fuel_kg: Math.max(0, volume_m3 * density_kgPerM3 - unusable_kg),
        standardUncertainty_kg: Math.sqrt(variance) * density_kgPerM3,
      },
    ];
  });
}

/**
 * All ways in which the whole of the fuel is known; undefined without a totaliser that was read and without anything to
 * reckon from the last flight, since each tank is told by itself.
 *
 * @param read each tank as it was read
 * @param planned_kg what can be used of what is planned
 * @param last by arithmetic from the last flight; a reading that counts today is no second way of its own
 */
export function wholeFuel(
  book: Pick<Book, "fuel" | "loading">,
  plan: Pick<FlightPlan, "load">,
  read: readonly TankReconciled[],
  planned_kg: number | undefined,
  density_kgPerM3: number | undefined,
  last?: LastFlightFuel,
): WholeFuel | undefined {
  const { shown } = totaliserOf(book, plan, density_kgPerM3);
  if (planned_kg === undefined || density_kgPerM3 === undefined) return undefined;
  const today = new Set(read.flatMap(({ readings }) => readings.map(({ reading }) => reading.event)));
  const reckoned = last?.evidence.some((event) => today.has(event)) === true ? undefined : last;
  if (shown === undefined && reckoned === undefined) return undefined;
  const tanks = book.loading?.tanks ?? [];
  const unusable_kg = tanks.reduce((sum, tank) => sum + tank.unusable_m3, 0) * density_kgPerM3;
  const [first, ...more]: readonly WholeSource[] = [
    ...(shown === undefined ? [] : [{ id: TOTALISER, name: "Totaliser", ...shown }]),
    ...byGauge(read, unusable_kg, density_kgPerM3, read.length === tanks.length),
    ...(reckoned === undefined
      ? []
      : [
          {
            id: LAST_FLIGHT,
            name: "From the last flight",
            fuel_kg: reckoned.fuel_kg,
            standardUncertainty_kg: reckoned.standardUncertainty_kg,
          },
        ]),
  ];
  // alone it speaks of the tanks before they are filled for this flight, and of nothing that was looked at
  if (first === undefined || first.id === LAST_FLIGHT) return undefined;
  const sources = [first, ...more] as const;
  const together = reconcileFuel(sources);
  const odd = sources.find(({ id }) => id === together.odd);
  const others = odd === undefined ? sources : sources.filter((one) => one !== odd);
  const trusted = odd === undefined ? together : reconcileFuel(others);
  const believed_kg = trusted.consistent ? trusted.fuel_kg : trusted.least_kg;
  const beyond_kg = planned_kg - believed_kg;
  const fits = trusted.consistent && Math.abs(beyond_kg) <= COVERAGE * trusted.standardUncertainty_kg + 1e-9;
  const [one, other] = sources;
  const finer =
    together.consistent || sources.length !== 2 || other === undefined
      ? undefined
      : one.standardUncertainty_kg <= other.standardUncertainty_kg
        ? one
        : other;
  return {
    sources,
    together,
    planned_kg,
    believed_kg,
    beyond_kg,
    fits,
    ...(odd === undefined ? {} : { odd }),
    ...(finer === undefined ? {} : { finer }),
    ...(reckoned === undefined ? {} : { last: reckoned }),
    status: together.consistent && fits ? "clear" : "caution",
  };
}
