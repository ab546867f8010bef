import { once } from "node:events";
import { type MessagePort, parentPort, workerData } from "node:worker_threads";
import { type LedgerEvent, parseEvent, saysOfFaults } from "@witnessmark/ledger";
import { recordOfSource, renderRecordPdf } from "@witnessmark/sheet/pdf";
import type { RecordInput, RecordJob, RecordOutput, RecordWant } from "./record-job.ts";

// A thread of its own: hashing and laying out ten years takes many seconds, in which the server answers others.

const given = parentPort;
if (given === null) throw new Error("record-worker: expected to be run as a worker, was run by itself");
const port: MessagePort = given;

/** One handful at a time is asked for: those that wait would fill the memory. */
async function ask(want: RecordWant["want"]): Promise<RecordInput> {
  port.postMessage({ want } satisfies RecordWant);
  // sent by make-record.ts, whose type of it is this one
  const [input] = (await once(port, "message")) as [RecordInput];
  return input;
}

async function* events(): AsyncGenerator<readonly LedgerEvent[]> {
  for (let some = await ask("again"); some !== null; some = await ask("next")) yield some.map(asEvent);
}

function asEvent(text: string): LedgerEvent {
  const parsed = parseEvent(JSON.parse(text));
  if (!parsed.ok) throw new Error(`An event of this ledger does not read: ${saysOfFaults(parsed.faults)}`);
  return parsed.event;
}

async function make(job: RecordJob): Promise<RecordOutput> {
  const result = await recordOfSource({ count: job.count, events }, job);
  if (!result.ok) return result;
  const { record, file } = result;
  const pdf = await renderRecordPdf({ record, ledgerText: file, paper: job.paper });
  return { ok: true, pdf: new Uint8Array(pdf), ...record.period };
}

// given by make-record.ts, whose type of it is this one
port.postMessage(await make(workerData as RecordJob));
