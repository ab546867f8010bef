import type { SharedWalk, WalkOrder } from "@witnessmark/planner";
import { askWorker } from "../../keep/ask-worker.ts";
import type { OrderAnswer, OrderQuestion } from "./questions.ts";

const IDLE_ms = 30_000;

class PlannerBroke extends Error {}

const askPlanner = askWorker<OrderQuestion, OrderAnswer>({
  start: () => new Worker(new URL("./order-worker.ts", import.meta.url), { type: "module" }),
  broke: (detail) => new PlannerBroke(detail || "it could not be started"),
  failed: ({ name, message }) => new Error(`${name}: ${message}`),
  idle_ms: IDLE_ms,
});

async function ask(question: OrderQuestion): Promise<OrderAnswer> {
  try {
    return await askPlanner(question);
  } catch (error) {
    if (!(error instanceof PlannerBroke)) throw error;
    // without a worker the page plans by itself: it stands still for a moment, and the order is the same
    return (await import("./answer-order.ts")).answerOrder(question);
  }
}

export async function askOrder(
  question: Exclude<OrderQuestion, { readonly ask: "shared" }>,
): Promise<WalkOrder> {
  const answer = await ask(question);
  if (answer.kind !== "order") throw new Error(`planner: expected an order, received ${answer.kind}`);
  return answer.order;
}

export async function askShares(
  question: Extract<OrderQuestion, { readonly ask: "shared" }>,
): Promise<readonly [SharedWalk, SharedWalk]> {
  const answer = await ask(question);
  if (answer.kind !== "shared") throw new Error(`planner: expected two shares, received ${answer.kind}`);
  return answer.shared;
}
