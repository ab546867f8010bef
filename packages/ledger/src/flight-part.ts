import * as z from "zod/mini";
import {
  type AirspaceClass,
  FIELD_CODE,
  type PlannedApproach,
  type PlannedFlight,
  type PlannedRunway,
  RUNWAY_NAME,
  type RunwayCondition,
} from "./flight.ts";
import { finite, matching, Name, oneOf, ReadValue, text, Uuid, When } from "./parts.ts";

/** What a planned flight must be, in a plan of its own and in a decision. */

const listOf = <T extends z.ZodMiniType>(part: T, most: number) =>
  z.array(part).check(z.maxLength(most, { error: `at most ${most}` }));

const factor = (low: number, high: number) => {
  const error = `a number from ${low} to ${high}`;
  return finite.check(z.gte(low, { error }), z.lte(high, { error }));
};

const LoadedItemPart = z.strictObject({
  id: text(1, 60),
  station: Name,
  what: text(0, 120),
  mass: ReadValue,
  known: oneOf({ weighed: true, stated: true, standard: true }),
});

const LoadPart = z.strictObject({
  items: listOf(LoadedItemPart, 200),
  fuel: listOf(z.strictObject({ tank: Name, volume: ReadValue }), 40),
  fuelTemperature: z.exactOptional(ReadValue),
  totaliser: z.exactOptional(ReadValue),
  envelope: z.exactOptional(Name),
});

const RoutePart = z.strictObject({
  distance: ReadValue,
  time: ReadValue,
  level: ReadValue,
  alternateTime: z.exactOptional(ReadValue),
  tripFuel: z.exactOptional(ReadValue),
  taxiFuel: z.exactOptional(ReadValue),
  contingency_1: z.exactOptional(factor(0, 1)),
  extraFuel: z.exactOptional(ReadValue),
  inSightOfField: z.exactOptional(z.literal(true, { error: "true, or left out" })),
});

const ReportPart = z.strictObject({ text: text(1, 8000), receivedAt: When });

const TypedPart = z.strictObject({
  observedAt: When,
  windFrom: z.exactOptional(ReadValue),
  windVariable: z.exactOptional(z.literal(true, { error: "true, or left out" })),
  windSpeed: z.exactOptional(ReadValue),
  windGust: z.exactOptional(ReadValue),
  oat: z.exactOptional(ReadValue),
  dewPoint: z.exactOptional(ReadValue),
  qnh: z.exactOptional(ReadValue),
  visibility: z.exactOptional(ReadValue),
  ceiling: z.exactOptional(ReadValue),
});

const ApproachPart = z.strictObject({
  name: text(1, 60),
  kind: oneOf<PlannedApproach["kind"]>({ precision: true, "non-precision": true }),
  minimum: ReadValue,
  visibility: ReadValue,
});

const FieldPart = z.strictObject({
  code: Name,
  runway: z.exactOptional(text(1, 10)),
  condition: z.exactOptional(
    oneOf<RunwayCondition>({ dry: true, wet: true, snow: true, slush: true, ice: true }),
  ),
  metar: z.exactOptional(ReportPart),
  taf: z.exactOptional(ReportPart),
  typed: z.exactOptional(TypedPart),
  airspace: z.exactOptional(
    oneOf<AirspaceClass>({ A: true, B: true, C: true, D: true, E: true, F: true, G: true }),
  ),
  approach: z.exactOptional(ApproachPart),
});

const OwnPart = z.strictObject({
  ceiling: z.exactOptional(ReadValue),
  visibility: z.exactOptional(ReadValue),
  crosswind: z.exactOptional(ReadValue),
  climbGradient: z.exactOptional(ReadValue),
  takeOffFactor_1: z.exactOptional(factor(1, 10)),
  landingFactor_1: z.exactOptional(factor(1, 10)),
});

const between = (low: number, high: number, what: string) => {
  const error = `${what}, from ${low} to ${high}`;
  return finite.check(z.gte(low, { error }), z.lte(high, { error }));
};

const RunwayPart = z.strictObject({
  name: matching(RUNWAY_NAME, "01 to 36, with L, C or R where there are two"),
  trueHeading_deg: between(0, 360, "degrees"),
  length: ReadValue,
  slope_1: between(-0.2, 0.2, "a share of the length"),
  surface: oneOf<PlannedRunway["surface"]>({ paved: true, grass: true, gravel: true }),
});

const PlacePart = z.strictObject({
  code: matching(FIELD_CODE, "four capital letters or figures"),
  name: text(0, 120),
  latitude_deg: between(-90, 90, "degrees"),
  longitude_deg: between(-180, 180, "degrees"),
  elevation: ReadValue,
  lights: z.boolean({ error: "true or false" }),
  zone: text(1, 60),
  runways: listOf(RunwayPart, 12),
});

const PlanPart = z.strictObject({
  rulePack: matching(/^[a-z0-9]+(-[a-z0-9]+)*$/, "the id of a rule pack, such as us-part-91"),
  flightRules: oneOf({ VFR: true, IFR: true }),
  load: z.exactOptional(LoadPart),
  route: z.exactOptional(RoutePart),
  departure: z.exactOptional(FieldPart),
  destination: z.exactOptional(FieldPart),
  alternate: z.exactOptional(FieldPart),
  own: z.exactOptional(OwnPart),
  places: z.exactOptional(listOf(PlacePart, 6)),
});

export const FlightPart: z.ZodMiniType<PlannedFlight> = z.strictObject({
  id: z.exactOptional(Uuid),
  from: text(0, 120),
  to: text(0, 120),
  offBlocks: When,
  plan: z.exactOptional(PlanPart),
});
