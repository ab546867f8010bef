import type { Status } from "@witnessmark/ledger";

/** Where on the screens of a flight something was said: an item, a tank, a part of the route. */
export interface InputPlace {
  readonly kind:
    | "item"
    | "tank"
    | "station"
    | "envelope"
    | "fuel-temperature"
    | "totaliser"
    | "route"
    | "rules";
  /** The id of the item, tank or station; the name of the part of the route. */
  readonly id: string;
}

/** Something that was said of a flight and cannot be, at its place. What rests on it is not known. */
export interface InputFault {
  readonly where: InputPlace;
  /** What was expected and what came, for the person who typed it. */
  readonly says: string;
}

/** A part of the plan or of the book that is not there; what rests on it is not known. */
export interface MissingPart {
  /** `fuel`, `trip`, `book-loading` */
  readonly part: string;
  /** For people: "what is in the left wing tank". */
  readonly what: string;
}

/** A value held against a limit. */
export interface Limited {
  readonly value: number;
  readonly limit: number;
  /** What is left to the limit, in the unit of both; below zero when past it. On the limit is within it. */
  readonly left: number;
  /** The probability that the limit is kept, where the value is not known exactly. */
  readonly chance_1?: number;
  readonly status: Status;
}

/** Needed for clear: the engine's own rule for readings, here for weights. */
export const SURE_FROM_1 = 0.95;

const WORSE: Readonly<Record<Status, number>> = { clear: 0, open: 1, caution: 2, stop: 3 };

/** The worst of some: stop, caution, open, clear. */
export const worstStatus = (all: readonly Status[]): Status =>
  all.reduce<Status>((worst, one) => (WORSE[one] > WORSE[worst] ? one : worst), "clear");

/**
 * What a value is worth against a limit that it must not pass. What is not complete is open, unless the part that is
 * known is past the limit already.
 */
export function limited(
  value: number,
  limit: number,
  { complete, chance_1 }: { readonly complete: boolean; readonly chance_1?: number | undefined },
): Limited {
  const left = limit - value;
  const status: Status =
    left < -withinRounding(limit)
      ? "stop"
      : !complete
        ? "open"
        : chance_1 !== undefined && chance_1 < SURE_FROM_1
          ? "caution"
          : "clear";
  return { value, limit, left, ...(chance_1 === undefined ? {} : { chance_1 }), status };
}

/** What conversions and sums leave over: a billionth of a gram on an aircraft. On the limit is within it. */
const withinRounding = (limit: number): number => 1e-12 * Math.max(1, Math.abs(limit));
