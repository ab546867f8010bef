import type { Loading } from "@witnessmark/book";
import type { LoadItem } from "@witnessmark/engine";

/** The empty aircraft in force: as weighed, or as the last revision has it. */
export interface EmptyInForce {
  readonly mass_kg: number;
  readonly arm_m: number;
  readonly lateralArm_m: number;
  readonly on: string;
  readonly by: string;
}

export function emptyInForce({ empty }: Loading): EmptyInForce {
  const last = empty.revisions.at(-1);
  const { mass_kg, arm_m, lateralArm_m = 0, by = "by whom is not said" } = last ?? empty;
  return { mass_kg, arm_m, lateralArm_m, on: last?.on ?? empty.weighedOn, by };
}

export const emptyItem = ({ mass_kg, arm_m, lateralArm_m }: EmptyInForce): LoadItem => ({
  mass_kg,
  arm_m,
  lateralArm_m,
});
