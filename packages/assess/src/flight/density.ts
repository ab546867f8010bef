import type { Book } from "@witnessmark/book";
import { fuelDensity, InputError } from "@witnessmark/engine";
import type { FlightPlan } from "@witnessmark/ledger";
import type { InputFault, MissingPart } from "./figures.ts";
import { given } from "./given.ts";

/** 15 °C, at which a book states its fuel. */
const STATED_AT_K = 288.15;

/** The density of the fuel in the tanks; undefined where it cannot be told. */
export interface Density {
  readonly density_kgPerM3: number | undefined;
  readonly temperature_K: number | undefined;
  /** Whether the temperature was given; if not, the density is the one stated at 15 °C. */
  readonly measured: boolean;
  readonly faults: readonly InputFault[];
  readonly missing: readonly MissingPart[];
}

/** From the book's density at 15 °C and the temperature of the fuel, where the plan has one. */
export function densityOf(book: Pick<Book, "fuel">, plan: Pick<FlightPlan, "load">): Density {
  const none = { density_kgPerM3: undefined, temperature_K: undefined, measured: false };
  if (book.fuel === undefined) {
    return {
      ...none,
      faults: [],
      missing: [{ part: "book-fuel", what: "what the aircraft burns, in the book" }],
    };
  }
  const { density15_kgPerM3 } = book.fuel;
  const typed = plan.load?.fuelTemperature;
  if (typed === undefined) return { ...none, density_kgPerM3: density15_kgPerM3, faults: [], missing: [] };
  const where = { kind: "fuel-temperature", id: "fuel" } as const;
  const read = given(typed, ["temperature"], "Temperature of the fuel");
  if (!read.ok) return { ...none, faults: [{ where, says: read.says }], missing: [] };
  const fuelTemperature_K = read.valueSI;
  if (fuelTemperature_K === STATED_AT_K) {
    return {
      density_kgPerM3: density15_kgPerM3,
      temperature_K: fuelTemperature_K,
      measured: true,
      faults: [],
      missing: [],
    };
  }
  try {
    return {
      density_kgPerM3: fuelDensity.compute({ density15_kgPerM3, fuelTemperature_K }),
      temperature_K: fuelTemperature_K,
      measured: true,
      faults: [],
      missing: [],
    };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return { ...none, faults: [{ where, says: `Temperature of the fuel: ${error.message}` }], missing: [] };
  }
}
