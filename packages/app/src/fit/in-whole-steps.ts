import type { FitInput, LastResort } from "@witnessmark/fit";

type LessFuel = NonNullable<LastResort["lessFuel"]>;

/** A tenth of a litre. */
const STEP_m3 = 1e-4;

/**
 * Less fuel in tenths of a litre in each tank, rounded down; as it is where so little less would be out of limits again.
 *
 * @param breaches what a load breaks
 */
export function inWholeSteps(
  less: LessFuel,
  input: FitInput,
  breaches: (input: FitInput) => readonly unknown[],
): LessFuel {
  const volumes_m3 = Object.fromEntries(
    Object.entries(less.volumes_m3).map(([id, volume_m3]) => [
      id,
      Number((Math.floor(volume_m3 / STEP_m3 + 1e-6) * STEP_m3).toPrecision(12)),
    ]),
  );
  const moved = new Map(less.moves.map(({ item, to }) => [item, to]));
  const then: FitInput = {
    ...input,
    tanks: input.tanks.map((tank) => ({ ...tank, volume_m3: volumes_m3[tank.id] ?? tank.volume_m3 })),
    items: input.items.map((item) => ({ ...item, at: moved.get(item.id) ?? item.at })),
  };
  if (breaches(then).length > 0) return less;
  const taken_m3 = input.tanks.reduce(
    (sum, { id, volume_m3 }) => sum + volume_m3 - (volumes_m3[id] ?? volume_m3),
    0,
  );
  return { ...less, volumes_m3, less_kg: taken_m3 * input.density_kgPerM3 };
}
