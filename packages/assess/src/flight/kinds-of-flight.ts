import type { Book, KindOfOperation } from "@witnessmark/book";
import { toSI, UNITS } from "@witnessmark/engine";
import type { PlannedFlight, Read } from "@witnessmark/ledger";
import { nightOfFlight } from "./night-of-flight.ts";

/** Of each kind of operation, whether the flight is one; undefined where nobody has said enough to tell. */
export type KindsOfFlight = Readonly<Record<KindOfOperation, boolean | undefined>>;

const inSI = (read: Read | undefined, dimension: "time" | "mass"): number | undefined =>
  read === undefined || UNITS[read.unit].dimension !== dimension || !Number.isFinite(read.value)
    ? undefined
    : toSI(read.value, read.unit);

/** From off blocks to the landing, as planned; undefined where no time is said. */
export const flightTime_s = (flight: PlannedFlight): number | undefined =>
  inSI(flight.plan?.route?.time, "time");

const both = (one: boolean | undefined, other: boolean | undefined): boolean | undefined =>
  one === false || other === false ? false : one === undefined || other === undefined ? undefined : true;

const not = (one: boolean | undefined): boolean | undefined => (one === undefined ? undefined : !one);

/** Somebody aboard beside the crew's own seats; undefined while no load is said. */
function passengers(book: Pick<Book, "loading">, flight: PlannedFlight): boolean | undefined {
  const items = flight.plan?.load?.items;
  if (items === undefined || book.loading === undefined) return undefined;
  const seats = new Map(book.loading.stations.map((station) => [station.id, station]));
  return items.some(({ station }) => {
    const seat = seats.get(station);
    return seat !== undefined && seat.kind === "seat" && seat.crew !== true;
  });
}

/**
 * Which kinds of operation a flight is. Night is that of civil twilight, as the fuel rules mean it, anywhere on the
 * flight. Icing and flight over water are in no plan: they are not known, and what rests on them says so.
 */
export function kindsOfFlight(
  book: Pick<Book, "fields" | "loading">,
  flight: PlannedFlight | null,
): KindsOfFlight {
  const rules = flight?.plan?.flightRules;
  const ifr = rules === undefined ? undefined : rules === "IFR";
  const night = flight === null ? undefined : nightOfFlight(book, flight, flightTime_s(flight));
  return {
    "vfr-day": both(not(ifr), not(night)),
    "vfr-night": both(not(ifr), night),
    "ifr-day": both(ifr, not(night)),
    "ifr-night": both(ifr, night),
    icing: undefined,
    "over-water": undefined,
    passengers: flight === null ? undefined : passengers(book, flight),
  };
}

/** How the kinds are told: "by night, by sight". */
export const KIND_WORDS: Readonly<Record<KindOfOperation, string>> = {
  "vfr-day": "by sight by day",
  "vfr-night": "by sight by night",
  "ifr-day": "by instruments by day",
  "ifr-night": "by instruments by night",
  icing: "into icing",
  "over-water": "over water",
  passengers: "with passengers",
};
