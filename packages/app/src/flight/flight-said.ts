import type { Flight } from "@witnessmark/assess";
import type { FlightPlan, PlannedField } from "@witnessmark/ledger";

/** What a person says of a flight where it is named. */
export type FlightSaid = Pick<Flight, "from" | "to" | "offBlocks">;

/**
 * The flight as it is named now. What was planned goes along only where it is of the same places: a field with its
 * reports stands where the flight now goes from or to, and a route between two other fields is said again.
 */
export function withSaid(flight: Flight, said: FlightSaid): Flight {
  const next = { ...flight, ...said };
  const { plan } = flight;
  if (plan === undefined || (said.from === flight.from && said.to === flight.to)) return next;
  const { departure: _from, destination: _to, route, ...rest } = plan;
  const [departure, destination] = [placeIn(plan, said.from), placeIn(plan, said.to)];
  const isThereAndBack = said.from === flight.to && said.to === flight.from;
  return {
    ...next,
    plan: {
      ...rest,
      ...(departure === undefined ? {} : { departure }),
      ...(destination === undefined ? {} : { destination }),
      ...(route === undefined || !isThereAndBack ? {} : { route }),
    },
  };
}

/** What is planned of a field, in whatever part of the flight it stood. */
const placeIn = ({ departure, destination, alternate }: FlightPlan, code: string): PlannedField | undefined =>
  [departure, destination, alternate].find((field) => field?.code === code);
