import { type Edge, type Envelope, edgesOf, type MassAndArm, sideOf } from "./envelope.ts";

export type EnvelopeFaultCode =
  | "too-few-points"
  | "not-a-number"
  | "mass-not-positive"
  | "point-twice"
  | "crosses-itself"
  | "folds-back";

/** What is wrong with an envelope. `points` are the places of the corners concerned in the list, from zero. */
export interface EnvelopeFault {
  readonly code: EnvelopeFaultCode;
  readonly points: readonly number[];
  readonly says: string;
}

const same = (a: MassAndArm, b: MassAndArm): boolean => a.arm_m === b.arm_m && a.mass_kg === b.mass_kg;

const placeText = ({ arm_m, mass_kg }: MassAndArm): string => `(${arm_m} m, ${mass_kg} kg)`;

/** Whether a place on the line of an edge lies between its ends. */
const between = ([a, b]: Edge, place: MassAndArm): boolean =>
  place.arm_m >= Math.min(a.arm_m, b.arm_m) &&
  place.arm_m <= Math.max(a.arm_m, b.arm_m) &&
  place.mass_kg >= Math.min(a.mass_kg, b.mass_kg) &&
  place.mass_kg <= Math.max(a.mass_kg, b.mass_kg);

/** Whether two edges have a point in common; exact. */
function meet(one: Edge, other: Edge): boolean {
  const [a, b] = one;
  const [c, d] = other;
  const sides = [sideOf(a, b, c), sideOf(a, b, d), sideOf(c, d, a), sideOf(c, d, b)].map(Math.sign);
  const [abc = 0, abd = 0, cda = 0, cdb = 0] = sides;
  if (abc * abd < 0 && cda * cdb < 0) return true;
  return (
    (abc === 0 && between(one, c)) ||
    (abd === 0 && between(one, d)) ||
    (cda === 0 && between(other, a)) ||
    (cdb === 0 && between(other, b))
  );
}

/** Whether the second of two edges that follow each other runs back over the first. */
function foldsBack([a, b]: Edge, [, c]: Edge): boolean {
  if (sideOf(a, b, c) !== 0) return false;
  return (
    Math.sign(a.arm_m - b.arm_m) === Math.sign(c.arm_m - b.arm_m) &&
    Math.sign(a.mass_kg - b.mass_kg) === Math.sign(c.mass_kg - b.mass_kg)
  );
}

/**
 * What is wrong with an envelope, all of it; nothing where it is a polygon that does not touch itself, in either
 * direction round. Corners in line with their neighbours are no fault.
 */
export function envelopeFaults(envelope: Envelope): readonly EnvelopeFault[] {
  const { points } = envelope;
  if (points.length < 3) {
    return [
      {
        code: "too-few-points",
        points: points.map((_, index) => index),
        says: `expected at least 3 points, received ${points.length}`,
      },
    ];
  }
  const faults: EnvelopeFault[] = [];
  points.forEach((point, index) => {
    if (!(Number.isFinite(point.arm_m) && Number.isFinite(point.mass_kg))) {
      faults.push({
        code: "not-a-number",
        points: [index],
        says: `point ${index + 1}: expected finite numbers, received ${placeText(point)}`,
      });
    } else if (point.mass_kg < 0) {
      faults.push({
        code: "mass-not-positive",
        points: [index],
        says: `point ${index + 1}: expected a mass of zero or more, received ${point.mass_kg} kg`,
      });
    }
  });
  if (faults.length > 0) return faults;
  const edges = edgesOf(envelope);
  edges.forEach((edge, index) => {
    const from = (index + points.length - 1) % points.length;
    if (same(edge[0], edge[1])) {
      faults.push({
        code: "point-twice",
        points: [from, index],
        says: `points ${from + 1} and ${index + 1} are the same, ${placeText(edge[1])}; leave one out`,
      });
    }
  });
  if (faults.length > 0) return faults;
  edges.forEach((one, index) => {
    edges.slice(index + 1).forEach((other, offset) => {
      const second = index + 1 + offset;
      const follows = second === index + 1;
      const closes = index === 0 && second === edges.length - 1;
      const folded = (follows && foldsBack(one, other)) || (closes && foldsBack(other, one));
      const corner = follows ? index : second;
      if (folded) {
        faults.push({
          code: "folds-back",
          points: [corner],
          says: `at point ${corner + 1} the edge runs back over the one before`,
        });
      } else if (!(follows || closes) && meet(one, other)) {
        const names = [index, second].map(
          (at) => `${((at + points.length - 1) % points.length) + 1}–${at + 1}`,
        );
        faults.push({
          code: "crosses-itself",
          points: [index, second],
          says: `the edges ${names.join(" and ")} cross or touch; give the points in order round the envelope`,
        });
      }
    });
  });
  return faults;
}
