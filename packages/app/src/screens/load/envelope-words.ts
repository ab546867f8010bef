import type { LoadFigures, LoadMoment } from "@witnessmark/assess";
import type { Status } from "@witnessmark/ledger";
import { type LoadUnits, safe, symbolOf } from "./load-units.ts";

/** What stands over the envelope: the answer, and what else is wrong or not known. */
export interface LoadAnswer {
  readonly status: Status;
  readonly headline: string;
  readonly more: readonly string[];
}

const MASS_OF: Readonly<Record<LoadMoment, string>> = {
  "zero-fuel": "Zero fuel mass",
  ramp: "Ramp mass",
  "take-off": "Take-off mass",
  landing: "Landing mass",
  alternate: "Landing mass at the alternate",
};

const WHEN: Readonly<Record<LoadMoment, string>> = {
  "zero-fuel": "with the fuel gone",
  ramp: "on the ramp",
  "take-off": "at take-off",
  landing: "at landing",
  alternate: "at the alternate",
};

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
  if (first !== undefined) return { status, headline: first, more: [...rest, ...open] };
  const [fault, ...others] = open;
  if (fault !== undefined) return { status, headline: "Not all is known yet", more: [fault, ...others] };
  const { envelope } = figures;
  if (envelope?.inside !== true)
    return { status, headline: "Not known whether it is inside the envelope", more: [] };
  if (envelope.insideUntilDry === false) {
    return {
      status,
      headline: "Inside to the landing, outside before the tanks are dry",
      more: ["Land with the reserve in the tanks: on the last of it the centre of gravity is past its limit"],
    };
  }
  if (status === "clear") return { status, headline: "The whole flight inside the envelope", more: [] };
  return {
    status,
    headline: "Inside, but too close to be sure",
    more: closeCalls(figures),
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
      ...(floor?.status === "stop" ? [over(`Floor of ${lowerFirst(name)}`, floor.left)] : []),
    ]),
    ...groups.flatMap(({ name, limit }) => (limit.status === "stop" ? [over(name, limit.left)] : [])),
    ...(lateral?.status === "stop" ? ["More to one side than the book allows"] : []),
    ...(imbalance?.status === "stop" ? [over("Fuel on one side", imbalance.left)] : []),
  ];
}

/** Why it is a caution: the chance of a limit being kept, by how the weights are known. */
function closeCalls({ states, envelope }: LoadFigures): readonly string[] {
  const percent = (chance_1: number) => `${Math.floor(chance_1 * 100)} %`;
  return [
    ...states.flatMap(({ at, mass }) =>
      mass?.status === "caution" && mass.chance_1 !== undefined
        ? [`${MASS_OF[at]}: kept with ${percent(mass.chance_1)}, by how the weights are known`]
        : [],
    ),
    ...(envelope?.status === "caution" && envelope.chance_1 !== undefined
      ? [`Centre of gravity: kept with ${percent(envelope.chance_1)}, by how the weights are known`]
      : []),
  ];
}

export const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
