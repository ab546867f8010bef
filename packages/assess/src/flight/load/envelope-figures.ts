import type { LoadEnvelope } from "@witnessmark/book";
import {
  type BurnPath,
  type EnvelopeAlongBurn,
  envelopeAlongBurn,
  isInsideAlongBurn,
  pointInEnvelope,
} from "@witnessmark/engine";
import type { Status } from "@witnessmark/ledger";
import { SURE_FROM_1 } from "../figures.ts";
import { whenAsked } from "../when-asked.ts";
import type { EnvelopeFigures, LoadPart, WorstPoint } from "./figures.ts";
import { momentOf, pathBetween, shifted, type WholeBurn } from "./whole-burn.ts";

/** A part of the burn with the gear down, or with it up where that moves the centre of gravity. */
interface Leg {
  readonly path: BurnPath;
  readonly gearUp: boolean;
}

interface Looked {
  readonly along: EnvelopeAlongBurn;
  readonly gearUp: boolean;
}

function legsOf(path: BurnPath, gear_kgm: number): readonly Leg[] {
  const down = { path, gearUp: false };
  return gear_kgm === 0 ? [down] : [down, { path: shifted(path, gear_kgm), gearUp: true }];
}

type Found = Omit<WorstPoint, "at" | "status" | "parts">;

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

function worstOf(legs: readonly Leg[], envelope: LoadEnvelope): Found | undefined {
  const looked = legs.map(({ path, gearUp }) => ({ along: envelopeAlongBurn(path, envelope), gearUp }));
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
 * @param partsAt what the aircraft is the sum of when so much has burnt
 */
export function envelopeFigures(
  envelope: LoadEnvelope,
  burn: WholeBurn | undefined,
  gear_kgm: number,
  complete: boolean,
  chance_1: number | undefined,
  partsAt: (burnt_kg: number, gearUp: boolean) => readonly LoadPart[],
): EnvelopeFigures {
  const { id, name, points } = envelope;
  const none = { id, name, points, inside: undefined, insideUntilDry: undefined, status: "open" as const };
  if (burn === undefined) return { ...none, worst: undefined };
  const { flown, rest, inside, insideUntilDry } = alongFlight(envelope, burn, gear_kgm);
  if (insideUntilDry === undefined && inside === undefined) return { ...none, worst: undefined };
  const worst = whenAsked((): WorstPoint | undefined => {
    const found = worstOf(inside === undefined ? [...flown, ...rest] : flown, envelope);
    if (found === undefined) return undefined;
    const at = momentOf(burn, found.burnt_kg);
    const { burnt_kg, gearUp } = found;
    return {
      ...found,
      ...(at === undefined ? {} : { at }),
      status: complete ? statusOf(inside, true, chance_1 ?? 1) : "open",
      get parts() {
        return partsAt(burnt_kg, gearUp);
      },
    };
  });
  return {
    ...none,
    inside,
    insideUntilDry,
    get worst() {
      return worst();
    },
    ...(chance_1 === undefined ? {} : { chance_1 }),
    status: complete ? statusOf(inside, insideUntilDry === true, chance_1 ?? 1) : "open",
  };
}

interface AlongFlight extends Pick<EnvelopeFigures, "inside" | "insideUntilDry"> {
  /** From take-off to the last landing, and from there until the tanks are dry. */
  readonly flown: readonly Leg[];
  readonly rest: readonly Leg[];
}

function alongFlight(envelope: LoadEnvelope, burn: WholeBurn, gear_kgm: number): AlongFlight {
  const { path, takeOff, dry } = burn;
  // when it takes off is not known: it is outside then where no moment of the burn is inside, and else nobody can tell
  if (takeOff === undefined) {
    const inside = isOutsideThroughout(path, envelope) ? false : undefined;
    return { flown: [{ path, gearUp: false }], rest: [], inside, insideUntilDry: undefined };
  }
  const end = burn.alternate ?? burn.landing;
  const flown = legsOf(pathBetween(path, takeOff, end ?? takeOff), gear_kgm);
  const rest = legsOf(pathBetween(path, end ?? takeOff, dry), gear_kgm);
  const isInside = (leg: Leg): boolean => isInsideAlongBurn(leg.path, envelope);
  const insideUntilDry = rest.every(isInside);
  const inside = flown.every(isInside) ? (end !== undefined || insideUntilDry ? true : undefined) : false;
  return { flown, rest, inside, insideUntilDry };
}

function isOutsideThroughout(path: BurnPath, envelope: LoadEnvelope): boolean {
  const [part, ...more] = envelopeAlongBurn(path, envelope).outside;
  const [first, last] = [path.states[0], path.states.at(-1)];
  return (
    part !== undefined &&
    more.length === 0 &&
    part.from.burnt_kg === first?.burnt_kg &&
    part.to.burnt_kg === last?.burnt_kg
  );
}

/** Inside to the landing is what must be; a reserve that cannot be flown on, or weights not known well, warn. */
function statusOf(inside: boolean | undefined, insideUntilDry: boolean, chance_1: number): Status {
  if (inside === undefined) return "open";
  if (!inside) return "stop";
  return insideUntilDry && chance_1 >= SURE_FROM_1 ? "clear" : "caution";
}
