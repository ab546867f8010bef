/*
 * How well the planner puts things in order.
 *
 * 1. The published instances of TSPLIB (round trips, and sequences with rules of what comes first), up to 100 nodes
 *    besides the fixed end, in at most 5 s of processor time each. Limits: the known optimum up to 50 nodes, within 1 %
 *    of it up to 100. Beside it, in the same run, a general solver of integer programs (HiGHS) on the same instances
 *    with the same time; it looks at the time only within its search, so that what it does before that comes on top. The search is told the known optimum only to end when it has it; what is printed is the
 *    processor time until then.
 * 2. The first walk of the day of each demo book: what is found in 300 ms of processor time, and how near to the best
 *    it is proven to be in 10 s. Limit: within 2 %.
 * 3. The order that counts, of each demo book, by a worker that has planned nothing yet: the processor time of its
 *    thread, four times for a phone, against 300 ms. The median of five workers.
 * 4. Random problems of a hundred tasks, harder than any aircraft: the share that is proven within 2 % in 10 s of
 *    processor time, search and proof together, and how near the others come. No limit: what is not proven is told.
 *
 * Run: node bench/planner.ts [part of a file's name]
 */
import { readFileSync } from "node:fs";
import { Worker } from "node:worker_threads";
import { readBook } from "@witnessmark/book";
import { keepsRules, poseWalk, proveCover, solveCover, solveSequence } from "@witnessmark/planner";
import type { Highs } from "highs";
import index from "../reference/tsplib/index.json" with { type: "json" };
import { readInstance } from "../reference/tsplib/read-instance.ts";
import { orderByHighs } from "./planner/order-by-highs.ts";
import { randomCover } from "./planner/random-cover.ts";

const MOST_NODES = 101;
const TIME_ms = 5000;
const FIRST_ms = 300;
const PROOF_ms = 10_000;
const PROOF_1 = 0.02;

const spent_ms = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};
const textOf = (file: string): string => readFileSync(new URL(`../${file}`, import.meta.url), "utf8");
const percent = (share_1: number): string => `${(100 * share_1).toFixed(2)} %`;

const wanted = process.argv[2] ?? "";
const imported = await import("highs");
// the types describe the CommonJS form, whose default is the whole module; the ES module's is the loader
const highs = await (imported.default as unknown as () => Promise<Highs>)();

let over = 0;
let [ours, theirs, tried] = [0, 0, 0];
for (const { file, name, dimension, best } of index.instances) {
  if (dimension > MOST_NODES || !file.includes(wanted)) continue;
  const problem = readInstance(textOf(`reference/tsplib/${file}`));
  const start_ms = spent_ms();
  const answer = solveSequence(problem, {
    rounds: Number.POSITIVE_INFINITY,
    shouldStop: (cost) => cost <= best || spent_ms() - start_ms > TIME_ms,
  });
  const took_ms = spent_ms() - start_ms;
  const off_1 = answer.cost / best - 1;
  const limit_1 = dimension <= 50 ? 0 : dimension <= 100 ? 0.01 : Number.POSITIVE_INFINITY;
  const holds = keepsRules(problem, answer.order) && off_1 <= limit_1;
  if (!holds) over += 1;
  const peerStart_ms = spent_ms();
  const peer = orderByHighs(highs, problem, () => spent_ms() - peerStart_ms > TIME_ms);
  const peerTook_ms = spent_ms() - peerStart_ms;
  tried += 1;
  if (answer.cost <= best) ours += 1;
  if (peer !== undefined && peer <= best) theirs += 1;
  const peerSays = peer === undefined ? "no order" : `${peer} (${percent(peer / best - 1)} off)`;
  console.log(
    `${name}, ${dimension} nodes, known ${best}: planner ${answer.cost} (${percent(off_1)} off) in ${took_ms.toFixed(0)} ms; HiGHS ${peerSays} in ${peerTook_ms.toFixed(0)} ms${holds ? "" : "  OVER ITS LIMIT"}`,
  );
}
console.log(`known optimum found: planner ${ours} of ${tried}, HiGHS ${theirs} of ${tried}`);

for (const file of ["zz-skr.yaml", "zz-dun.yaml", "zz-brk.yaml"]) {
  if (!file.includes(wanted)) continue;
  const read = await readBook(textOf(`books/${file}`), file);
  if (!read.ok) throw new Error(`${file}: expected a book without faults`);
  const posing_ms = spent_ms();
  const { problem } = poseWalk(read.book, "first-of-day");
  const start_ms = spent_ms();
  const found = solveCover(problem, {
    rounds: Number.POSITIVE_INFINITY,
    shouldStop: () => spent_ms() - posing_ms > FIRST_ms,
  });
  const proof_ms = spent_ms();
  const proof = proveCover(problem, found.visits, {
    target_1: PROOF_1,
    states: Number.POSITIVE_INFINITY,
    shouldStop: () => spent_ms() - proof_ms > PROOF_ms,
  });
  const [first_1, gap_1] = [found.cost / proof.bound - 1, proof.cost / proof.bound - 1];
  if (gap_1 > PROOF_1 / (1 - PROOF_1)) over += 1;
  console.log(
    `${file}, ${problem.tasks.length} steps, ${problem.stances} stances: posed in ${(start_ms - posing_ms).toFixed(0)} ms; ${found.cost.toFixed(1)} s of walking found in 300 ms, at most ${percent(first_1)} from the best; after ${(spent_ms() - proof_ms).toFixed(0)} ms of proof ${proof.cost.toFixed(1)} s, at most ${percent(gap_1)}`,
  );
}
const SLOWER = 4;
const COLD_RUNS = 5;
for (const file of ["zz-skr.yaml", "zz-dun.yaml", "zz-brk.yaml"]) {
  if (!file.includes(wanted) && wanted !== "phone") continue;
  const runs: number[] = [];
  for (let run = 0; run < COLD_RUNS; run += 1) runs.push(await coldOrder_ms(file));
  const phone_ms = SLOWER * (runs.sort((a, b) => a - b)[(COLD_RUNS - 1) / 2] ?? Number.NaN);
  const ratio_1 = phone_ms / FIRST_ms;
  if (!(ratio_1 <= 1)) over += 1;
  console.log(
    `${file}, the order that counts, on a phone: ${phone_ms.toFixed(0)} ms, ${ratio_1.toFixed(2)} of the limit${ratio_1 <= 1 ? "" : "  OVER ITS LIMIT"}`,
  );
}

function coldOrder_ms(file: string): Promise<number> {
  const worker = new Worker(new URL("./planner/cold-order.ts", import.meta.url), { workerData: file });
  return new Promise((done, failed) => {
    worker.once("message", ({ took_ms }: { readonly took_ms: number }) => done(took_ms));
    worker.once("error", failed);
  });
}

const RANDOM_CASES = 10;
const RANDOM_ROUNDS = 200;
let proven = 0;
let widest_1 = 0;
for (let seed = 1; seed <= RANDOM_CASES && "random".includes(wanted); seed += 1) {
  const problem = randomCover(seed);
  const start_ms = spent_ms();
  const { visits, cost } = solveCover(problem, { rounds: RANDOM_ROUNDS });
  const proof = proveCover(problem, visits, {
    target_1: PROOF_1,
    states: Number.POSITIVE_INFINITY,
    shouldStop: () => spent_ms() - start_ms > PROOF_ms,
  });
  const gap_1 = 1 - proof.bound / proof.cost;
  if (gap_1 <= PROOF_1 + 1e-9) proven += 1;
  widest_1 = Math.max(widest_1, gap_1);
  console.log(
    `random ${seed}, 100 steps, 34 stances: ${cost.toFixed(1)} s found, ${proof.cost.toFixed(1)} s after ${(spent_ms() - start_ms).toFixed(0)} ms, at most ${percent(gap_1)} from the best`,
  );
}
if ("random".includes(wanted)) {
  console.log(
    `random problems proven within 2 %: ${proven} of ${RANDOM_CASES}; the others within ${percent(widest_1)}`,
  );
}
process.exitCode = over === 0 ? 0 : 1;
