import type { MassAndArm } from "@witnessmark/engine";
import type { FitEnvelope } from "./fit-input.ts";

/** Further than any centre of gravity gets. */
const FAR_m = 20;

/** The corners from the lowest mass to the highest on one side: those ahead, or those behind. */
function chain({ points }: FitEnvelope, side: "forward" | "aft"): readonly MassAndArm[] {
  const masses = points.map(({ mass_kg }) => mass_kg);
  const sign = side === "forward" ? 1 : -1;
  const endAt = (mass: number, other: number): number => {
    const there = points.map((point, index) => ({ ...point, index })).filter((p) => p.mass_kg === mass);
    const best = there.sort((a, b) => other * (a.arm_m - b.arm_m))[0];
    return best?.index ?? 0;
  };
  const bottom = Math.min(...masses);
  const top = Math.max(...masses);
  const [from, to] = [endAt(bottom, sign), endAt(top, sign)];
  const [fromFar, toFar] = [endAt(bottom, -sign), endAt(top, -sign)];
  const walk = (step: 1 | -1): number[] => {
    const passed: number[] = [];
    for (let at = from; ; at = (at + step + points.length) % points.length) {
      passed.push(at);
      if (at === to) return passed;
    }
  };
  // Round the right way, the corners of the other side are met only where they are the same ones.
  const clean = (way: readonly number[]): boolean =>
    (fromFar === from || !way.includes(fromFar)) && (toFar === to || !way.includes(toFar));
  const ways = [walk(1), walk(-1)];
  const arms = (way: readonly number[]): number =>
    (sign * way.reduce((sum, at) => sum + (points[at]?.arm_m ?? 0), 0)) / way.length;
  const allowed = ways.filter(clean);
  const [best] = (allowed.length > 0 ? allowed : ways).sort((a, b) => arms(a) - arms(b));
  return (best ?? []).flatMap((at) => points[at] ?? []);
}

/** The corners ahead, from the lowest mass to the highest, and the same behind. */
export const chains = (envelope: FitEnvelope): readonly [readonly MassAndArm[], readonly MassAndArm[]] => [
  chain(envelope, "forward"),
  chain(envelope, "aft"),
];

/** Whether a point is the same as another. */
const same = (a: MassAndArm | undefined, b: MassAndArm | undefined): boolean =>
  a !== undefined && b !== undefined && a.arm_m === b.arm_m && a.mass_kg === b.mass_kg;

/**
 * An envelope with one of its sides taken away. One that ends in a point above or below stays as it is there: it has
 * no range of arms to go on with.
 */
export function opened(
  envelope: FitEnvelope,
  side: "forward" | "aft" | "envelope-top" | "envelope-bottom",
): FitEnvelope {
  const [fore, aft] = chains(envelope);
  const masses = envelope.points.map(({ mass_kg }) => mass_kg);
  const [bottom, top] = [Math.min(...masses), Math.max(...masses)];
  const arms = envelope.points.map(({ arm_m }) => arm_m);
  if (side === "envelope-top" && same(fore.at(-1), aft.at(-1))) return envelope;
  if (side === "envelope-bottom" && same(fore[0], aft[0])) return envelope;
  const moved = (point: MassAndArm | undefined, mass_kg: number): MassAndArm[] =>
    point === undefined ? [] : [{ arm_m: point.arm_m, mass_kg }];
  const far = (arm_m: number): MassAndArm[] => [
    { arm_m, mass_kg: top },
    { arm_m, mass_kg: bottom },
  ];
  const back = [...aft].reverse();
  const points = {
    aft: [...fore, ...far(Math.max(...arms) + FAR_m)],
    forward: [...aft, ...far(Math.min(...arms) - FAR_m)],
    "envelope-top": [...fore, ...moved(fore.at(-1), 2 * top), ...moved(aft.at(-1), 2 * top), ...back],
    "envelope-bottom": [...moved(fore[0], 0), ...fore, ...back, ...moved(aft[0], 0)],
  }[side];
  return { ...envelope, points: points.filter((point, index) => !same(points.at(index - 1), point)) };
}
