import { parentPort, workerData } from "node:worker_threads";
import type { LedgerEvent } from "@witnessmark/ledger";
import { recordOfLedger } from "@witnessmark/sheet";
import { renderRecordPdf } from "@witnessmark/sheet/pdf";
import type { RecordInput, RecordJob, RecordOutput } from "./record-job.ts";

// A thread of its own: hashing and laying out ten years takes many seconds, in which the server answers others.

const port = parentPort;
if (port === null) throw new Error("record-worker: expected to be run as a worker, was run by itself");

async function make(events: readonly LedgerEvent[], job: RecordJob): Promise<RecordOutput> {
  const result = await recordOfLedger(events, job);
  if (!result.ok) return result;
  const { record, ledgerText } = result;
  const pdf = await renderRecordPdf({ record, ledgerText, paper: job.paper });
  return { ok: true, pdf: new Uint8Array(pdf), ...record.period };
}

const events: LedgerEvent[] = [];
port.on("message", async (some: RecordInput) => {
  if (some !== null) {
    events.push(...some);
    return;
  }
  // sent by make-record.ts, whose type of it is this one
  port.postMessage(await make(events, workerData as RecordJob));
});
