import { RULE_SUBJECTS, type RuleQuestion, rulePacks, ruleQuestions } from "@witnessmark/assess";
import type { InList } from "../calculators/kept-typed.ts";

/** Where one was in the list of questions. */
export const inRules: InList = { looked: "", scrolled_px: 0 };

export const packTitle = ({ pack }: RuleQuestion): string => rulePacks.get(pack)?.title ?? pack;

export interface QuestionGroup {
  readonly subject: string;
  readonly questions: readonly RuleQuestion[];
}

/** The questions by their subject: those that hold every word looked for, in what they ask or where it is written. */
export function questionsFound(looked: string): readonly QuestionGroup[] {
  const words = looked.toLowerCase().split(/\s+/).filter(Boolean);
  return RULE_SUBJECTS.flatMap((subject) => {
    const questions = [...ruleQuestions.values()].filter((question) => {
      const text = textOf(question);
      return question.subject === subject && words.every((word) => text.includes(word));
    });
    return questions.length === 0 ? [] : [{ subject, questions }];
  });
}

function textOf(question: RuleQuestion): string {
  const { steps, citations } = question.answer({});
  const parts = [
    question.title,
    question.subject,
    question.about ?? "",
    packTitle(question),
    ...question.asks.map(({ words }) => words),
    ...steps.map(({ rule }) => rule),
    ...citations.map(({ title }) => title),
  ];
  return parts.join(" ").toLowerCase();
}
