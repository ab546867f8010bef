import { answerQuestions } from "../../keep/ask-worker.ts";
import { answerOrder } from "./answer-order.ts";
import type { OrderAnswer, OrderQuestion } from "./questions.ts";

answerQuestions<OrderQuestion, OrderAnswer>(async (question) => answerOrder(question));
