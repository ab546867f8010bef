import type { LoadEnvelope } from "@witnessmark/book";
import {
  type BurnPath,
  type EnvelopeAlongBurn,
  envelopeAlongBurn,
  pointInEnvelope,
} from "@witnessmark/engine";
import type { Status } from "@witnessmark/ledger";
import { SURE_FROM_1 } from "../figures.ts";
import type { EnvelopeFigures, WorstPoint } from "./figures.ts";
import { momentOf, pathBetween, shifted, type WholeBurn } from "./whole-burn.ts";

interface Looked {
  readonly along: EnvelopeAlongBurn;
  readonly gearUp: boolean;
}

/** With the gear down, and with it up where that moves the centre of gravity. */
function lookedAt(path: BurnPath, envelope: LoadEnvelope, gear_kgm: number): readonly Looked[] {
  const down = { along: envelopeAlongBurn(path, envelope), gearUp: false };
  if (gear_kgm === 0) return [down];
  return [down, { along: envelopeAlongBurn(shifted(path, gear_kgm), envelope), gearUp: true }];
}

type Found = Omit<WorstPoint, "at">;

/** Past an edge above or below, where there is no edge ahead or behind to be measured from. */
function aboveOrBelow({ along, gearUp }: Looked, envelope: LoadEnvelope): readonly Found[] {
  return along.outside.flatMap(({ from, to }) =>
    [from, to].flatMap((moment): readonly Found[] => {
      const { margins } = pointInEnvelope(envelope, moment);
      const { upper_kg, lower_kg } = margins;
      if (upper_kg !== undefined && upper_kg < 0)
        return [{ ...moment, edge: "upper", left: upper_kg, gearUp }];
      if (lower_kg !== undefined && lower_kg < 0)
        return [{ ...moment, edge: "lower", left: lower_kg, gearUp }];
      return [];
    }),
  );
}

function worstOf(looked: readonly Looked[], envelope: LoadEnvelope): Found | undefined {
  const sides = looked.flatMap(({ along, gearUp }) =>
    (["forward", "aft"] as const).flatMap((edge): readonly Found[] => {
      const side = along[edge];
      return side === undefined ? [] : [{ ...side.at, edge, left: side.margin_m, gearUp }];
    }),
  );
  const nearest = least(sides);
  const outside = looked.some(({ along }) => !along.inside);
  if (!outside || (nearest !== undefined && nearest.left < 0)) return nearest;
  return least(looked.flatMap((one) => aboveOrBelow(one, envelope))) ?? nearest;
}

const least = (all: readonly Found[]): Found | undefined =>
  all.reduce<Found | undefined>(
    (best, one) => (best === undefined || one.left < best.left ? one : best),
    undefined,
  );

/**
 * The flight in its envelope, from take-off to the last landing that is planned, and from there until the tanks are
 * dry. Where the end is not known, it is inside only when all of the burn is.
 *
 * @param chance_1 the probability that the edges are kept at take-off and landing
 */
export function envelopeFigures(
  envelope: LoadEnvelope,
  burn: WholeBurn | undefined,
  gear_kgm: number,
  complete: boolean,
  chance_1: number | undefined,
): EnvelopeFigures {
  const { id, name, points } = envelope;
  const none = { id, name, points, inside: undefined, insideUntilDry: undefined, status: "open" as const };
  if (burn?.takeOff === undefined) return none;
  const end = burn.alternate ?? burn.landing;
  const flown = lookedAt(pathBetween(burn.path, burn.takeOff, end ?? burn.takeOff), envelope, gear_kgm);
  const rest = lookedAt(pathBetween(burn.path, end ?? burn.takeOff, burn.dry), envelope, gear_kgm);
  const insideFlown = flown.every(({ along }) => along.inside);
  const insideUntilDry = rest.every(({ along }) => along.inside);
  const inside = insideFlown ? (end !== undefined || insideUntilDry ? true : undefined) : false;
  const worst = worstOf(inside === undefined ? [...flown, ...rest] : flown, envelope);
  const at = worst === undefined ? undefined : momentOf(burn, worst.burnt_kg);
  return {
    ...none,
    inside,
    insideUntilDry,
    ...(worst === undefined ? {} : { worst: { ...worst, ...(at === undefined ? {} : { at }) } }),
    ...(chance_1 === undefined ? {} : { chance_1 }),
    status: complete ? statusOf(inside, insideUntilDry, chance_1 ?? 1) : "open",
  };
}

/** Inside to the landing is what must be; a reserve that cannot be flown on, or weights not known well, warn. */
function statusOf(inside: boolean | undefined, insideUntilDry: boolean, chance_1: number): Status {
  if (inside === undefined) return "open";
  if (!inside) return "stop";
  return insideUntilDry && chance_1 >= SURE_FROM_1 ? "clear" : "caution";
}
