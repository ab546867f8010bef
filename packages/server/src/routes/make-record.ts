import { type ResourceLimits, Worker } from "node:worker_threads";
import type { LedgerEvent } from "@witnessmark/ledger";
import { Refusal } from "../refusal.ts";
import type { RecordInput, RecordJob, RecordOutput } from "./record-job.ts";

/** So many events go over at once, so that others are answered in between. */
const HANDFUL = 500;

/**
 * The record of a period as a PDF, made in a thread of its own.
 *
 * @param limits of the thread's memory; the runtime's own where they are left out
 * @throws {Refusal} when the ledger is longer than this machine has memory for
 */
export async function makeRecord(
  events: AsyncIterable<LedgerEvent>,
  job: RecordJob,
  limits: ResourceLimits = {},
): Promise<RecordOutput> {
  const worker = new Worker(new URL("./record-worker.ts", import.meta.url), {
    workerData: job,
    resourceLimits: limits,
  });
  const answer = new Promise<RecordOutput>((resolve, reject) => {
    worker.once("message", resolve);
    worker.once("error", reject);
    worker.once("exit", (code) => reject(new Error(`record: the thread ended with ${code} and no answer`)));
  });
  // awaited below, or not at all when the events fail first
  answer.catch(() => undefined);
  try {
    const send = (input: RecordInput) => worker.postMessage(input);
    let some: LedgerEvent[] = [];
    for await (const event of events) {
      some.push(event);
      if (some.length < HANDFUL) continue;
      send(some);
      some = [];
    }
    send(some);
    send(null);
    return await answer;
  } catch (error) {
    if (error instanceof Error && "code" in error && error.code === "ERR_WORKER_OUT_OF_MEMORY")
      throw new Refusal(
        507,
        "ledger-too-long",
        "This ledger is too long to be put into one PDF with the memory that the server has. Take the ledger itself, at ledger.jsonl, or run the command `witnessmark record` on a machine with more memory.",
      );
    throw error;
  } finally {
    await worker.terminate();
  }
}
