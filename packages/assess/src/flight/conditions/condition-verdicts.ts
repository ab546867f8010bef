import type { Flight, Verdict } from "../../assessment.ts";
import type { Context } from "../../context.ts";
import { type Finding, worthOf } from "../../finding.ts";
import { finding, findingLater } from "../finding-of.ts";
import type { LoadFigures } from "../load/figures.ts";
import { loadFigures } from "../load/load-figures.ts";
import { remembered } from "../remembered.ts";
import { whenAsked } from "../when-asked.ts";
import {
  type AlternateNeed,
  alternateNeed,
  alternateNeededVerdict,
  alternateUsableVerdict,
} from "./alternate-verdicts.ts";
import { distanceVerdict, stopVerdict } from "./distance-verdicts.ts";
import { type FieldFigures, type FlightMasses, fieldGround, withDistances } from "./field-figures.ts";
import { onceMissing } from "./figure.ts";
import { carburettorVerdict, coldAltimeterVerdict, frostVerdict, icingVerdict } from "./ice-verdicts.ts";
import { lightVerdict } from "./light-verdicts.ts";
import { climbVerdicts, performanceWarnings } from "./performance-verdicts.ts";
import { partVerdicts } from "./report-verdicts.ts";
import { FIELD_ROLES, type FieldRole } from "./role.ts";
import { hazardVerdicts, skyVerdicts } from "./sky-verdicts.ts";
import { fieldTime } from "./times.ts";
import type { FieldContext, Told, Warned } from "./told.ts";
import { crosswindVerdict, tailwindVerdict } from "./wind-verdicts.ts";

/** The masses that distances are looked up with; none while not everything aboard is known. */
export function massesOf({ complete, states }: Pick<LoadFigures, "complete" | "states">): FlightMasses {
  if (!complete) return {};
  const massAt = (moment: "take-off" | "landing"): number | undefined =>
    states.find(({ at }) => at === moment)?.mass_kg;
  return { takeOff_kg: massAt("take-off"), landing_kg: massAt("landing") };
}

/** What does not depend on the mass: what is told before the distances, and what after them. */
interface OfGround {
  readonly before: readonly Told[];
  readonly after: readonly Told[];
}

const ofGround = (field: FieldContext): OfGround => ({
  before: [crosswindVerdict(field), ...tailwindVerdict(field)],
  after: [
    ...skyVerdicts(field),
    ...hazardVerdicts(field),
    lightVerdict(field),
    icingVerdict(field),
    ...frostVerdict(field),
    ...carburettorVerdict(field),
    ...coldAltimeterVerdict(field),
    ...(field.figures.role === "alternate" ? alternateUsableVerdict(field) : []),
  ],
});

/** An alternate that no rule asks for stops no flight by not being fit for one. */
function softened(hard: Finding): Finding {
  const { id, status } = worthOf(hard);
  if (status !== "stop") return hard;
  return findingLater({ id, status: "caution" }, (): Verdict => {
    const { verdict } = hard;
    if (verdict.status !== "stop") throw new Error(`${id}: worth a stop, told as ${verdict.status}`);
    const { wayOut, ...said } = verdict;
    return { ...said, status: "caution" };
  });
}

const rememberedGround = remembered<OfGround>();
const rememberedParts = remembered<readonly Told<Warned>[]>();

/** The verdicts of a part of a flight. */
export interface PartFound {
  /** Those of them that may stop a flight. */
  readonly stops: readonly Finding[];
  /** All of them: what at most warns is looked at when somebody asks. */
  readonly all: () => readonly Finding[];
}

function fieldVerdicts({ ground, figures }: FieldAsked, more: readonly Told[], isAsked: boolean): PartFound {
  const { before, after } = rememberedGround(ground, [], () => ofGround(ground));
  const field = { ...ground, figures };
  // a glider is launched by others: its own book has no take-off
  const isLaunched = ground.context.book.aircraft.engine === "none" && figures.role === "departure";
  const distance = distanceVerdict(field);
  const distances = isLaunched ? [] : [distance, ...stopVerdict(field, distance)];
  const climbs = climbVerdicts(field);
  const all = whenAsked(() => {
    const warnings: readonly Told<Warned>[] = performanceWarnings(field);
    const told: readonly Told[] = [...before, ...distances, ...climbs, ...warnings, ...after, ...more];
    const waiting = onceMissing(told.flatMap(({ waitsFor }) => waitsFor ?? []));
    const parts: readonly Told<Warned>[] = rememberedParts(ground, [JSON.stringify(waiting)], () =>
      partVerdicts(ground, waiting),
    );
    const kept = [...told.filter(({ waitsFor }) => waitsFor === undefined), ...parts];
    return kept.map(({ finding: one }) => (isAsked ? one : softened(one)));
  });
  const mayStop = isAsked ? [...before, ...distances.slice(0, 1), ...climbs, ...after, ...more] : [];
  return { stops: mayStop.map((one) => one.finding), all };
}

/** A field that every flight has, and that nobody has named yet. */
function unnamed(role: FieldRole, evidence: readonly string[]): Finding {
  const name = role === "departure" ? "Departure" : "Destination";
  const what = `the field and runway of the ${role}`;
  return finding({
    id: `runway:${role}:field`,
    topic: "runway",
    title: name,
    status: "open",
    says: `No ${role} is named`,
    margin: { value: 0, unit: "", text: "not named" },
    missing: [what],
    working: { lines: [] },
    evidence,
    sources: [],
  });
}

/** The event that planned this flight, as it is. */
function evidenceOf({ state }: Context, flight: Flight): readonly string[] {
  const recorded = flight.id === undefined ? undefined : state.flights.get(flight.id);
  return recorded === undefined ? [] : [recorded.event];
}

const isAlternateAsked = (need: AlternateNeed | undefined): boolean =>
  need === undefined || !need.known || need.needed;

/** One field: what no mass moves, which is remembered by itself, and all of it. */
interface FieldAsked {
  readonly ground: FieldContext;
  readonly figures: FieldFigures;
}

const ofEach = <T>(): Readonly<Record<FieldRole, ReturnType<typeof remembered<T>>>> => ({
  departure: remembered(),
  destination: remembered(),
  alternate: remembered(),
});

/** A field of the plan may be asked about as departure and as destination. */
const rememberedGrounds = ofEach<FieldContext>();
const rememberedFields = remembered<FieldAsked>();
const rememberedNeed = remembered<AlternateNeed | undefined>();
const rememberedVerdicts = remembered<PartFound>();

/** What the conditions at the fields of a flight are worth: wind, distances, sky, reports, daylight, ice. */
export const conditionVerdicts = (
  context: Context,
  flight: Flight,
  masses: FlightMasses = flight.plan === undefined ? {} : massesOf(loadFigures(context.book, flight.plan)),
): readonly Finding[] => conditionsFound(context, flight, masses).flatMap(({ all }) => all());

/** The same, field by field. */
export function conditionsFound(
  context: Context,
  flight: Flight,
  masses: FlightMasses,
): readonly PartFound[] {
  const { plan } = flight;
  if (plan === undefined) return [];
  const evidence = evidenceOf(context, flight);
  const { book, clock } = context;
  const { own, rulePack, flightRules, alternate, places } = plan;
  const shared = [context, flight.id, own, rulePack, flightRules, alternate?.code, places] as const;
  const of = (role: FieldRole): FieldAsked | undefined => {
    const planned = plan[role];
    if (planned === undefined) return undefined;
    const time = fieldTime(flight, plan, role, clock.now_ms);
    const ground = rememberedGrounds[role](planned, [...shared, JSON.stringify(time)], () => ({
      context,
      plan,
      figures: fieldGround(book, plan, planned, role, time, clock.now_ms),
      evidence,
    }));
    const mass_kg = role === "departure" ? masses.takeOff_kg : masses.landing_kg;
    return rememberedFields(ground, [mass_kg], () => ({
      ground,
      figures: withDistances(ground.figures, book, plan, { masses }),
    }));
  };
  const fields = { departure: of("departure"), destination: of("destination"), alternate: of("alternate") };
  const { destination } = fields;
  const need =
    destination === undefined
      ? undefined
      : rememberedNeed(destination.ground, [], () => alternateNeed(plan, destination.ground.figures));
  return FIELD_ROLES.flatMap((role) => {
    const field = fields[role];
    if (field === undefined)
      return role === "alternate" ? [] : { stops: [], all: () => [unnamed(role, evidence)] };
    const needed = role !== "alternate" || isAlternateAsked(need);
    return rememberedVerdicts(field, [needed, role === "destination" ? need : undefined], () =>
      fieldVerdicts(field, role === "destination" ? alternateNeededVerdict(field.ground, need) : [], needed),
    );
  });
}
