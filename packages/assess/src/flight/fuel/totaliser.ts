import type { Book } from "@witnessmark/book";
import { formatMeasure, standardUncertainty } from "@witnessmark/engine";
import type { FlightPlan } from "@witnessmark/ledger";
import type { InputFault } from "../figures.ts";
import { given, readText } from "../given.ts";

/** What the totaliser shows of the fuel that can be used, and how well it can know. */
export interface TotaliserShown {
  readonly fuel_kg: number;
  readonly standardUncertainty_kg: number;
}

export interface Totaliser {
  readonly shown?: TotaliserShown;
  readonly faults: readonly InputFault[];
}

const NAME = "Fuel totaliser";
/** Tanks take a little more than the book says, and a cold fuel is denser. */
const ABOVE_FULL_1 = 1.03;

const fault = (says: string): Totaliser => ({
  faults: [{ where: { kind: "totaliser", id: "totaliser" }, says: `${NAME}: ${says}` }],
});

/**
 * The totaliser of a plan. It counts what was burnt since it was set, which may be all that can be used: its accuracy
 * is taken of that.
 *
 * @returns nothing shown where it was not read, or cannot be told apart from its faults
 */
export function totaliserOf(
  book: Pick<Book, "fuel" | "loading">,
  plan: Pick<FlightPlan, "load">,
  density_kgPerM3: number | undefined,
): Totaliser {
  const read = plan.load?.totaliser;
  const { loading, fuel } = book;
  if (read === undefined || loading === undefined || density_kgPerM3 === undefined) return { faults: [] };
  const found = given(read, ["volume", "mass"], NAME);
  if (!found.ok) return { faults: [{ where: { kind: "totaliser", id: "totaliser" }, says: found.says }] };
  if (fuel?.totaliser === undefined)
    return fault("expected its accuracy in the book, which says nothing of one");
  const usable_m3 = loading.tanks.reduce((sum, tank) => sum + tank.capacity_m3 - tank.unusable_m3, 0);
  const isMass = given(read, ["mass"], NAME).ok;
  const fuel_kg = isMass ? found.valueSI : found.valueSI * density_kgPerM3;
  const most_kg = usable_m3 * density_kgPerM3;
  if (fuel_kg > most_kg * ABOVE_FULL_1) {
    const most = isMass ? formatMeasure(most_kg, "kg", 1) : formatMeasure(usable_m3, "L", 1);
    return fault(`expected at most ${most}, which is all that can be used, received ${readText(read)}`);
  }
  const standardUncertainty_kg = standardUncertainty({
    accuracy: fuel.totaliser.accuracy_1 * most_kg,
    resolution: 0,
    coverage: "bound",
  });
  return { shown: { fuel_kg, standardUncertainty_kg }, faults: [] };
}
