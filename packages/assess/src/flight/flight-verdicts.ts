import type { FlightPlan, PlannedFlight } from "@witnessmark/ledger";
import { bookSource } from "../book-index.ts";
import type { Context } from "../context.ts";
import type { Finding } from "../finding.ts";
import { conditionVerdicts, massesOf } from "./conditions/condition-verdicts.ts";
import { finding } from "./finding-of.ts";
import { fuelVerdicts } from "./fuel/fuel-verdicts.ts";
import { workLoad } from "./load/load-figures.ts";
import { loadVerdicts } from "./load/load-verdicts.ts";
import { oxygenVerdicts } from "./oxygen/oxygen-verdicts.ts";
import { words } from "./words.ts";

/** One open verdict for the route: fuel, oxygen and the landing all wait for it. */
const noRoute = (context: Context, plan: FlightPlan): readonly Finding[] =>
  plan.route !== undefined
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
export function flightVerdicts(context: Context, flight: PlannedFlight | null): readonly Finding[] {
  const plan = flight?.plan;
  if (flight === null || plan === undefined) return [];
  const load = workLoad(context.book, plan);
  return [
    ...loadVerdicts(context, plan, load),
    ...noRoute(context, plan),
    ...fuelVerdicts(context, flight, plan, load.figures),
    ...oxygenVerdicts(context, plan, load.figures),
    ...conditionVerdicts(context, flight, massesOf(load.figures)),
  ];
}
