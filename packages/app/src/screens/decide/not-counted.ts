import type { Assessment } from "@witnessmark/assess";
import type { AircraftState } from "@witnessmark/ledger";
import { ended } from "@witnessmark/sheet";
import { countOf } from "../../words/figures.ts";

const TOLD = 3;

/** Readings of the walk in hand on which nothing can rest yet, and why: a figure that was kept is not forgotten. */
export function notCountedText(
  { walk, verdicts }: Pick<Assessment, "walk" | "verdicts">,
  { checks }: Pick<AircraftState, "checks">,
): string | undefined {
  if (walk === null) return undefined;
  const waiting = verdicts.filter(
    ({ topic, status, subject }) =>
      topic === "check" &&
      status === "open" &&
      checks.get(subject?.id ?? "")?.readings.some((reading) => reading.walk === walk.id) === true,
  );
  if (waiting.length === 0) return undefined;
  const told = waiting.slice(0, TOLD).map(({ title, says }) => ended(`${title}, ${says}`));
  const more = waiting.length > TOLD ? [`And ${waiting.length - TOLD} more.`] : [];
  const counts = countOf(waiting.length, "reading of this walk does", "readings of this walk do");
  return [`${counts} not count yet.`, ...told, ...more].join(" ");
}
