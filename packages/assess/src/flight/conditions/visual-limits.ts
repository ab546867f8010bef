import type { Source } from "../../assessment.ts";
import type { AirspaceClass, RulePack } from "../../rules/rule-pack.ts";
import { asSource } from "../words.ts";

/** What a rule asks to take off and land by sight, in the airspace that asks least and in the one that asks most. */
export interface VisualLimit {
  readonly least_m: number;
  readonly most_m: number;
}

export interface VisualLimits {
  readonly ceiling: VisualLimit;
  readonly visibility: VisualLimit;
  readonly sources: readonly Source[];
}

/** Where the class of the airspace at a field is not known: what all of them allow is allowed. */
const CLASSES: readonly AirspaceClass[] = ["B", "C", "D", "E", "G"];
const BEYOND_M = 1e6;

/** The least value that a rule permits, found by halving; the rule permits all above it. */
function leastPermitted_m(permits: (value_m: number) => boolean): number {
  if (permits(0)) return 0;
  let [low, high] = [0, BEYOND_M];
  while (high - low > 1e-4) {
    const middle = (low + high) / 2;
    if (permits(middle)) high = middle;
    else low = middle;
  }
  return Math.round(high * 1000) / 1000;
}

function limitsFor(
  pack: RulePack,
  nights: readonly boolean[],
  classes: readonly AirspaceClass[],
): VisualLimits {
  const places = classes.flatMap((airspace) => nights.map((night) => ({ airspace, night })));
  const asks = (input: (value_m: number) => object): VisualLimit => {
    const least = places.map((place) =>
      leastPermitted_m((value_m) => {
        const ruling = pack.visualAtField({ ...place, ...input(value_m) });
        return ruling.known && ruling.permitted;
      }),
    );
    return { least_m: Math.min(...least), most_m: Math.max(...least) };
  };
  const citations = places.flatMap((place) => pack.visualAtField(place).citations);
  return {
    ceiling: asks((ceiling_m) => ({ ceiling_m, visibility_m: BEYOND_M })),
    visibility: asks((visibility_m) => ({ visibility_m, ceiling_m: "none" })),
    sources: [
      ...new Map(citations.map((one) => [`${one.title} ${one.locator ?? ""}`, asSource(one)])).values(),
    ],
  };
}

const known = new WeakMap<RulePack, Map<string, VisualLimits>>();

/** Whether the rules let anybody take off or land by sight in a class of airspace, however fine the weather. */
export const isFlownBySight = (pack: RulePack, airspace: AirspaceClass): boolean => {
  const ruling = pack.visualAtField({ airspace, night: false, ceiling_m: "none", visibility_m: BEYOND_M });
  return ruling.known && ruling.permitted;
};

/**
 * @param night unknown: what both day and night ask
 * @param airspace unknown: the least and the most that any class asks
 */
export function visualLimits(
  pack: RulePack,
  night: boolean | undefined,
  airspace: AirspaceClass | undefined,
): VisualLimits {
  const ofPack = known.get(pack) ?? new Map<string, VisualLimits>();
  known.set(pack, ofPack);
  const key = `${night} ${airspace}`;
  const found = ofPack.get(key);
  if (found !== undefined) return found;
  const made = limitsFor(
    pack,
    night === undefined ? [false, true] : [night],
    airspace === undefined ? CLASSES : [airspace],
  );
  ofPack.set(key, made);
  return made;
}
