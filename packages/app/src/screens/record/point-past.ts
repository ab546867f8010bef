import type { Book, Check } from "@witnessmark/book";
import type { AircraftState, CheckAnswer, RecordedReading } from "@witnessmark/ledger";
import { ANSWER_WORDS, REASON_WORDS } from "../../words/answers.ts";
import { asWritten } from "../../words/as-written.ts";
import { capital } from "../../words/capital.ts";

/** One thing that was said of a point, as a line of its past. */
export interface PointLine {
  readonly key: string;
  readonly at_ms: number;
  readonly who: string;
  readonly title: string;
  readonly words: string;
  readonly discrepancy?: string;
  readonly photo?: { readonly sha256: string; readonly recordedAt: string };
}

/** Everything that is on the record of a point: answers, readings, notes, photos, discrepancies; latest first. */
export function pastOfPoint(book: Book, state: AircraftState, point: string): readonly PointLine[] {
  const checks = book.checks.filter((check) => check.point === point);
  const titles = new Map(checks.map(({ id, title }) => [id, title]));
  const discrepancies = [...state.discrepancies.values()].filter(
    (found) => found.point === point || (found.check !== undefined && titles.has(found.check)),
  );
  const words = new Map(discrepancies.map(({ id, words: said }) => [id, said]));
  const titleOf = (subject: { readonly kind: string; readonly id: string }): string | undefined =>
    subject.kind === "check" ? titles.get(subject.id) : words.get(subject.id);
  const lines = [
    ...checks.flatMap((check) => saidOf(check, state)),
    ...state.photos.flatMap((photo): readonly PointLine[] => {
      const title = titleOf(photo.subject);
      return title === undefined ? [] : [{ ...said(photo), title, words: "Photo", photo }];
    }),
    ...state.notes.flatMap((note): readonly PointLine[] => {
      const title = titleOf(note.subject);
      return title === undefined ? [] : [{ ...said(note), title, words: note.text }];
    }),
    ...discrepancies.flatMap((found): readonly PointLine[] => [
      {
        ...said(found.raised),
        title: found.words,
        words: found.measured === undefined ? "Raised" : `Raised, ${asWritten(found.measured)}`,
        discrepancy: found.id,
      },
      ...found.closings.map((closing) => ({
        ...said(closing),
        title: found.words,
        words: `${closing.how === "put-right" ? "Put right" : "No fault found"}: ${closing.words}`,
        discrepancy: found.id,
      })),
    ]),
  ];
  return lines.toSorted((a, b) => b.at_ms - a.at_ms || (a.key < b.key ? 1 : -1));
}

const said = (origin: {
  readonly event: string;
  readonly recordedAt: string;
  readonly author: { readonly name: string };
}) => ({ key: origin.event, at_ms: Date.parse(origin.recordedAt), who: origin.author.name });

/** The answers to a check with what was read for them; and what was read without an answer, as from a file. */
function saidOf(check: Check, state: AircraftState): readonly PointLine[] {
  const { answers = [], readings = [] } = state.checks.get(check.id) ?? {};
  const unanswered = new Map(readings.map((reading) => [reading.event, reading]));
  const byWalk = Map.groupBy(readings, ({ walk }) => walk);
  const lines = answers.map((answer) => {
    const read = byWalk
      .get(answer.walk)
      ?.find((each) => unanswered.has(each.event) && isOneLook(each, answer));
    if (read !== undefined) unanswered.delete(read.event);
    const because = answer.reason === undefined ? "" : `: ${REASON_WORDS[answer.reason].toLowerCase()}`;
    const value = read === undefined ? "" : `, read ${readWords(read)}`;
    return {
      ...said(answer),
      title: check.title,
      words: `${capital(ANSWER_WORDS[answer.answer])}${because}${value}`,
    };
  });
  return [
    ...lines,
    ...[...unanswered.values()].map((reading) => ({
      ...said(reading),
      ...(reading.imported === undefined
        ? {}
        : { who: `${reading.imported.by ?? reading.author.name}, from a file` }),
      title: check.title,
      words: `Read ${readWords(reading)}`,
    })),
  ];
}

/** A reading is kept with the answer that it is for: by one person, within this time. */
const ONE_LOOK_ms = 60_000;

const isOneLook = (reading: RecordedReading, answer: CheckAnswer): boolean =>
  reading.author.id === answer.author.id &&
  Math.abs(Date.parse(reading.recordedAt) - Date.parse(answer.recordedAt)) <= ONE_LOOK_ms;

const readWords = ({ read, temperature }: RecordedReading): string =>
  temperature === undefined ? asWritten(read) : `${asWritten(read)} at ${asWritten(temperature)}`;
