/** How a person looks and reaches. Metres from the ground or from the body. */
export interface Person {
  readonly eyeStanding_m: number;
  readonly eyeCrouching_m: number;
  readonly shoulderStanding_m: number;
  readonly shoulderCrouching_m: number;
  /** From the shoulder to what the fingers hold. */
  readonly arm_m: number;
  /** How far one leans and steps aside without leaving a stance. */
  readonly sway_m: number;
  /** From how far a detail can be judged by eye. */
  readonly look_m: number;
  /** Above this, what is to be touched needs a step. */
  readonly reach_m: number;
}

/** A person of 1.70 m. From memory; the small person of a crew decides what needs a step. */
export const PERSON: Person = {
  eyeStanding_m: 1.58,
  eyeCrouching_m: 0.95,
  shoulderStanding_m: 1.38,
  shoulderCrouching_m: 0.75,
  arm_m: 0.7,
  sway_m: 0.6,
  look_m: 3,
  reach_m: 2.0,
};
