/*
 * What the app's workers do, in a worker of this process: reads the book once, then answers what it is asked about the
 * turboprop on its island flight, when nothing was looked at yet and when it was walked after ten years on record.
 */
import { parentPort } from "node:worker_threads";
import { assess, type Share, timeline, tipsOfFlight } from "@witnessmark/assess";
import { DEMO_NOW_ms, demoFlight } from "@witnessmark/assess/testing/demo-flight";
import { emptyState } from "@witnessmark/ledger";
import { tenYears, turboprop } from "../demo/turboprop.ts";

export type Question = { readonly now_ms: number; readonly of: "nothing" | "ten years" } & (
  | { readonly what: "assessment" | "hours" }
  | { readonly what: "tips"; readonly share: Share }
);

/** The last of its walks was made on the evening before the flight. */
const TEN_YEARS_ms = 10 * 365.25 * 86_400_000;

const book = await turboprop();
const states = {
  nothing: emptyState("ZZ-SKR"),
  "ten years": (await tenYears(book, DEMO_NOW_ms - TEN_YEARS_ms)).state,
};

function answer(question: Question): unknown {
  const { now_ms } = question;
  const state = states[question.of];
  switch (question.what) {
    case "assessment":
      return assess(book, state, demoFlight, now_ms);
    case "hours":
      return timeline(book, state, demoFlight, now_ms);
    case "tips":
      return tipsOfFlight(book, state, demoFlight, now_ms, question.share);
    default:
      return question satisfies never;
  }
}

parentPort?.on("message", (question: Question) => parentPort?.postMessage(answer(question)));
