import type { Flight, FlightField } from "@witnessmark/assess";
import type {
  AircraftState,
  FlightPlan,
  OwnMinima,
  PlannedField,
  PlannedPlace,
  PlannedRoute,
  Read,
  TypedConditions,
} from "@witnessmark/ledger";
import { newPlan } from "../../flight/plan-load.ts";

/** Changes of where the flight goes and in what, each a new plan: nothing is changed in place. */

export const ROLES = ["departure", "destination", "alternate"] as const;
export type Role = (typeof ROLES)[number];

/** The plan of a flight; one that has none begins as a new one does. */
export const planOf = (flight: Flight, state: AircraftState): FlightPlan => flight.plan ?? newPlan(state);

/** The object without what is `undefined` in the change: the ledger keeps no empty parts. */
export function withPart<T extends object>(
  whole: T,
  change: { readonly [K in keyof T]?: T[K] | undefined },
): T {
  const merged: Partial<Record<string, unknown>> = { ...whole, ...change };
  // only parts that may be left out are ever given as undefined
  return Object.fromEntries(Object.entries(merged).filter(([, part]) => part !== undefined)) as T;
}

export const withPlan = (
  flight: Flight,
  state: AircraftState,
  change: { readonly [K in keyof FlightPlan]?: FlightPlan[K] | undefined },
): Flight => ({ ...flight, plan: withPart(planOf(flight, state), change) });

/** The code of the field of a role: that of the plan, else what the flight's own words say. */
export function codeOf(
  { from, to, plan }: Pick<Flight, "from" | "to" | "plan">,
  role: Role,
): string | undefined {
  const said = { departure: from, destination: to, alternate: "" }[role].trim().toUpperCase();
  return plan?.[role]?.code ?? (said === "" ? undefined : said);
}

/** The field that the flight's own words name for a role, where it says no more yet. */
export const meantField = (
  flight: Flight,
  fields: readonly FlightField[],
  role: Role,
): FlightField | undefined => fields.find(({ code }) => code === codeOf(flight, role));

/** Where the flight leaves from and goes to is said once: the title follows the field. */
export function withField(
  flight: Flight,
  state: AircraftState,
  role: Role,
  planned: PlannedField | undefined,
): Flight {
  const next = withPlan(flight, state, { [role]: planned });
  if (planned === undefined) return next;
  return role === "departure"
    ? { ...next, from: planned.code }
    : role === "destination"
      ? { ...next, to: planned.code }
      : next;
}

/** The flight with what was said of the fields that it goes by, and of no others. */
export function withPlaces(flight: Flight, state: AircraftState, said: readonly PlannedPlace[]): Flight {
  const codes = ROLES.map((role) => flight.plan?.[role]?.code);
  const places = said.filter(({ code }) => codes.includes(code));
  if (places.length === 0 && flight.plan?.places === undefined) return flight;
  return withPlan(flight, state, { places: places.length === 0 ? undefined : places });
}

/**
 * A field with another place: its reports and what was typed were of the first, and do not go with it. How its surface
 * is nobody has said yet, and perhaps not which runway.
 */
export const fieldAt = (code: string, runway?: string): PlannedField => ({
  code,
  ...(runway === undefined ? {} : { runway }),
});

/** A field that is chosen for one part of a flight, with the reports of it that another part has. */
export function withKnownReports(planned: PlannedField, plan: FlightPlan | undefined): PlannedField {
  const known = ROLES.map((role) => plan?.[role]).filter((each) => each?.code === planned.code);
  return withPart(planned, {
    metar: planned.metar ?? known.find((each) => each?.metar !== undefined)?.metar,
    taf: planned.taf ?? known.find((each) => each?.taf !== undefined)?.taf,
  });
}

/**
 * One element that the pilot read or was told.
 *
 * The time stays that of the first: an element added later must not make the others look newer.
 *
 * @param now ISO 8601 with offset
 */
export function withTyped(
  planned: PlannedField,
  part: Exclude<keyof TypedConditions, "observedAt" | "windVariable">,
  read: Read | undefined,
  now: string,
): PlannedField {
  // a direction takes the place of "variable", and so does taking it away
  const other = part === "windFrom" ? { windVariable: undefined } : {};
  const typed = withPart<TypedConditions>(planned.typed ?? { observedAt: now }, { ...other, [part]: read });
  const isEmpty = Object.keys(typed).length === 1;
  return withPart(planned, { typed: isEmpty ? undefined : typed });
}

/** The wind comes from no one direction. @param now ISO 8601 with offset */
export const withVariableWind = (planned: PlannedField, now: string): PlannedField => ({
  ...planned,
  typed: withPart<TypedConditions>(planned.typed ?? { observedAt: now }, {
    windFrom: undefined,
    windVariable: true,
  }),
});

/** The parts of a route as far as they are said. */
export type RouteSoFar = { readonly [K in keyof PlannedRoute]?: PlannedRoute[K] | undefined };

/**
 * The route, once distance, time and level are all said. With one of them missing there is none: a time of nothing
 * would be an answer, and a wrong one.
 */
export function wholeRoute({ distance, time, level, ...rest }: RouteSoFar): PlannedRoute | undefined {
  return distance === undefined || time === undefined || level === undefined
    ? undefined
    : withPart<PlannedRoute>({ distance, time, level }, rest);
}

export function withOwn(
  plan: FlightPlan,
  change: { readonly [K in keyof OwnMinima]?: OwnMinima[K] | undefined },
): OwnMinima | undefined {
  const own = withPart<OwnMinima>(plan.own ?? {}, change);
  return Object.keys(own).length === 0 ? undefined : own;
}
