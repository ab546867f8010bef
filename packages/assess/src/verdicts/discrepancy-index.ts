import { type AircraftState, compareOrder, type Discrepancy, type OrderKey } from "@witnessmark/ledger";

type Closing = Discrepancy["closings"][number];

/** The discrepancies of an aircraft, as the verdicts ask for them. */
export interface DiscrepancyIndex {
  readonly open: readonly Discrepancy[];
  /** Open ones by the check that they name. */
  readonly openOfCheck: ReadonlyMap<string, readonly Discrepancy[]>;
  /** The latest closing of any discrepancy that names a check. */
  readonly closedOfCheck: ReadonlyMap<string, Closing>;
  /** Those that were last closed as put right; the latest closing first. */
  readonly putRight: readonly { readonly discrepancy: Discrepancy; readonly closing: Closing }[];
  /** Closed in different ways by different devices. */
  readonly contested: readonly Discrepancy[];
}

/** Whether devices differ in what each of them said last. */
function isContested({ closings }: Discrepancy): boolean {
  if (closings.length < 2) return false;
  const lastHow = new Map(closings.map(({ device, how }) => [device, how]));
  return new Set(lastHow.values()).size > 1;
}

/** The later of two in the order of the ledger. */
export const later = <T extends OrderKey>(a: T | undefined, b: T): T =>
  a !== undefined && compareOrder(a, b) > 0 ? a : b;

/** A fold keeps the map until a discrepancy is raised or closed, so it is gone through once, not with every look. */
const indexes = new WeakMap<AircraftState["discrepancies"], DiscrepancyIndex>();

export function indexDiscrepancies(discrepancies: AircraftState["discrepancies"]): DiscrepancyIndex {
  const known = indexes.get(discrepancies);
  if (known !== undefined) return known;
  const made = makeIndex(discrepancies);
  indexes.set(discrepancies, made);
  return made;
}

function makeIndex(discrepancies: AircraftState["discrepancies"]): DiscrepancyIndex {
  const open: Discrepancy[] = [];
  const contested: Discrepancy[] = [];
  const putRight: { readonly discrepancy: Discrepancy; readonly closing: Closing }[] = [];
  const openOfCheck = new Map<string, Discrepancy[]>();
  const closedOfCheck = new Map<string, Closing>();
  for (const discrepancy of discrepancies.values()) {
    const { check, closings, isOpen } = discrepancy;
    const [first] = closings;
    if (first === undefined || isOpen) {
      open.push(discrepancy);
      if (check !== undefined) openOfCheck.set(check, [...(openOfCheck.get(check) ?? []), discrepancy]);
      continue;
    }
    // of thousands that are long closed, nearly all were closed once
    const closing = closings.length === 1 ? first : closings.reduce((a, b) => later(a, b));
    if (closing.how === "put-right") putRight.push({ discrepancy, closing });
    if (isContested(discrepancy)) contested.push(discrepancy);
    if (check !== undefined) closedOfCheck.set(check, later(closedOfCheck.get(check), closing));
  }
  putRight.sort((a, b) => compareOrder(b.closing, a.closing));
  return { open, openOfCheck, closedOfCheck, putRight, contested };
}
