/*
 * What the app's workers do, in a worker of this process: reads the book once, then answers what it is asked about the
 * turboprop on its island flight.
 */
import { readFile } from "node:fs/promises";
import { parentPort } from "node:worker_threads";
import { assess, type Share, timeline, tipsOfFlight } from "@witnessmark/assess";
import { demoFlight } from "@witnessmark/assess/testing/demo-flight";
import { readBook } from "@witnessmark/book";
import { emptyState } from "@witnessmark/ledger";

export type Question = { readonly now_ms: number } & (
  | { readonly what: "assessment" | "hours" }
  | { readonly what: "tips"; readonly share: Share }
);

const BOOK = new URL("../../books/zz-skr.yaml", import.meta.url);

const read = await readBook(await readFile(BOOK, "utf8"), "zz-skr.yaml");
if (!read.ok) throw new Error(`ahead bench: expected a book without faults, found ${read.faults.length}`);
const { book } = read;
const state = emptyState("ZZ-SKR");

function answer(question: Question): unknown {
  const { now_ms } = question;
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
