import { type TankFuel, tankArm_m } from "@witnessmark/engine";
import type { Aboard } from "./aboard.ts";
import type { EmptyInForce } from "./empty-mass.ts";
import type { LoadPart } from "./figures.ts";

/** What a loaded aircraft is made of, but for its fuel. */
export interface Loaded {
  readonly empty: EmptyInForce;
  readonly aboard: readonly Aboard[];
}

/** What is in the tanks at one moment, with what cannot be used. */
export interface FuelThen {
  readonly tanks: readonly (TankFuel & { readonly name: string })[];
  readonly volumes_m3: Readonly<Record<string, number>>;
  readonly density_kgPerM3: number;
}

const part = (what: string, mass_kg: number, arm_m: number): LoadPart => ({
  what,
  mass_kg,
  arm_m,
  moment_kgm: mass_kg * arm_m,
});

/** The usable fuel of a tank: the empty mass has the rest, so its arm is that of all of it less that of the rest. */
function fuelPart(tank: FuelThen["tanks"][number], volume_m3: number, density_kgPerM3: number): LoadPart {
  const rest_m3 = Math.min(volume_m3, tank.unusable_m3);
  const usable_m3 = volume_m3 - rest_m3;
  const moment_m4 = volume_m3 * tankArm_m(tank, volume_m3) - rest_m3 * tankArm_m(tank, rest_m3);
  const arm_m = usable_m3 > 0 ? moment_m4 / usable_m3 : tankArm_m(tank, volume_m3);
  return part(`${tank.name}, usable`, density_kgPerM3 * usable_m3, arm_m);
}

/** Everything that is added up for a mass and its arm, in the order in which one would write it down. */
export function loadParts(
  { empty, aboard }: Loaded,
  fuel: FuelThen | undefined,
  gear_kgm: number,
): readonly LoadPart[] {
  return [
    part(`Empty, ${empty.on}`, empty.mass_kg, empty.arm_m),
    ...aboard
      .toSorted((a, b) => a.station.arm_m - b.station.arm_m)
      .map(({ what, station, mass_kg }) =>
        part(what.trim() === "" ? station.name : `${what}, ${station.name}`, mass_kg, station.arm_m),
      ),
    ...(fuel?.tanks.map((tank) =>
      fuelPart(tank, fuel.volumes_m3[tank.id] ?? tank.volume_m3, fuel.density_kgPerM3),
    ) ?? []),
    ...(gear_kgm === 0 ? [] : [{ what: "Gear up", mass_kg: 0, arm_m: undefined, moment_kgm: gear_kgm }]),
  ];
}
