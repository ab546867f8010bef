import type { Geometry, Method } from "@witnessmark/book";
import type { Ground } from "./convex.ts";
import type { Person } from "./person.ts";
import { canSee, type Space } from "./solids.ts";

/** How a check can be made from a place, and what one must know there. */
export interface Reach {
  readonly posture: "stand" | "crouch";
  /** What is to be touched is higher than one reaches from the ground. */
  readonly needsStep: boolean;
}

/** Looking and listening are done from a distance; everything else with the hand. */
const isByHand = (method: Method): boolean => method !== "look" && method !== "listen";

/**
 * Whether a check of a method at a point can be made from a place on the ground, in a posture: near enough, and with a
 * clear line from the eye.
 *
 * @returns nothing when it cannot. A point above one's reach can be touched from a step that stands where one stands
 */
export function reachOf(
  geometry: Geometry,
  person: Person,
  from: Ground,
  posture: Reach["posture"],
  { place, method }: { readonly place: Space; readonly method: Method },
): Reach | undefined {
  const eye_m = posture === "stand" ? person.eyeStanding_m : person.eyeCrouching_m;
  const eye: Space = [from[0], from[1], eye_m];
  if (!isByHand(method)) {
    const away_m = Math.hypot(place[0] - eye[0], place[1] - eye[1], place[2] - eye[2]);
    return away_m <= person.look_m && canSee(geometry, eye, place)
      ? { posture, needsStep: false }
      : undefined;
  }
  const shoulder_m = posture === "stand" ? person.shoulderStanding_m : person.shoulderCrouching_m;
  const needsStep = posture === "stand" && place[2] > person.reach_m;
  const across_m = Math.hypot(place[0] - from[0], place[1] - from[1]);
  const up_m = needsStep ? 0 : place[2] - shoulder_m;
  const near_m = Math.max(across_m - person.sway_m, 0);
  if (Math.hypot(near_m, up_m) > person.arm_m) return undefined;
  const eyeThere: Space = needsStep ? [from[0], from[1], place[2] + 0.2] : eye;
  return canSee(geometry, eyeThere, place) ? { posture, needsStep } : undefined;
}
