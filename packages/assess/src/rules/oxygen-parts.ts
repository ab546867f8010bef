import { minutes } from "./edges.ts";
import type { OxygenInput, OxygenNeed, OxygenPart } from "./rule-pack.ts";
import { type Citations, figure, type MissingInput, type Ruling } from "./ruling.ts";

export interface Persons {
  readonly crew_count: number;
  readonly passengers_count: number;
}

/** How many there are; one pilot at least, and whole people. */
export function personsOf(input: OxygenInput, lacks: MissingInput[]): Persons | undefined {
  const crew_count = figure(input.crew_count);
  const passengers_count = figure(input.passengers_count);
  const crewIsSound = crew_count !== undefined && Number.isInteger(crew_count) && crew_count >= 1;
  const passengersAreSound = passengers_count !== undefined && Number.isInteger(passengers_count);
  if (!crewIsSound) lacks.push({ input: "crew_count", what: "how many the flight crew are" });
  if (!passengersAreSound) lacks.push({ input: "passengers_count", what: "how many passengers there are" });
  return crewIsSound && passengersAreSound ? { crew_count, passengers_count } : undefined;
}

/** The answer, from the parts that are not empty. */
export function needed(
  citations: Citations,
  who: Omit<OxygenNeed, "parts" | "personTime_s">,
  parts: readonly OxygenPart[],
  steps: readonly string[],
): Ruling<OxygenNeed> {
  const real = parts.filter(({ persons_count, time_s }) => persons_count > 0 && time_s > 0);
  const personTime_s = real.reduce((sum_s, { persons_count, time_s }) => sum_s + persons_count * time_s, 0);
  const lines = real.map(
    ({ persons_count, time_s, why }) => `${persons_count} × ${minutes(time_s)}: ${why}.`,
  );
  return {
    known: true,
    ...who,
    parts: real,
    personTime_s,
    citations,
    text:
      personTime_s === 0
        ? "The rule asks no oxygen of this flight."
        : `Oxygen for ${minutes(personTime_s)} of one person's breathing in all.`,
    steps: [...steps, ...lines],
  };
}
