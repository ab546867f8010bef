import { readFileSync } from "node:fs";
import { parentPort, workerData } from "node:worker_threads";
import { readBook } from "@witnessmark/book";
import { orderOf } from "@witnessmark/planner";

// a worker that has planned nothing yet, as on a phone when the app has just been opened

const file: unknown = workerData;
if (typeof file !== "string") throw new Error("expected the name of a demo book");
const text = readFileSync(new URL(`../../books/${file}`, import.meta.url), "utf8");
const read = await readBook(text, file);
if (!read.ok) throw new Error(`${file}: expected a book without faults`);
const before = process.threadCpuUsage();
const { stops, walking_s } = orderOf(read.book, "first-of-day");
const { user, system } = process.threadCpuUsage(before);
parentPort?.postMessage({ took_ms: (user + system) / 1000, stops: stops.length, walking_s });
