import type { ImportAnswers, ImportQuestion } from "./answer.ts";
import { type DateOrder, dateOrderOf } from "./dates.ts";
import { type DecimalMark, decimalMarkOf } from "./numbers.ts";

/** Cells of one column, without the empty ones. */
export const filled = (cells: readonly string[]): readonly string[] => cells.filter((cell) => cell !== "");

const examples = (cells: readonly string[]): string =>
  [...new Set(cells)]
    .slice(0, 3)
    .map((cell) => `“${cell}”`)
    .join(", ");

/** The decimal mark of a column, or the question that settles it. */
export function settleMark(
  id: string,
  heading: string,
  cells: readonly string[],
  answers: ImportAnswers,
  questions: ImportQuestion[],
): DecimalMark {
  const texts = [...new Set(filled(cells))];
  const found = decimalMarkOf(texts);
  const said = answers[id];
  if (said === "point" || said === "comma") return said;
  if (found === "point" || found === "comma") return found;
  if (found === "ask") {
    const marked = texts.filter((text) => /[.,]/.test(text));
    questions.push({
      id,
      words: `Which is the decimal mark in “${heading}”?`,
      because: `${examples(marked)} can be read both ways, and a wrong mark makes a reading a thousand times what it was.`,
      options: [
        { value: "point", label: "The point: 1.234 is a little more than one" },
        { value: "comma", label: "The comma: 1,234 is a little more than one" },
      ],
    });
  }
  return "point";
}

/** Which figure is the day in a column of dates, or the question that settles it. */
export function settleOrder(
  id: string,
  heading: string,
  cells: readonly string[],
  answers: ImportAnswers,
  questions: ImportQuestion[],
): DateOrder {
  const texts = [...new Set(filled(cells))];
  const said = answers[id];
  if (said === "day-first" || said === "month-first") return said;
  const found = dateOrderOf(texts);
  if (found === "day-first" || found === "month-first") return found;
  if (found === "ask") {
    questions.push({
      id,
      words: `Which comes first in “${heading}”, the day or the month?`,
      because: `${examples(texts.filter((text) => /^\d{1,2}[/-]/.test(text)))} can be read both ways.`,
      options: [
        { value: "day-first", label: "The day: 03/04/2026 is 3 April" },
        { value: "month-first", label: "The month: 03/04/2026 is 4 March" },
      ],
    });
  }
  return "day-first";
}
