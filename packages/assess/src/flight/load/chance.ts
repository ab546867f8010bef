import { type Envelope, type MassAndArm, probabilityOfEdges, type UncertainState } from "@witnessmark/engine";

const spans = (value: number, one: number, other: number): boolean =>
  value >= Math.min(one, other) && value <= Math.max(one, other);

/**
 * The least probability that an edge beside this place is kept: of those ahead and behind, the edges that run past its
 * mass. Each is taken on straight, which is right near it; an edge somewhere else in a notched envelope says nothing
 * here. The mass limits are tests of their own.
 */
export function chanceOfEdges(state: UncertainState, envelope: Envelope, place: MassAndArm): number {
  const beside = probabilityOfEdges(state, envelope, ([from, to]) =>
    spans(place.mass_kg, from.mass_kg, to.mass_kg),
  ).filter(({ bounds }) => bounds === "forward" || bounds === "aft");
  return Math.min(1, ...beside.map(({ probability_1 }) => probability_1));
}
