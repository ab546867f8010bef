import type { Book, Check, Reading } from "@witnessmark/book";
import { UNITS, type UnitId, unitsOf } from "@witnessmark/engine";
import type { ImportAnswers, ImportQuestion } from "./answer.ts";
import { filled } from "./sheet-questions.ts";

export type Asked = Check & { readonly reading: Reading };

export const isAsked = (check: Check): check is Asked => check.reading !== undefined;

export const nameOf = (book: Book, check: Check): string => {
  const point = book.points.get(check.point)?.name;
  return point === undefined ? check.title : `${check.title}, ${point}`;
};

/** The check that a text names: by its id, or by a title or a point that only one check has. */
export function checksByName(book: Book): (text: string) => Asked | undefined {
  const asked = book.checks.filter(isAsked);
  const names = new Map<string, Set<Asked>>();
  const add = (name: string | undefined, check: Asked) => {
    if (name === undefined) return;
    const key = name.toLowerCase();
    names.set(key, (names.get(key) ?? new Set()).add(check));
  };
  for (const check of asked) {
    add(check.title, check);
    add(book.points.get(check.point)?.name, check);
    add(nameOf(book, check), check);
  }
  const ids = new Map(asked.map((check) => [check.id.toLowerCase(), check]));
  return (text) => {
    const key = text.toLowerCase();
    const named = names.get(key);
    return ids.get(key) ?? (named?.size === 1 ? [...named][0] : undefined);
  };
}

/** More names than this nobody answers one by one: they are faults of their rows. */
const MOST_NAMES = 24;
export const NONE_OF_THESE = "none";
export const OF_THE_GAUGE = "gauge";

type Options = ImportQuestion["options"];

export function askWhichCheck(answers: ImportAnswers, options: Options, questions: ImportQuestion[]): void {
  if (answers["check"] !== undefined) return;
  questions.push({
    id: "check",
    words: "Which check do these readings belong to?",
    because: "No column names it, so all rows are of one.",
    options,
  });
}

export function askOfNames(
  cells: readonly string[],
  byName: (text: string) => Asked | undefined,
  answers: ImportAnswers,
  options: Options,
  questions: ImportQuestion[],
): void {
  const rows = new Map<string, number>();
  for (const text of filled(cells)) if (byName(text) === undefined) rows.set(text, (rows.get(text) ?? 0) + 1);
  if (rows.size > MOST_NAMES) return;
  for (const [text, count] of rows) {
    const id = `name:${text.toLowerCase()}`;
    if (answers[id] !== undefined || questions.some((question) => question.id === id)) continue;
    questions.push({
      id,
      words: `Which check is “${text}”?`,
      because: `${count === 1 ? "1 row has" : `${count} rows have`} this name, and the book has no reading of it, or several.`,
      options: [...options, { value: NONE_OF_THESE, label: "None of these: leave its rows out" }],
    });
  }
}

export function unitQuestion(book: Book): ImportQuestion {
  const units = new Set<UnitId>();
  for (const { reading } of book.checks.filter(isAsked))
    for (const unit of unitsOf(reading.dimension)) units.add(unit);
  return {
    id: "unit",
    words: "In which unit are the values?",
    because: "Neither their heading nor another column says.",
    options: [
      { value: OF_THE_GAUGE, label: "Each in the unit of its gauge in the book" },
      ...[...units].map((unit) => ({
        value: unit,
        label: UNITS[unit].symbol === "" ? unit : UNITS[unit].symbol,
      })),
    ],
  };
}
