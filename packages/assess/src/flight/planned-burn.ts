import type { Book } from "@witnessmark/book";
import type { Dimension } from "@witnessmark/engine";
import type { FlightPlan, Read } from "@witnessmark/ledger";
import type { InputFault, MissingPart } from "./figures.ts";
import { given } from "./given.ts";

/** What the flight burns from start-up, as planned or by the book's burn; a part that cannot be told is undefined. */
export interface PlannedBurn {
  readonly time_s: number | undefined;
  readonly taxi_kg: number | undefined;
  /** Whether the pilot gave it; if not it is the book's. */
  readonly taxiGiven: boolean;
  readonly trip_kg: number | undefined;
  readonly tripGiven: boolean;
  /**
   * What the trip takes at the most, where it comes from the book: all of it at the greater burn of climb and cruise,
   * since nobody said how long the climb is. Undefined, with a `trip_kg`, where the book has no burn for the climb.
   */
  readonly tripMost_kg: number | undefined;
  /** To the alternate; zero where none is planned. */
  readonly alternate_kg: number | undefined;
  /** A share of the planned trip fuel, that of `trip_kg`. */
  readonly contingency_kg: number | undefined;
  /** The share itself; zero where none is planned. */
  readonly contingency_1: number;
  readonly extra_kg: number | undefined;
  readonly faults: readonly InputFault[];
  readonly missing: readonly MissingPart[];
}

const AMOUNT: readonly Dimension[] = ["mass", "volume"];

/** What the flight burns in each of its parts. @param density_kgPerM3 of the fuel, for what was given as a volume */
export function plannedBurn(
  book: Pick<Book, "fuel">,
  plan: FlightPlan,
  density_kgPerM3: number | undefined,
): PlannedBurn {
  const { route } = plan;
  const faults: InputFault[] = [];
  const missing: MissingPart[] = [];
  const fault = (id: string, says: string): undefined => {
    faults.push({ where: { kind: "route", id }, says });
    return undefined;
  };
  const amount_kg = (read: Read, id: string, what: string): number | undefined => {
    const found = given(read, AMOUNT, what);
    if (!found.ok) return fault(id, found.says);
    if (given(read, ["mass"], what).ok) return found.valueSI;
    if (density_kgPerM3 !== undefined) return found.valueSI * density_kgPerM3;
    missing.push({ part: "density", what: `the density of the fuel, for the ${what.toLowerCase()}` });
    return undefined;
  };
  const time_s = (read: Read, id: string, what: string): number | undefined => {
    const found = given(read, ["time"], what);
    return found.ok ? found.valueSI : fault(id, found.says);
  };
  const burn = book.fuel?.burn;
  const flight_s = route === undefined ? undefined : time_s(route.time, "time", "Time of the flight");
  const taxi_kg =
    route?.taxiFuel === undefined ? burn?.taxi_kg : amount_kg(route.taxiFuel, "taxiFuel", "Taxi fuel");
  if (taxi_kg === undefined && route?.taxiFuel === undefined)
    missing.push({ part: "book-fuel", what: "the fuel to taxi, in the plan or the book" });
  const byBook_kg = burn === undefined || flight_s === undefined ? undefined : flight_s * burn.cruise_kgPerS;
  const tripGiven = route?.tripFuel !== undefined;
  const trip_kg =
    route?.tripFuel === undefined ? byBook_kg : amount_kg(route.tripFuel, "tripFuel", "Trip fuel");
  if (route === undefined) missing.push({ part: "route", what: "how long the flight is" });
  else if (!tripGiven && burn === undefined)
    missing.push({ part: "book-fuel", what: "the trip fuel, or what the aircraft burns, in the book" });
  const tripMost_kg =
    tripGiven || burn === undefined || flight_s === undefined
      ? trip_kg
      : burn.climb_kgPerS === undefined
        ? undefined
        : flight_s * Math.max(burn.climb_kgPerS, burn.cruise_kgPerS);
  return {
    time_s: flight_s,
    taxi_kg,
    taxiGiven: route?.taxiFuel !== undefined,
    trip_kg,
    tripGiven,
    tripMost_kg,
    alternate_kg: alternate(),
    contingency_kg: route?.contingency_1 === undefined ? 0 : share(route.contingency_1, trip_kg),
    contingency_1: route?.contingency_1 ?? 0,
    extra_kg: route?.extraFuel === undefined ? 0 : amount_kg(route.extraFuel, "extraFuel", "Extra fuel"),
    faults,
    missing,
  };

  function alternate(): number | undefined {
    if (route?.alternateTime === undefined) {
      if (plan.alternate === undefined) return 0;
      missing.push({ part: "alternate", what: `how long it is to the alternate, ${plan.alternate.code}` });
      return undefined;
    }
    const to_s = time_s(route.alternateTime, "alternateTime", "Time to the alternate");
    if (burn === undefined)
      missing.push({
        part: "book-fuel",
        what: "what the aircraft burns on the way to the alternate, in the book",
      });
    return to_s === undefined || burn === undefined ? undefined : to_s * burn.cruise_kgPerS;
  }

  function share(contingency_1: number, of_kg: number | undefined): number | undefined {
    if (of_kg === undefined) return undefined;
    if (contingency_1 >= 0 && contingency_1 <= 1) return contingency_1 * of_kg;
    return fault("contingency_1", `Contingency: expected a share from 0 to 1, received ${contingency_1}`);
  }
}
