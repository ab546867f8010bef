/** What a walk costs besides the looking itself, in seconds. */
export interface WalkCosts {
  /** A slow walk round something, eyes on it. */
  readonly pace_mPerS: number;
  /** To come to rest at a stance and find what is to be looked at. */
  readonly stop_s: number;
  /** To crouch down or to rise. */
  readonly posture_s: number;
  /** To climb in or out. */
  readonly boarding_s: number;
}

/** From memory. */
export const WALK_COSTS: WalkCosts = { pace_mPerS: 0.8, stop_s: 3, posture_s: 3, boarding_s: 10 };
