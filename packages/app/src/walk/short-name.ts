import type { Book } from "@witnessmark/book";
import type { Step } from "@witnessmark/planner";
import { capital } from "../words/capital.ts";

/**
 * A step in a word or two, for the row of a stance: "Pressure", "Tread", "Wheel well". Where several checks are made
 * at one point, what they have in common goes; the side is told by the stance, unless both sides are seen from it.
 *
 * @param together the steps of the same stance
 */
export function shortName(step: Step, together: readonly Step[], book: Pick<Book, "points">): string {
  const name = bare(step, together, book);
  const isTwin = together.some((other) => other !== step && bare(other, together, book) === name);
  const side = step.kind === "check" ? book.points.get(step.check.point)?.side : undefined;
  return isTwin && side !== undefined && side !== "centre"
    ? `${capital(side)} ${name.charAt(0).toLowerCase()}${name.slice(1)}`
    : name;
}

function bare(step: Step, together: readonly Step[], book: Pick<Book, "points">): string {
  if (step.kind === "ground-gear") return step.item.name;
  const words = (step.id.split(".")[0] ?? step.id)
    .split("-")
    .filter((word) => word !== "left" && word !== "right");
  const { point } = step.check;
  const shared = together.filter((other) => other.kind === "check" && other.check.point === point).length > 1;
  return capital((shared ? withoutPlace(words, book.points.get(point)?.name ?? "") : words).join(" "));
}

/** What is left of a name when the words of its place are taken off its front. */
function withoutPlace(words: readonly string[], place: string): readonly string[] {
  const ofPlace = new Set(place.toLowerCase().split(/[^a-z]+/));
  const isOfPlace = (word: string) =>
    ofPlace.has(word) || ofPlace.has(`${word}s`) || ofPlace.has(word.replace(/s$/, ""));
  const last = words.at(-1);
  if (last === undefined || isOfPlace(last)) return words;
  return words.filter((word) => !isOfPlace(word));
}
