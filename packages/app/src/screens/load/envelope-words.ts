import type { LoadFigures, WorstPoint } from "@witnessmark/assess";
import { withSymbol } from "@witnessmark/engine";
import type { Status } from "@witnessmark/ledger";
import { lower } from "../../words/capital.ts";
import { closeCalls } from "./close-calls.ts";
import { armBeside, type LoadUnits, limitText, safe, symbolOf } from "./load-units.ts";
import { MASS_OF, WHEN } from "./moment-words.ts";

/** What stands over the envelope: the answer, and what else is wrong or not known. */
export interface LoadAnswer {
  readonly status: Status;
  readonly headline: string;
  readonly more: readonly string[];
}

const EDGES = { forward: "Ahead of the forward limit", aft: "Behind the aft limit" } as const;

/** The load in one sentence, worst first. */
export function loadAnswer(figures: LoadFigures, units: LoadUnits): LoadAnswer {
  const wrong = [
    ...envelopeWrong(figures, units),
    ...massesWrong(figures, units),
    ...placesWrong(figures, units),
  ];
  const open = [
    ...figures.faults.map(({ says }) => says),
    ...figures.missing.map(({ what }) => `Not known: ${what}`),
  ];
  const { status } = figures;
  const [first, ...rest] = wrong;
  if (first !== undefined) {
    const where = whereWorst(figures, units);
    return { status, headline: first, more: [...where, ...rest, ...open] };
  }
  const [fault, ...others] = open;
  if (fault !== undefined) return { status, headline: "Not all is known yet", more: [fault, ...others] };
  const { envelope } = figures;
  if (envelope?.inside !== true)
    return { status, headline: "Not known whether it is inside the envelope", more: [] };
  if (envelope.insideUntilDry === false) {
    return {
      status,
      headline: "Inside to the landing, outside before the tanks are dry",
      more: [
        "Land with the reserve in the tanks: on the last of it the centre of gravity is past its limit",
        ...closeCalls(figures, units),
      ],
    };
  }
  if (status === "clear") return { status, headline: "The whole flight inside the envelope", more: [] };
  return {
    status,
    headline: "Inside, but too close to be sure",
    more: closeCalls(figures, units),
  };
}

function envelopeWrong({ envelope }: LoadFigures, units: LoadUnits): readonly string[] {
  const worst = envelope?.worst;
  if (envelope?.inside !== false || worst === undefined) return [];
  const when = worst.at === undefined ? "in flight" : WHEN[worst.at];
  const gear = worst.gearUp ? ", gear up" : "";
  if (worst.edge === "forward" || worst.edge === "aft") {
    const by = `${safe(-worst.left, units.margin, "up")} ${symbolOf(units.margin)}`;
    return [`${EDGES[worst.edge]} by ${by} ${when}${gear}`];
  }
  const by = `${safe(-worst.left, units.mass, "up")} ${symbolOf(units.mass)}`;
  return [`${worst.edge === "upper" ? "Above" : "Below"} the envelope by ${by} ${when}${gear}`];
}

/** The figures behind an edge that is passed: where the centre of gravity is, where the edge, and when. */
function whereWorst({ envelope }: LoadFigures, units: LoadUnits): readonly string[] {
  const worst = envelope?.worst;
  if (envelope?.inside !== false || worst === undefined || worst.left >= 0) return [];
  const { edge, arm_m, at, burnt_kg } = worst;
  if (edge !== "forward" && edge !== "aft") return [];
  const is = withSymbol(armBeside(arm_m, edge, units.arm), units.arm);
  const limit = withSymbol(limitText(edgeArm_m(worst), edge, units.arm), units.arm);
  const when =
    at === undefined ? `, after ${withSymbol(safe(burnt_kg, units.mass, "up"), units.mass)} burnt` : "";
  return [`${is}, ${edge === "aft" ? "at most" : "at least"} ${limit}${when}`];
}

/** The arm of the edge that a point lies nearest to, or past. */
export const edgeArm_m = ({ edge, arm_m, left }: Pick<WorstPoint, "edge" | "arm_m" | "left">): number =>
  edge === "aft" ? arm_m + left : arm_m - left;

function massesWrong({ states }: LoadFigures, units: LoadUnits): readonly string[] {
  return states.flatMap(({ at, mass }) =>
    mass === undefined || mass.status !== "stop"
      ? []
      : [`${MASS_OF[at]} ${safe(-mass.left, units.mass, "up")} ${symbolOf(units.mass)} over`],
  );
}

function placesWrong(figures: LoadFigures, units: LoadUnits): readonly string[] {
  const { stations, groups, lateral, imbalance } = figures;
  const over = (name: string, left: number) =>
    `${name} ${safe(-left, units.mass, "up")} ${symbolOf(units.mass)} over`;
  return [
    ...stations.flatMap(({ name, limit, floor }) => [
      ...(limit?.status === "stop" ? [over(name, limit.left)] : []),
      ...(floor?.status === "stop" ? [over(`Floor of ${lower(name)}`, floor.left)] : []),
    ]),
    ...groups.flatMap(({ name, limit }) => (limit.status === "stop" ? [over(name, limit.left)] : [])),
    ...(lateral?.status === "stop" ? ["More to one side than the book allows"] : []),
    ...(imbalance?.status === "stop" ? [over("Fuel on one side", imbalance.left)] : []),
  ];
}
