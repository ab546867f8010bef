import "../../no-eval.ts";
import { readBook } from "@witnessmark/book";
import { answerQuestions } from "../ask-worker.ts";

export interface BookText {
  readonly text: string;
  readonly fileName: string;
}

answerQuestions(({ text, fileName }: BookText) => readBook(text, fileName));
