import { type Limited, type LoadFigures, SURE_FROM_1 } from "@witnessmark/assess";
import { withSymbol } from "@witnessmark/engine";
import { lower } from "../../words/capital.ts";
import { edgeWords, type LoadUnits, plain, safe } from "./load-units.ts";
import { MASS_OF, WHEN } from "./moment-words.ts";

/** Something within its limit whose weight is not known well enough to be sure of it. */
interface CloseCall {
  readonly what: string;
  readonly chance_1: number;
}

const percent = (chance_1: number): string => withSymbol(String(Math.floor(chance_1 * 100)), "percent");
const NEEDED = `${percent(SURE_FROM_1)} are needed`;

/** Why it is a caution: what is too close, the least sure first, each with the chance that its limit is kept. */
export function closeCalls(figures: LoadFigures, units: LoadUnits): readonly string[] {
  const calls = [...ofPlaces(figures, units), ...ofMasses(figures, units), ...ofEdges(figures, units)];
  return calls
    .toSorted((a, b) => a.chance_1 - b.chance_1)
    .map(({ what, chance_1 }, index) => {
      const sure = `${what}: kept with ${percent(chance_1)}`;
      return index === 0 ? `${sure}, by how the weights are known; ${NEEDED}` : sure;
    });
}

const isClose = (limit: Limited | undefined): limit is Limited & { readonly chance_1: number } =>
  limit?.status === "caution" && limit.chance_1 !== undefined;

/** "Tail locker 38 of 45 kg" */
const ofLimit = (name: string, { value, limit }: Limited, { mass }: LoadUnits): string =>
  `${name}, ${plain(value, mass)} of ${withSymbol(safe(limit, mass, "down"), mass)}`;

/** Of a place's own limit and its floor's, the one less sure: they hold the same weight. */
function ofPlaces({ stations, groups }: LoadFigures, units: LoadUnits): readonly CloseCall[] {
  return [
    ...stations.flatMap(({ name, limit, floor }) => {
      const named = [
        { name, limit },
        { name: `Floor of ${lower(name)}`, limit: floor },
      ];
      return named
        .flatMap((one) =>
          isClose(one.limit)
            ? [{ what: ofLimit(one.name, one.limit, units), chance_1: one.limit.chance_1 }]
            : [],
        )
        .toSorted((a, b) => a.chance_1 - b.chance_1)
        .slice(0, 1);
    }),
    ...groups.flatMap(({ name, limit }) =>
      isClose(limit) ? [{ what: ofLimit(`${name} together`, limit, units), chance_1: limit.chance_1 }] : [],
    ),
  ];
}

const ofMasses = ({ states }: LoadFigures, units: LoadUnits): readonly CloseCall[] =>
  states.flatMap(({ at, mass }) =>
    isClose(mass) ? [{ what: ofLimit(MASS_OF[at], mass, units), chance_1: mass.chance_1 }] : [],
  );

/** The moment at which the edges are the least sure. */
const ofEdges = ({ states }: LoadFigures, units: LoadUnits): readonly CloseCall[] =>
  states
    .filter(({ edges, inEnvelope }) => edges === "caution" && inEnvelope)
    .toSorted((a, b) => a.chance_1 - b.chance_1)
    .slice(0, 1)
    .map(({ at, nearest, chance_1 }) => ({
      what: `Centre of gravity ${WHEN[at]}${nearest === undefined ? "" : `, ${edgeWords(nearest, units)}`}`,
      chance_1,
    }));
