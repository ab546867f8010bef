import { type LoadedState, loadedState } from "./loaded-state.ts";

/** Something that can be aboard in any amount between two. */
export interface VariableItem {
  readonly id: string;
  readonly arm_m: number;
  /** What is aboard whatever the loading: the pilot, the minimum fuel; 0 for what can be left out. */
  readonly least_kg: number;
  readonly most_kg: number;
}

export interface AdverseLoading {
  readonly state: LoadedState;
  /** What is aboard of each item, by its id. */
  readonly masses_kg: Readonly<Record<string, number>>;
}

/**
 * The loading that brings the centre of gravity furthest towards a limit: what lies beyond the limit at its most, what
 * lies on the other side of it at its least. It may be above the greatest mass; then the check says so, and the limit
 * at that mass decides.
 *
 * @param empty the aircraft, with what is always aboard
 * @param limit_m the forward or the aft limit
 * @param towards `forward`: what is ahead of the limit at its most; `aft`: what is behind it
 * @source AC 43.13-1B, chapter 10, adverse-loading checks
 */
export function adverseLoading(
  empty: { readonly mass_kg: number; readonly moment_kgm: number },
  items: readonly VariableItem[],
  limit_m: number,
  towards: "forward" | "aft",
): AdverseLoading {
  const aboard = items.map((item) => {
    const beyond = towards === "forward" ? item.arm_m < limit_m : item.arm_m > limit_m;
    return { ...item, mass_kg: beyond ? item.most_kg : item.least_kg };
  });
  return {
    state: loadedState([{ mass_kg: empty.mass_kg, arm_m: 0, extraMoment_kgm: empty.moment_kgm }, ...aboard]),
    masses_kg: Object.fromEntries(aboard.map(({ id, mass_kg }) => [id, mass_kg])),
  };
}
