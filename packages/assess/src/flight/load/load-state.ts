import type { LoadEnvelope, Loading } from "@witnessmark/book";
import {
  armsInEnvelope,
  type LoadedState,
  probabilityOfMassLimit,
  type UncertainState,
} from "@witnessmark/engine";
import type { Status } from "@witnessmark/ledger";
import { type Limited, limited, SURE_FROM_1, worstStatus } from "../figures.ts";
import { chanceOfEdges } from "./chance.ts";
import type { LoadMoment, LoadPart, LoadState, NearestEdge } from "./figures.ts";

/** The mass limit of each moment; a landing without a limit of its own has that of take-off. */
const limitOf = ({ limits }: Loading, at: LoadMoment): number | undefined => {
  switch (at) {
    case "zero-fuel":
      return limits.zeroFuel_kg;
    case "ramp":
      return limits.ramp_kg;
    case "take-off":
      return limits.takeOff_kg;
    case "landing":
    case "alternate":
      return limits.landing_kg ?? limits.takeOff_kg;
    default:
      return at satisfies never;
  }
};

function nearestOf(forward_m: number | undefined, aft_m: number | undefined): NearestEdge | undefined {
  if (forward_m === undefined || aft_m === undefined) return undefined;
  return forward_m < aft_m ? { edge: "forward", left_m: forward_m } : { edge: "aft", left_m: aft_m };
}

/** What the place in the envelope is worth: the aircraft flies at take-off and landing, and may come to fly dry. */
function ofEnvelope(at: LoadMoment, inEnvelope: boolean, chance_1: number): Status {
  if (at === "ramp") return "clear"; // take-off, a few kilograms later, is what counts
  if (!inEnvelope) return at === "zero-fuel" ? "caution" : "stop";
  return at !== "zero-fuel" && chance_1 < SURE_FROM_1 ? "caution" : "clear";
}

/**
 * The loaded aircraft at one moment against everything that holds there.
 *
 * @param doubt the same with what is not known of it
 * @param parts what it is the sum of
 */
export function loadState(
  loading: Loading,
  envelope: LoadEnvelope,
  at: LoadMoment,
  state: LoadedState & { readonly fuel_kg: number },
  doubt: UncertainState,
  complete: boolean,
  parts: () => readonly LoadPart[],
): LoadState {
  const { mass_kg, arm_m, fuel_kg } = state;
  const { inside, forward_m, aft_m } = armsInEnvelope(envelope, { mass_kg, arm_m });
  const limit_kg = limitOf(loading, at);
  const mass: Limited | undefined =
    limit_kg === undefined
      ? undefined
      : limited(mass_kg, limit_kg, { complete, chance_1: probabilityOfMassLimit(doubt, limit_kg) });
  const chance_1 = chanceOfEdges(doubt, envelope, { mass_kg, arm_m });
  const nearest = nearestOf(forward_m, aft_m);
  const { mac } = loading;
  const edges = complete ? ofEnvelope(at, inside, chance_1) : "open";
  return {
    at,
    mass_kg,
    arm_m,
    ...(mac === undefined ? {} : { mac_1: (arm_m - mac.leadingEdge_m) / mac.length_m }),
    fuel_kg,
    ...(mass === undefined ? {} : { mass }),
    ...(forward_m === undefined || aft_m === undefined
      ? {}
      : { armRange_m: [arm_m - forward_m, arm_m + aft_m] as const }),
    inEnvelope: inside,
    ...(nearest === undefined ? {} : { nearest }),
    chance_1,
    edges,
    status: worstStatus([...(mass === undefined ? [] : [mass.status]), edges]),
    get parts() {
      return parts();
    },
  };
}
