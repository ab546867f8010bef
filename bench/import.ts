/*
 * What it costs to bring 50,000 readings of an old log onto the record, in the browser: from the choosing of the file
 * until all of it is kept and told. A phone four times slower than this machine must stay alive meanwhile: no task of
 * the page's thread longer than 200 ms there, so a quarter of that here; and its memory must stay within bounds: the
 * heap at most 300 MB above what it was before, at any moment. Then all of it is taken back, in one step.
 * Work is counted in time of the page's own thread, which other work on the machine does not lengthen.
 * Run: node bench/import.ts [rows]
 */
import { openPhone, type Phone } from "@witnessmark/e2e/browser";
import { Import } from "@witnessmark/e2e/import";
import { introduce } from "@witnessmark/e2e/screens";
import { startServer } from "@witnessmark/e2e/server";

const ROWS = Number(process.argv[2] ?? 50_000);
const SLOWER = 4;
const TASK_LIMIT_ms = 200;
const HEAP_LIMIT_MB = 300;
const TAKES_ms = 1_800_000;
const LOOK_EVERY_ms = 500;
const MB = 1e6;
const DAY_ms = 86_400_000;

const CHECKS = [
  "main-tyre-pressure.left-main-tyre",
  "main-tyre-pressure.right-main-tyre",
  "nose-tyre-pressure",
] as const;

/** Readings of several wheels every day, as far back as it takes: an old log of a whole fleet's life. */
function oldLog(rows: number): string {
  const lines = ["Date;Time;Check;Pressure (bar);Temperature (°C);Read by"];
  for (let row = 0; row < rows; row += 1) {
    const day_ms = Date.now() - (Math.floor((rows - row) / 12) + 1) * DAY_ms;
    const minute = String(row % 60).padStart(2, "0");
    const hour = String(6 + (row % 12)).padStart(2, "0");
    const bar = (5.3 + (row % 9) / 100).toFixed(2).replace(".", ",");
    lines.push(
      `${new Date(day_ms).toISOString().slice(0, 10)};${hour}:${minute};${CHECKS[row % CHECKS.length]};${bar};${row % 20};AB`,
    );
  }
  return lines.join("\r\n");
}

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  readonly tdur?: number;
  readonly args?: { readonly name?: string };
}

interface Work {
  /** Time that the page's thread worked, s. */
  readonly worked_s: number;
  /** Its longest task, and how many were longer than the limit, ms of its own time. */
  readonly longest_ms: number;
  readonly over: number;
  readonly heapBefore_MB: number;
  readonly heapPeak_MB: number;
  readonly heapAfter_MB: number;
  readonly took_s: number;
}

/** Does something with the page, and tells what its thread and its heap had to do. */
async function during(phone: Phone, what: string, act: () => Promise<void>): Promise<Work> {
  const session = await phone.context.newCDPSession(phone.page);
  const heap_MB = async () => (await session.send("Runtime.getHeapUsage")).usedSize / MB;
  const tasks: TraceEvent[] = [];
  const mainThreads = new Set<string>();
  session.on("Tracing.dataCollected", ({ value }) => {
    // the shape of a trace's events, of which only what is looked at here is named
    for (const event of value as unknown as readonly TraceEvent[]) {
      if (event.name === "thread_name" && event.args?.name === "CrRendererMain")
        mainThreads.add(`${event.pid} ${event.tid}`);
      else if (event.tdur !== undefined && /RunTask$/.test(event.name)) tasks.push(event);
    }
  });
  await session.send("HeapProfiler.collectGarbage");
  const heapBefore_MB = await heap_MB();
  let heapPeak_MB = heapBefore_MB;
  await session.send("Performance.enable", { timeDomain: "threadTicks" });
  const worked = async () =>
    (await session.send("Performance.getMetrics")).metrics.find(({ name }) => name === "TaskDuration")
      ?.value ?? Number.NaN;
  const before_s = await worked();
  await session.send("Tracing.start", { categories: "toplevel,disabled-by-default-devtools.timeline" });
  const start_ms = performance.now();
  let isOver = false;
  const looking = (async () => {
    while (!isOver) {
      heapPeak_MB = Math.max(heapPeak_MB, await heap_MB());
      await new Promise((done) => setTimeout(done, LOOK_EVERY_ms));
    }
  })();
  try {
    await act();
  } finally {
    isOver = true;
    await looking;
  }
  const took_s = (performance.now() - start_ms) / 1000;
  const worked_s = (await worked()) - before_s;
  const complete = new Promise<void>((done) => session.once("Tracing.tracingComplete", () => done()));
  await session.send("Tracing.end");
  await complete;
  const own_ms = tasks
    .filter(({ pid, tid }) => mainThreads.has(`${pid} ${tid}`))
    .map(({ tdur = 0 }) => tdur / 1000);
  await session.send("HeapProfiler.collectGarbage");
  const heapAfter_MB = await heap_MB();
  await session.detach();
  const says: Work = {
    worked_s,
    longest_ms: own_ms.reduce((longest, ms) => Math.max(longest, ms), 0),
    over: own_ms.filter((ms) => ms * SLOWER > TASK_LIMIT_ms).length,
    heapBefore_MB,
    heapPeak_MB,
    heapAfter_MB,
    took_s,
  };
  console.log(words(what, says));
  return says;
}

const words = (what: string, work: Work): string =>
  `  ${what}: ${work.worked_s.toFixed(1)} s of the page's thread in ${work.took_s.toFixed(0)} s; longest task ${work.longest_ms.toFixed(0)} ms, ${work.over} over the limit; heap ${work.heapBefore_MB.toFixed(0)} MB before, at most ${work.heapPeak_MB.toFixed(0)} MB, ${work.heapAfter_MB.toFixed(0)} MB after`;

const server = await startServer({});
const phone = await openPhone(server.url, {});
try {
  const { page } = phone;
  console.log(`${ROWS} readings from a file:`);
  await introduce(page, "Bench");
  const screen = new Import(page);
  await screen.open();
  const bringIn = page.getByRole("button", { name: /^Bring in [\d,]+ readings$/ });
  const chosen = await during(phone, "chosen, read and shown", async () => {
    await screen.choose("log.csv", oldLog(ROWS));
    await bringIn.waitFor({ timeout: TAKES_ms });
  });
  const brought = await during(phone, "brought in", async () => {
    await bringIn.tap();
    await page.getByRole("heading", { name: "Brought in", exact: true }).waitFor({ timeout: TAKES_ms });
  });
  const taken = await during(phone, "taken back", async () => {
    await page.getByRole("button", { name: "Take them back" }).tap();
    await page.getByRole("heading", { name: "Taken back" }).waitFor({ timeout: TAKES_ms });
  });
  const all = [chosen, brought, taken];
  const longest_ms = Math.max(...all.map((work) => work.longest_ms)) * SLOWER;
  const heap_MB = Math.max(...all.map((work) => work.heapPeak_MB - chosen.heapBefore_MB));
  console.log(
    [
      `  longest task, ${SLOWER}x slower: ${longest_ms.toFixed(0)} ms; against the limit of ${TASK_LIMIT_ms} ms: ${(longest_ms / TASK_LIMIT_ms).toFixed(2)}`,
      `  heap above what it was: ${heap_MB.toFixed(0)} MB; against the limit of ${HEAP_LIMIT_MB} MB: ${(heap_MB / HEAP_LIMIT_MB).toFixed(2)}`,
    ].join("\n"),
  );
  process.exitCode = longest_ms <= TASK_LIMIT_ms && heap_MB <= HEAP_LIMIT_MB ? 0 : 1;
} finally {
  await phone.close();
  await server.remove();
}
