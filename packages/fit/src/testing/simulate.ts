import type { FitInput, FitTank } from "../fit-input.ts";

/**
 * A second opinion: the flight flown in many small steps, with its own arithmetic, nothing of the engine's. It cannot
 * see between its steps, so it says how far inside or outside its worst step is.
 */

const interpolated = ({ arms }: FitTank, volume: number): number => {
  const above = arms.findIndex(({ volume_m3 }) => volume_m3 >= volume);
  const high = arms[Math.max(1, above)];
  const low = arms[Math.max(1, above) - 1];
  if (high === undefined || low === undefined) throw new Error("a table of two rows at least");
  return low.arm_m + ((high.arm_m - low.arm_m) * (volume - low.volume_m3)) / (high.volume_m3 - low.volume_m3);
};

/** The contents of the tanks when so much has burnt. */
export function burntDown(
  input: FitInput,
  start: ReadonlyMap<string, number>,
  burnt_kg: number,
): ReadonlyMap<string, number> {
  const volumes = new Map(start);
  let left = burnt_kg / input.density_kgPerM3;
  const unusable = (id: string): number => input.tanks.find((tank) => tank.id === id)?.unusable_m3 ?? 0;
  for (const list of input.order) {
    for (;;) {
      const wet = list.filter((id) => (volumes.get(id) ?? 0) - unusable(id) > 1e-12);
      if (wet.length === 0 || left <= 1e-15) break;
      const least = Math.min(...wet.map((id) => (volumes.get(id) ?? 0) - unusable(id)), left / wet.length);
      for (const id of wet) volumes.set(id, (volumes.get(id) ?? 0) - least);
      left -= least * wet.length;
    }
  }
  return volumes;
}

/** Above zero inside: the distance to the nearest edge, arm and mass as shares of 1 m and 1,000 kg. */
function insideBy(points: FitInput["envelopes"][number]["points"], arm: number, mass: number): number {
  let inside = false;
  let nearest = Number.POSITIVE_INFINITY;
  points.forEach((to, index) => {
    const from = points.at(index - 1) ?? to;
    if (from.mass_kg > mass !== to.mass_kg > mass) {
      const at = from.arm_m + ((mass - from.mass_kg) / (to.mass_kg - from.mass_kg)) * (to.arm_m - from.arm_m);
      if (at > arm) inside = !inside;
    }
    const [ax, ay, bx, by] = [from.arm_m, from.mass_kg / 1000, to.arm_m, to.mass_kg / 1000];
    const [x, y] = [arm, mass / 1000];
    const t = Math.max(
      0,
      Math.min(1, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / ((bx - ax) ** 2 + (by - ay) ** 2)),
    );
    nearest = Math.min(nearest, Math.hypot(x - ax - t * (bx - ax), y - ay - t * (by - ay)));
  });
  return inside ? nearest : -nearest;
}

/** The worst step of the flight from take-off on, with the gear up and down: above zero it is inside. */
export function worstStep(input: FitInput, steps: number): number {
  const start = new Map(input.tanks.map(({ id, volume_m3 }) => [id, volume_m3]));
  const usable = input.tanks.reduce(
    (sum, tank) => sum + Math.max(0, tank.volume_m3 - tank.unusable_m3) * input.density_kgPerM3,
    0,
  );
  const taxi = Math.min(input.burn.taxi_kg, usable);
  let worst = Number.POSITIVE_INFINITY;
  for (let n = 0; n <= steps; n += 1) {
    const volumes = burntDown(input, start, taxi + ((usable - taxi) * n) / steps);
    let mass = input.empty.mass_kg;
    let moment = input.empty.mass_kg * input.empty.arm_m;
    for (const { at, mass_kg } of input.items) {
      mass += mass_kg;
      moment += mass_kg * (input.stations.find(({ id }) => id === at)?.arm_m ?? Number.NaN);
    }
    for (const tank of input.tanks) {
      const volume = volumes.get(tank.id) ?? 0;
      const kept = Math.min(volume, tank.unusable_m3); // in the empty mass already
      mass += (volume - kept) * input.density_kgPerM3;
      moment +=
        (volume * interpolated(tank, volume) - kept * interpolated(tank, kept)) * input.density_kgPerM3;
    }
    for (const gear of [0, input.gearMoment_kgm ?? 0]) {
      for (const { points } of input.envelopes) {
        worst = Math.min(worst, insideBy(points, (moment + gear) / mass, mass));
      }
    }
  }
  return worst;
}
