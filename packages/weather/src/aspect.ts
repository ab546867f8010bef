/** What a flight may ask of a report, and what a group that cannot be read leaves open. */
export const ASPECTS = [
  "validity",
  "wind",
  "gust",
  "visibility",
  "ceiling",
  "weather",
  "temperature",
  "dew point",
  "pressure",
  "runway",
  "remarks",
] as const;
export type Aspect = (typeof ASPECTS)[number];

/** What a report must say to be whole; the rest is said only when there is something to say. */
export const WHOLE_SKY: readonly Aspect[] = ["wind", "gust", "visibility", "ceiling", "weather"];
export const WHOLE_OBSERVATION: readonly Aspect[] = [...WHOLE_SKY, "temperature", "dew point", "pressure"];
export const EVERYTHING: readonly Aspect[] = ASPECTS;

/**
 * How a group ended.
 *
 * used: it is in the decode. not-observed: well formed, and says that nothing is known. doubtful: in the decode, and
 * contradicted or unusual. not-understood, impossible: not in the decode, or only as far as it can be believed.
 */
export type Outcome = "used" | "not-observed" | "doubtful" | "not-understood" | "impossible" | "missing";

/** Something that a person must be told, and what may no longer be called known because of it. */
export interface Problem {
  /** The tokens it is about, as they stand in the report; empty when something is missing. */
  readonly group: string;
  /** One plain sentence, without capital and full stop: it follows the group and a colon. */
  readonly says: string;
  readonly outcome: Exclude<Outcome, "used">;
  /** What is open because of it; empty for a remark that changes no answer. */
  readonly affects: readonly Aspect[];
  /** The index of the trend or the forecast period that it stands in; absent for the report itself. */
  readonly period?: number;
}

export type Fault = Omit<Problem, "group" | "period">;

export const impossible = (says: string, ...affects: readonly Aspect[]): Fault => ({
  outcome: "impossible",
  says,
  affects,
});
export const notUnderstood = (says: string, ...affects: readonly Aspect[]): Fault => ({
  outcome: "not-understood",
  says,
  affects,
});
export const doubtful = (says: string, ...affects: readonly Aspect[]): Fault => ({
  outcome: "doubtful",
  says,
  affects,
});
export const notObserved = (says: string, ...affects: readonly Aspect[]): Fault => ({
  outcome: "not-observed",
  says,
  affects,
});

/** The aspects in their fixed order, each once. */
export const joinAspects = (all: Iterable<Aspect>): readonly Aspect[] => {
  const found = new Set(all);
  return ASPECTS.filter((aspect) => found.has(aspect));
};
