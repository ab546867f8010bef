import { type CoverProblem, chanceOf } from "@witnessmark/planner";

const STANCES = 32;
const TASKS = 100;
const FIELD_m = 14;

/**
 * A hundred tasks on a field of 14 m square, each served by the one, two or three nearest of 32 stances; about one in
 * seven waits for an earlier one. Harder than an aircraft: nothing is grouped, and nothing is in one place only.
 */
export function randomCover(seed: number): CoverProblem {
  const chance = chanceOf(seed);
  const size = STANCES + 2;
  const somewhere = (): readonly [number, number] => [chance() * FIELD_m, chance() * FIELD_m];
  const door = somewhere();
  const places = [door, ...Array.from({ length: STANCES }, somewhere), door];
  const isStop = (at: number): boolean => at > 0 && at < size - 1;
  const apart_m = (a: readonly [number, number], b: readonly [number, number]): number =>
    Math.hypot(a[0] - b[0], a[1] - b[1]);
  const cost = Float64Array.from({ length: size * size }, (_, i) => {
    const [a, b] = [Math.floor(i / size), i % size];
    const [from, to] = [places[a] ?? door, places[b] ?? door];
    return a === b ? 0 : apart_m(from, to) / 0.8 + 1.5 * ((isStop(a) ? 1 : 0) + (isStop(b) ? 1 : 0));
  });
  const tasks = Array.from({ length: TASKS }, (_, i) => {
    const place = somewhere();
    const near = Array.from({ length: STANCES }, (_unused, at) => at + 1).sort(
      (a, b) => apart_m(places[a] ?? door, place) - apart_m(places[b] ?? door, place),
    );
    const at = near.slice(0, 1 + Math.floor(chance() * 3));
    return { at, after: i > 0 && chance() < 0.15 ? [Math.floor(chance() * i)] : [] };
  });
  return { stances: size, cost, tasks };
}
