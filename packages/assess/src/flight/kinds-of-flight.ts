import type { Book, KindOfOperation } from "@witnessmark/book";
import { civilNights, toSI, UNITS } from "@witnessmark/engine";
import type { PlannedFlight, Read } from "@witnessmark/ledger";
import { nightOfFlight } from "./night-of-flight.ts";

/** What decides of which kinds a flight is; undefined where nobody has said enough to tell. */
export interface FlightNature {
  readonly ifr: boolean | undefined;
  /** Any of it is by night. */
  readonly night: boolean | undefined;
  readonly passengers: boolean | undefined;
}

const inSI = (read: Read | undefined, dimension: "time" | "mass"): number | undefined =>
  read === undefined || UNITS[read.unit].dimension !== dimension || !Number.isFinite(read.value)
    ? undefined
    : toSI(read.value, read.unit);

/** From take-off to landing, as planned; undefined where no time is said. */
export const flightTime_s = (flight: PlannedFlight): number | undefined =>
  inSI(flight.plan?.route?.time, "time");

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
 * Of what nature a flight is. Night is that of civil twilight unless another is named, anywhere on the flight.
 * Icing, flight over water and a glider in tow are in no plan: they are never known.
 */
export function natureOfFlight(
  book: Pick<Book, "fields" | "loading">,
  flight: PlannedFlight | null,
  nightsOf = civilNights,
): FlightNature {
  const rules = flight?.plan?.flightRules;
  return {
    ifr: rules === undefined ? undefined : rules === "IFR",
    night: flight === null ? undefined : nightOfFlight(book, flight, flightTime_s(flight), nightsOf),
    passengers: flight === null ? undefined : passengers(book, flight),
  };
}

const EITHER = [true, false] as const;
const maybe = (known: boolean | undefined): readonly boolean[] => (known === undefined ? EITHER : [known]);

/** Of which kinds a flight is when everything of it is known. */
const isOf = (
  kind: KindOfOperation,
  ifr: boolean,
  night: boolean,
  other: Readonly<Record<string, boolean>>,
): boolean => {
  switch (kind) {
    case "vfr-day":
      return !ifr && !night;
    case "vfr-night":
      return !ifr && night;
    case "ifr-day":
      return ifr && !night;
    case "ifr-night":
      return ifr && night;
    case "passengers-by-night":
      return night && (other["passengers"] ?? false);
    default:
      return other[kind] ?? false;
  }
};

/**
 * Whether a flight is of any of these kinds: yes or no only when it is so whatever is still unknown turns out to be.
 * A flight by instruments is one by day or by night, though nobody knows which.
 */
export function isOfAnyKind(
  kinds: readonly KindOfOperation[],
  { ifr, night, passengers: carries }: FlightNature,
): boolean | undefined {
  const answers = new Set<boolean>();
  for (const byInstruments of maybe(ifr)) {
    for (const byNight of maybe(night)) {
      for (const carrying of maybe(carries)) {
        for (const unsaid of EITHER) {
          const other = { passengers: carrying, icing: unsaid, "over-water": unsaid, "glider-tow": unsaid };
          answers.add(kinds.some((kind) => isOf(kind, byInstruments, byNight, other)));
        }
      }
    }
  }
  return answers.size === 1 ? answers.has(true) : undefined;
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
  "passengers-by-night": "with passengers by night",
  "glider-tow": "with a glider in tow",
};
