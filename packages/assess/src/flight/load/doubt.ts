import type { Book } from "@witnessmark/book";
import { type LoadedState, type TankFuel, tankArm_m, type UncertainState } from "@witnessmark/engine";
import { remembered } from "../remembered.ts";
import type { Aboard } from "./aboard.ts";
import { gaugeUncertainty_m3 } from "./tanks-aboard.ts";

/** What the true masses are likely to be beyond those that were said, and how far off: sums over what is aboard. */
export interface Doubt {
  readonly bias_kg: number;
  readonly bias_kgm: number;
  /** Variance of mass, covariance of mass and moment, variance of moment. */
  readonly mass_kg2: number;
  readonly both_kg2m: number;
  readonly moment_kg2m2: number;
}

const NONE: Doubt = { bias_kg: 0, bias_kgm: 0, mass_kg2: 0, both_kg2m: 0, moment_kg2m2: 0 };

const more = (sum: Doubt, u_kg: number, arm_m: number, bias_kg: number): Doubt => ({
  bias_kg: sum.bias_kg + bias_kg,
  bias_kgm: sum.bias_kgm + bias_kg * arm_m,
  mass_kg2: sum.mass_kg2 + u_kg ** 2,
  both_kg2m: sum.both_kg2m + u_kg ** 2 * arm_m,
  moment_kg2m2: sum.moment_kg2m2 + (u_kg * arm_m) ** 2,
});

/** Of people and bags, by how each is known. The empty aircraft was weighed, and is taken as it was found. */
export const doubtOf = (aboard: readonly Aboard[]): Doubt =>
  aboard.reduce(
    (sum, { knowledge, station }) =>
      more(sum, knowledge.standardUncertainty_kg, station.arm_m, knowledge.bias_kg),
    NONE,
  );

/** How well what is in a tank is known, and where it lies. */
interface TankDoubt {
  readonly u_kg: number;
  readonly arm_m: number;
}

/** Of the volumes of one state of a burn: who and what is aboard moves none of it. */
const rememberedTanks = remembered<readonly TankDoubt[]>();

/** With the fuel: each tank is known as its gauge is read; one without a gauge is taken as said. */
export function withFuel(
  doubt: Doubt,
  book: Pick<Book, "loading" | "gauges">,
  tanks: readonly TankFuel[],
  volumes_m3: Readonly<Record<string, number>>,
  density_kgPerM3: number,
): Doubt {
  const { loading, gauges } = book;
  const ofTanks = rememberedTanks(volumes_m3, [loading, gauges, tanks, density_kgPerM3], () =>
    tanks.map((tank) => {
      const gauge = loading?.tanks.find(({ id }) => id === tank.id)?.gauge;
      const u_m3 = gaugeUncertainty_m3(gauge === undefined ? undefined : gauges.get(gauge));
      return { u_kg: u_m3 * density_kgPerM3, arm_m: tankArm_m(tank, volumes_m3[tank.id] ?? tank.volume_m3) };
    }),
  );
  return ofTanks.reduce((sum, { u_kg, arm_m }) => more(sum, u_kg, arm_m, 0), doubt);
}

/** A loaded aircraft as a pair of normal variables. */
export const doubted = (
  state: Pick<LoadedState, "mass_kg" | "moment_kgm">,
  doubt: Doubt,
): UncertainState => ({
  mass_kg: state.mass_kg + doubt.bias_kg,
  moment_kgm: state.moment_kgm + doubt.bias_kgm,
  massUncertainty_kg: Math.sqrt(doubt.mass_kg2),
  momentUncertainty_kgm: Math.sqrt(doubt.moment_kg2m2),
  covariance_kg2m: doubt.both_kg2m,
});
