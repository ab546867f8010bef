import type { Flight, Verdict } from "../../assessment.ts";
import type { Context } from "../../context.ts";
import { type Finding, worthOf } from "../../finding.ts";
import { finding, findingLater } from "../finding-of.ts";
import type { LoadFigures } from "../load/figures.ts";
import { loadFigures } from "../load/load-figures.ts";
import { remembered } from "../remembered.ts";
import {
  type AlternateNeed,
  alternateNeed,
  alternateNeededVerdict,
  alternateUsableVerdict,
} from "./alternate-verdicts.ts";
import { distanceVerdicts } from "./distance-verdicts.ts";
import { type FieldFigures, type FlightMasses, fieldGround, withDistances } from "./field-figures.ts";
import { onceMissing } from "./figure.ts";
import { coldAltimeterVerdict, frostVerdict, icingVerdict } from "./ice-verdicts.ts";
import { lightVerdict } from "./light-verdicts.ts";
import { performanceVerdicts } from "./performance-verdicts.ts";
import { partVerdicts } from "./report-verdicts.ts";
import { FIELD_ROLES, type FieldRole } from "./role.ts";
import { hazardVerdicts, skyVerdicts } from "./sky-verdicts.ts";
import { fieldTime } from "./times.ts";
import type { FieldContext, Told } from "./told.ts";
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
const rememberedParts = remembered<readonly Told[]>();

function fieldVerdicts(
  { ground, figures }: FieldAsked,
  more: readonly Told[],
  isAsked: boolean,
): readonly Finding[] {
  const { before, after } = rememberedGround(ground, [], () => ofGround(ground));
  const all = [
    ...before,
    ...distanceVerdicts({ ...ground, figures }),
    ...performanceVerdicts({ ...ground, figures }),
    ...after,
    ...more,
  ];
  const waiting = onceMissing(all.flatMap(({ waitsFor }) => waitsFor ?? []));
  const parts = rememberedParts(ground, [JSON.stringify(waiting)], () => partVerdicts(ground, waiting));
  const kept = [...all.filter(({ waitsFor }) => waitsFor === undefined), ...parts].map((one) => one.finding);
  return isAsked ? kept : kept.map(softened);
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
const rememberedVerdicts = remembered<readonly Finding[]>();

/** What the conditions at the fields of a flight are worth: wind, distances, sky, reports, daylight, ice. */
export function conditionVerdicts(
  context: Context,
  flight: Flight,
  masses: FlightMasses = flight.plan === undefined ? {} : massesOf(loadFigures(context.book, flight.plan)),
): readonly Finding[] {
  const { plan } = flight;
  if (plan === undefined) return [];
  const evidence = evidenceOf(context, flight);
  const { book, clock } = context;
  const { own, rulePack, flightRules, alternate } = plan;
  const shared = [context, flight.id, own, rulePack, flightRules, alternate?.code] as const;
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
    if (field === undefined) return role === "alternate" ? [] : [unnamed(role, evidence)];
    const needed = role !== "alternate" || isAlternateAsked(need);
    return rememberedVerdicts(field, [needed, role === "destination" ? need : undefined], () =>
      fieldVerdicts(field, role === "destination" ? alternateNeededVerdict(field.ground, need) : [], needed),
    );
  });
}
