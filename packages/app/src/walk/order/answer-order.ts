import { orderLeft, orderOf, shareWalk } from "@witnessmark/planner";
import type { OrderAnswer, OrderQuestion } from "./questions.ts";

/** Plans; in the worker, or on the page where no worker is to be had. */
export function answerOrder(question: OrderQuestion): OrderAnswer {
  const { book, kind } = question;
  const also = new Set(question.also);
  switch (question.ask) {
    case "counts":
      return { kind: "order", order: orderOf(book, kind, also) };
    case "by-hand":
      return { kind: "order", order: orderOf(book, kind, also, question.order) };
    case "left": {
      const left = new Set(question.left);
      const isLeft = ({ id }: { readonly id: string }): boolean => left.has(id);
      const from = question.from === undefined ? {} : { from: question.from };
      return { kind: "order", order: orderLeft(book, kind, { also, isLeft, ...from }) };
    }
    case "shared":
      return { kind: "shared", shared: shareWalk(book, kind, also, question.by) };
    default:
      return question satisfies never;
  }
}
