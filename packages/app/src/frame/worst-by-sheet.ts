import type { Assessment, Verdict } from "@witnessmark/assess";
import type { Discrepancy, Status } from "@witnessmark/ledger";
import { worst } from "../drawing/walk-scene.ts";
import type { SheetName } from "./sheets-nav.tsx";

/** The worst of many; open where there is none: what nobody has asked has no answer. */
const worstOrOpen = (all: readonly Status[]): Status => (all.length === 0 ? "open" : worst(all));

/**
 * Each sheet's worst mark: the row of sheets itself says what is left. Load and Conditions answer for a planned flight,
 * and without one they have no answer. What was found in the walk in hand belongs to the walk as well as to the record.
 */
export function worstBySheet(
  assessment: Pick<Assessment, "verdicts" | "status" | "walk" | "flight">,
  discrepancies: ReadonlyMap<string, Pick<Discrepancy, "walk">>,
): Readonly<Record<SheetName, Status>> {
  const { verdicts, status, walk, flight } = assessment;
  const of = (topics: readonly Verdict["topic"][]): readonly Status[] =>
    verdicts.filter(({ topic }) => topics.includes(topic)).map((verdict) => verdict.status);
  const foundInWalk = verdicts
    .filter(
      ({ topic, subject }) =>
        topic === "discrepancy" && walk !== null && discrepancies.get(subject?.id ?? "")?.walk === walk.id,
    )
    .map((verdict) => verdict.status);
  const isPlanned = flight?.plan !== undefined;
  return {
    walk: worstOrOpen([...of(["check", "ground-gear", "pace", "disagreement", "happening"]), ...foundInWalk]),
    load: isPlanned ? worstOrOpen(of(["load", "fuel", "oxygen"])) : "open",
    conditions: isPlanned ? worstOrOpen(of(["runway", "wind", "weather", "light", "ice"])) : "open",
    record: worst(of(["discrepancy", "timed", "trend"])),
    decide: status,
    aircraft: worst(of(["record"])),
  };
}
