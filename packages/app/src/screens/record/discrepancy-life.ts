import type { Book } from "@witnessmark/book";
import { withSymbol } from "@witnessmark/engine";
import type { Discrepancy, Origin } from "@witnessmark/ledger";
import { clockTime, shortDay } from "../../words/dates.ts";
import { figure } from "../../words/figures.ts";
import { personText } from "../../words/people.ts";

/** One thing that was said of a discrepancy. */
export interface LifeStep {
  readonly key: string;
  readonly hlc: string;
  readonly title: string;
  /** `Thu 12 Nov 07:41, MK, pilot` */
  readonly when: string;
  readonly words: string;
}

const step = (origin: Origin, title: string, words: string): LifeStep => {
  const at_ms = Date.parse(origin.recordedAt);
  return {
    key: origin.event,
    hlc: origin.hlc,
    title,
    when: `${shortDay(at_ms)} ${clockTime(at_ms)}, ${personText(origin.author)}`,
    words,
  };
};

const HOW = { "put-right": "Put right", "no-fault-found": "No fault found" } as const;

const RELEASED_AS = {
  "pilot-owner": "pilot-owner, ML.A.803",
  "certifying-staff": "certifying staff, ML.A.801(b)",
  organisation: "maintenance organisation, ML.A.801(b)",
  "not-known": "on an authority that is not known",
} as const;

/** Everything that was said of a discrepancy, as it was said, oldest first. */
export function lifeOf(discrepancy: Discrepancy, book: Book): readonly LifeStep[] {
  const { raised, words, closings, assessments, measurements, reliefs, releases, reopenings } = discrepancy;
  const nameOf = (id: string | undefined) => book.equipment.find((each) => each.id === id)?.name;
  const steps = [
    step(raised, "Written down", words),
    ...measurements.map((each) =>
      step(
        each,
        "Measured",
        [withSymbol(figure(each.measured.value, 1), each.measured.unit), each.words ?? ""]
          .filter((part) => part !== "")
          .join(": "),
      ),
    ),
    ...assessments.map((each) => {
      const name = nameOf(each.equipment);
      return step(each, "Looked into", name === undefined ? each.words : `${name}. ${each.words}`);
    }),
    ...reliefs.map((each) =>
      step(
        each,
        each.ended === undefined ? "Relief" : "Relief, ended",
        [
          `${each.basis}, determined by ${each.determinedBy}`,
          each.until === undefined ? "" : `until ${each.until}`,
          each.placard === undefined ? "" : `placard: ${each.placard}`,
          each.ended === undefined ? "" : `ended: ${each.ended.why}`,
        ]
          .filter((part) => part !== "")
          .join("; "),
      ),
    ),
    ...closings.map((each) => step(each, HOW[each.how], `${each.words}. Released by ${each.releasedBy}`)),
    ...releases.map((each) =>
      step(
        each,
        "Released",
        [each.by, RELEASED_AS[each.as], each.authority ?? ""].filter((part) => part !== "").join(", "),
      ),
    ),
    ...reopenings.map((each) => step(each, "Opened again", each.words)),
  ];
  return steps.sort((a, b) => (a.hlc < b.hlc ? -1 : a.hlc > b.hlc ? 1 : 0));
}
