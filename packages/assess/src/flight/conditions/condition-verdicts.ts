import type { Flight } from "../../assessment.ts";
import type { Context } from "../../context.ts";
import type { Finding } from "../../finding.ts";
import { finding } from "../finding-of.ts";
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
import { type FlightMasses, fieldFigures } from "./field-figures.ts";
import { onceMissing } from "./figure.ts";
import { coldAltimeterVerdict, frostVerdict, icingVerdict } from "./ice-verdicts.ts";
import { lightVerdict } from "./light-verdicts.ts";
import { partVerdicts } from "./report-verdicts.ts";
import { FIELD_ROLES, type FieldRole } from "./role.ts";
import { hazardVerdicts, skyVerdicts } from "./sky-verdicts.ts";
import type { FieldContext, Told } from "./told.ts";
import { crosswindVerdict, tailwindVerdict } from "./wind-verdicts.ts";

/** The masses that distances are looked up with; none while not everything aboard is known. */
export function massesOf({ complete, states }: Pick<LoadFigures, "complete" | "states">): FlightMasses {
  if (!complete) return {};
  const massAt = (moment: "take-off" | "landing"): number | undefined =>
    states.find(({ at }) => at === moment)?.mass_kg;
  return { takeOff_kg: massAt("take-off"), landing_kg: massAt("landing") };
}

function dependents(field: FieldContext): readonly Told[] {
  return [
    crosswindVerdict(field),
    ...tailwindVerdict(field),
    ...distanceVerdicts(field),
    ...skyVerdicts(field),
    ...hazardVerdicts(field),
    lightVerdict(field),
    icingVerdict(field),
    ...frostVerdict(field),
    ...coldAltimeterVerdict(field),
    ...(field.figures.role === "alternate" ? alternateUsableVerdict(field) : []),
  ];
}

/** An alternate that no rule asks for stops no flight by not being fit for one. */
function softened({ verdict, ...rest }: Finding): Finding {
  if (verdict.status !== "stop") return { verdict, ...rest };
  const { wayOut, status, ...said } = verdict;
  return { ...rest, verdict: { ...said, status: "caution" } };
}

function fieldVerdicts(field: FieldContext, more: readonly Told[], isAsked: boolean): readonly Finding[] {
  const all = [...dependents(field), ...more];
  const waiting = onceMissing(all.flatMap(({ waitsFor }) => waitsFor ?? []));
  const kept = [...all.filter(({ waitsFor }) => waitsFor === undefined), ...partVerdicts(field, waiting)].map(
    (one) => one.finding,
  );
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

/** A field of the plan may be asked about as departure and as destination. */
const rememberedFields: Readonly<Record<FieldRole, ReturnType<typeof remembered<FieldContext | undefined>>>> =
  {
    departure: remembered(),
    destination: remembered(),
    alternate: remembered(),
  };
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
  const { offBlocks } = flight;
  const { route, own, rulePack, flightRules, alternate } = plan;
  const shared = [context, flight.id, offBlocks, route, own, rulePack, flightRules, alternate?.code] as const;
  const of = (role: FieldRole): FieldContext | undefined => {
    const planned = plan[role];
    if (planned === undefined) return undefined;
    const mass_kg = role === "departure" ? masses.takeOff_kg : masses.landing_kg;
    return rememberedFields[role](planned, [...shared, mass_kg], () => {
      const figures = fieldFigures(book, flight, role, clock.now_ms, { masses });
      return figures === undefined ? undefined : { context, plan, figures, evidence };
    });
  };
  const fields = { departure: of("departure"), destination: of("destination"), alternate: of("alternate") };
  const need = alternateNeed(plan, fields.destination?.figures);
  return FIELD_ROLES.flatMap((role) => {
    const field = fields[role];
    if (field === undefined) return role === "alternate" ? [] : [unnamed(role, evidence)];
    const needed = role !== "alternate" || isAlternateAsked(need);
    const asked = role === "destination" ? need : undefined;
    return rememberedVerdicts(field, [needed, JSON.stringify(asked)], () =>
      fieldVerdicts(field, role === "destination" ? alternateNeededVerdict(field, need) : [], needed),
    );
  });
}
