import type { Gauge, Loading, Tank } from "@witnessmark/book";
import { differenceToSI, formatMeasure, standardUncertainty, type TankFuel } from "@witnessmark/engine";
import type { PlannedLoad } from "@witnessmark/ledger";
import type { InputFault, MissingPart } from "../figures.ts";
import { given, readText } from "../given.ts";
import { remembered } from "../remembered.ts";

export interface TanksAboard {
  /** Every tank of the book; one of which nothing sound was said holds what cannot be used. */
  readonly tanks: readonly TankFuel[];
  /** Ids of the tanks of which something sound was said. */
  readonly said: ReadonlySet<string>;
  readonly faults: readonly InputFault[];
  readonly missing: readonly MissingPart[];
}

const litres = (volume_m3: number): string => formatMeasure(volume_m3, "L", 1);

export const inWords = (name: string): string => `the ${name.charAt(0).toLowerCase()}${name.slice(1)}`;

const rememberedTanks = remembered<TanksAboard>();

/** What a plan says of each tank of the book. */
export const tanksAboard = (loading: Loading, load: PlannedLoad | undefined): TanksAboard =>
  load === undefined
    ? readTanks(loading, [])
    : rememberedTanks(load.fuel, [loading], () => readTanks(loading, load.fuel));

function readTanks(loading: Loading, fuel: PlannedLoad["fuel"]): TanksAboard {
  const faults: InputFault[] = [];
  const volumes = new Map<string, number>();
  const seen = new Set<string>();
  for (const { tank: id, volume } of fuel) {
    const fault = (says: string): void => {
      faults.push({ where: { kind: "tank", id }, says });
    };
    const tank = loading.tanks.find((one) => one.id === id);
    if (tank === undefined) {
      fault(`Fuel: expected a tank of the book, received "${id}"`);
      continue;
    }
    const read = given(volume, ["volume"], tank.name);
    if (!read.ok) fault(read.says);
    else if (seen.has(id)) fault(`${tank.name}: expected what is in it once, received it twice`);
    else if (read.valueSI > tank.capacity_m3 * (1 + 1e-12))
      fault(
        `${tank.name}: expected at most ${litres(tank.capacity_m3)}, which is all it holds, received ${readText(volume)}`,
      );
    else volumes.set(id, Math.min(read.valueSI, tank.capacity_m3));
    seen.add(id);
  }
  const wrong = new Set(faults.map(({ where }) => where.id));
  for (const id of wrong) volumes.delete(id);
  return {
    tanks: loading.tanks.map((tank) => asTank(tank, volumes.get(tank.id) ?? tank.unusable_m3)),
    said: new Set(volumes.keys()),
    faults,
    missing: loading.tanks
      .filter(({ id }) => !seen.has(id))
      .map(({ id, name }) => ({ part: `tank:${id}`, what: `what is in ${inWords(name)}` })),
  };
}

const asTank = (tank: Tank, volume_m3: number): TankFuel => ({
  id: tank.id,
  side: tank.side,
  arms: tank.arms,
  lateralArm_m: tank.lateralArm_m,
  unusable_m3: tank.unusable_m3,
  volume_m3,
});

const rememberedUncertainty = remembered<number>();

/** Standard uncertainty of a volume that is read on a gauge; zero without one. */
export const gaugeUncertainty_m3 = (gauge: Gauge | undefined): number =>
  gauge === undefined || gauge.dimension !== "volume"
    ? 0
    : rememberedUncertainty(gauge, [], () =>
        standardUncertainty({
          accuracy: differenceToSI(gauge.accuracy.value, gauge.accuracy.unit),
          resolution: differenceToSI(gauge.resolution.value, gauge.resolution.unit),
          coverage: gauge.coverage,
        }),
      );
