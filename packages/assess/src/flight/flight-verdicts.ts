import type { FlightPlan, PlannedFlight } from "@witnessmark/ledger";
import { bookSource } from "../book-index.ts";
import type { Context } from "../context.ts";
import type { Finding } from "../finding.ts";
import { conditionsFound, massesOf, type PartFound } from "./conditions/condition-verdicts.ts";
import type { FlightMasses } from "./conditions/field-figures.ts";
import { finding } from "./finding-of.ts";
import { fuelVerdicts } from "./fuel/fuel-verdicts.ts";
import { type WorkedLoad, workLoad } from "./load/load-figures.ts";
import { loadVerdicts } from "./load/load-verdicts.ts";
import { oxygenVerdicts } from "./oxygen/oxygen-verdicts.ts";
import { remembered } from "./remembered.ts";
import { words } from "./words.ts";

/** One open verdict for the route: fuel, oxygen and the landing all wait for it. */
const noRoute = (context: Context, plan: FlightPlan): readonly Finding[] =>
  // a glider burns nothing on its way
  plan.route !== undefined || context.book.aircraft.engine === "none"
    ? []
    : [
        finding({
          id: "fuel:route",
          topic: "fuel",
          title: "Route",
          says: "Not said how far, how long and how high",
          margin: words("not said"),
          status: "open",
          missing: ["distance, time and level of the flight"],
          evidence: [],
          working: { lines: [] },
          sources: [bookSource(context.book, "fuel, burn")],
        }),
      ];

/** The verdicts of the flight's numbers. A flight that is only named, or none, has none. */
export const flightVerdicts = (context: Context, flight: PlannedFlight | null): readonly Finding[] =>
  [...flightParts(context, flight)].flatMap(({ all }) => all());

/**
 * The same part by part: first what is aboard, then each field. Each is worked out when it is come to, so that whoever
 * looks for one verdict need not make them all.
 */
export function* flightParts(context: Context, flight: PlannedFlight | null): Generator<PartFound, void> {
  const plan = flight?.plan;
  if (flight === null || plan === undefined) return;
  const { masses, findings } = aboard(context, flight, plan);
  yield { stops: findings, all: () => findings };
  yield* conditionsFound(context, flight, masses);
}

interface Aboard {
  readonly masses: FlightMasses;
  readonly findings: readonly Finding[];
}

const rememberedLoad = remembered<{ readonly worked: WorkedLoad; readonly findings: readonly Finding[] }>();
const rememberedAboard = remembered<Aboard>();

/** Load, fuel and oxygen: of the fields they ask only where they are. */
function aboard(context: Context, flight: PlannedFlight, plan: FlightPlan): Aboard {
  const { load, route, rulePack, flightRules, departure, destination, alternate } = plan;
  const loadOf = () => {
    const worked = workLoad(context.book, plan);
    return { worked, findings: loadVerdicts(context, plan, worked) };
  };
  const make = (): Aboard => {
    const { worked, findings } =
      load === undefined ? loadOf() : rememberedLoad(load, [context.book, route, alternate?.code], loadOf);
    return {
      masses: massesOf(worked.figures),
      findings: [
        ...findings,
        ...noRoute(context, plan),
        ...fuelVerdicts(context, flight, plan, worked.figures),
        ...oxygenVerdicts(context, plan, worked.figures),
      ],
    };
  };
  if (load === undefined) return make();
  const { id, from, to, offBlocks } = flight;
  const fields = [departure?.code, destination?.code, alternate?.code, plan.places];
  return rememberedAboard(
    load,
    [context, route, rulePack, flightRules, id, from, to, offBlocks, ...fields],
    make,
  );
}
