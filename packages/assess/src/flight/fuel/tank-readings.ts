import type { Book, Check, Tank } from "@witnessmark/book";
import { type ReconciledFuel, reconcileFuel, toSI, UNITS } from "@witnessmark/engine";
import type { RecordedReading, Status } from "@witnessmark/ledger";
import { gaugeUncertainty_m3 } from "../load/tanks-aboard.ts";
import { remembered } from "../remembered.ts";

/** One reading of what is in a tank. */
export interface TankReading {
  readonly check: string;
  readonly gauge: string;
  readonly volume_m3: number;
  readonly standardUncertainty_m3: number;
  readonly reading: RecordedReading;
}

/** What the readings of one tank say, together and against the plan. */
export interface TankReconciled {
  readonly tank: string;
  readonly name: string;
  readonly readings: readonly TankReading[];
  readonly planned_m3: number;
  /** In kilograms. */
  readonly together: ReconciledFuel;
  /** What the plan says beyond the readings; below zero when it says less. */
  readonly beyond_m3: number;
  /** Whether the readings allow for what is planned. */
  readonly fits: boolean;
  readonly status: Extract<Status, "clear" | "caution">;
}

/** 95 % of a normal variable is within so many standard uncertainties. */
const COVERAGE = 1.96;

const rememberedChecks = remembered<readonly Check[]>();

/** The checks that read the contents of a tank: at its points, in a unit of volume. */
export const checksOfTank = ({ checks }: Pick<Book, "checks">, tank: Tank): readonly Check[] =>
  rememberedChecks(tank, [checks], () =>
    checks.filter(
      ({ point, reading }) =>
        reading !== undefined && reading.dimension === "volume" && tank.readAt.includes(point),
    ),
  );

/** @param readingOf the reading of a check that still counts */
export function tankReconciled(
  book: Pick<Book, "checks" | "gauges">,
  tank: Tank,
  planned_m3: number,
  density_kgPerM3: number,
  readingOf: (check: Check) => RecordedReading | undefined,
): TankReconciled | undefined {
  const readings = checksOfTank(book, tank).flatMap((check): readonly TankReading[] => {
    const reading = readingOf(check);
    const gauge = reading === undefined ? undefined : book.gauges.get(reading.gauge);
    if (reading === undefined || gauge === undefined || UNITS[reading.read.unit].dimension !== "volume")
      return [];
    const volume_m3 = toSI(reading.read.value, reading.read.unit);
    const standardUncertainty_m3 = gaugeUncertainty_m3(gauge);
    if (!(volume_m3 >= 0) || !(standardUncertainty_m3 > 0)) return [];
    return [{ check: check.id, gauge: gauge.name, volume_m3, standardUncertainty_m3, reading }];
  });
  if (readings.length === 0) return undefined;
  const together = reconcileFuel(
    readings.map(({ check, volume_m3, standardUncertainty_m3 }) => ({
      id: check,
      fuel_kg: volume_m3 * density_kgPerM3,
      standardUncertainty_kg: standardUncertainty_m3 * density_kgPerM3,
    })),
  );
  const beyond_m3 = planned_m3 - together.fuel_kg / density_kgPerM3;
  const fits = Math.abs(beyond_m3) <= (COVERAGE * together.standardUncertainty_kg) / density_kgPerM3 + 1e-9;
  return {
    tank: tank.id,
    name: tank.name,
    readings,
    planned_m3,
    together,
    beyond_m3,
    fits,
    status: together.consistent && fits ? "clear" : "caution",
  };
}
