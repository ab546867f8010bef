import { toSI } from "@witnessmark/engine";
import type { PlannedApproach, PlannedField } from "@witnessmark/ledger";
import { type ConditionFault, typedSI, type Wanted } from "./faults.ts";
import { type Figure, figureOf, lacking } from "./figure.ts";
import type { FieldRole } from "./role.ts";

/** The approach that is planned at a field, in SI. */
export interface ApproachMinima {
  readonly name: string;
  readonly kind: PlannedApproach["kind"];
  /** Decision or minimum descent height, above the field. */
  readonly ceiling: Figure<number>;
  readonly visibility: Figure<number>;
  readonly faults: readonly ConditionFault[];
}

/** The lowest decision height of any category I approach is 200 ft; what is higher than these is an altitude. */
const WANTED = {
  minimum: {
    dimension: "length",
    name: "minimum of the approach, above the field",
    range: [toSI(199.999, "ft"), toSI(5000, "ft")],
    unit: "ft",
    step: 1,
  },
  visibility: {
    dimension: "length",
    name: "visibility of the approach",
    range: [300, 20_000],
    unit: "m",
    step: 1,
  },
} as const satisfies Record<string, Wanted>;

export function approachOf({ approach }: PlannedField, role: FieldRole): ApproachMinima | undefined {
  if (approach === undefined) return undefined;
  const faults: ConditionFault[] = [];
  const read = (part: keyof typeof WANTED): Figure<number> => {
    const found = typedSI(approach[part], WANTED[part]);
    if (!("says" in found)) return figureOf(found.value);
    faults.push({ where: { kind: "approach", role, part }, says: found.says });
    return lacking({ what: found.says });
  };
  const { name, kind } = approach;
  return { name, kind, ceiling: read("minimum"), visibility: read("visibility"), faults };
}
