import { type ResourceLimits, Worker } from "node:worker_threads";
import { Refusal } from "../refusal.ts";
import type { RecordInput, RecordJob, RecordOutput, RecordWant } from "./record-job.ts";

/**
 * The record of a period as a PDF, made in a thread of its own, which asks for the events as it goes through them.
 *
 * @param events gives them in handfuls, as they are kept, the same ones each time it is called
 * @param limits of the thread's memory; the runtime's own where they are left out
 * @throws {Refusal} when the ledger is longer than this machine has memory for
 */
export async function makeRecord(
  events: () => AsyncIterator<readonly string[], void>,
  job: RecordJob,
  limits: ResourceLimits = {},
): Promise<RecordOutput> {
  const worker = new Worker(new URL("./record-worker.ts", import.meta.url), {
    workerData: job,
    resourceLimits: limits,
  });
  try {
    return await new Promise<RecordOutput>((resolve, reject) => {
      let reading = events();
      const give = async ({ want }: RecordWant): Promise<void> => {
        if (want === "again") reading = events();
        const next = await reading.next();
        worker.postMessage((next.done === true ? null : next.value) satisfies RecordInput);
      };
      worker.on("message", (said: RecordWant | RecordOutput) => {
        if ("want" in said) give(said).catch(reject);
        else resolve(said);
      });
      worker.once("error", reject);
      worker.once("exit", (code) => reject(new Error(`record: the thread ended with ${code} and no answer`)));
    });
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
