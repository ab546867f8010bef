/*
 * How fast the figures of a load follow a drag, on a tablet and on a phone that are four times slower than this
 * machine. A real touch is moved; the browser hands a movement to the page at the beginning of a frame, so that it
 * cannot be seen sooner than in that frame. A step is what the movement costs that frame: from when it is handed over
 * until the frame with the new figures in the table is painted and given to the compositor, script, style, layout and
 * paint together. A step whose figures are not in their own frame has the wait for them counted with it.
 * Limit: one frame at 60 Hz, 16.7 ms, for 95 steps of 100, by the clock on the wall: other work on the machine counts
 * too. The peer, in the same browser and the same run: a page that has nothing but a table of as many figures, and writes
 * all of them at each movement. What that takes is the least that a table of figures can take here.
 * Run: node bench/load-drag.ts
 */
import { PHONE, TABLET } from "@witnessmark/e2e/browser";
import { CARELESS, islandFlight, Load } from "@witnessmark/e2e/load";
import { openScene } from "@witnessmark/e2e/scene";
import { introduce } from "@witnessmark/e2e/screens";
import { percentile } from "@witnessmark/e2e/stopwatch";
import type { BrowserContext, Page } from "playwright-core";

const LIMIT_ms = 1000 / 60;
const SLOWER = 4;
const STEPS = 120;

/** Runs inside the page: measures every movement of the finger that changes a figure. */
function watch(): void {
  const table = document.querySelector(".phases");
  if (table === null) throw new Error("load drag: expected a table");
  const took: number[] = [];
  let changed = false;
  let isLate = false;
  let start_ms = 0;
  const stands = () => {
    isLate = false;
    took.push(performance.now() - start_ms);
  };
  new MutationObserver(() => {
    changed = true;
    if (isLate) stands();
  }).observe(table, { subtree: true, characterData: true, childList: true, attributes: true });
  const { port1, port2 } = new MessageChannel();
  // a message sent in a frame is heard once that frame has been painted; where the turn of the drag gives the same
  // figure twice, nothing is ever written
  port1.onmessage = () => {
    if (changed) stands();
    else isLate = true;
  };
  window.addEventListener(
    "pointermove",
    () => {
      start_ms = performance.now();
      changed = false;
      isLate = false;
      // asked for while a movement is handed over, it is called in that frame, after all who heard of the movement
      requestAnimationFrame(() => port2.postMessage(null));
    },
    { capture: true },
  );
  Object.assign(window, { took });
}

/** Runs inside the page: what was measured since it was last asked. */
function taken(): readonly number[] {
  // put there by `watch`
  const { took } = window as unknown as { took: number[] };
  return took.splice(0);
}

/** As many figures as the table of the load changes at a step: mass, arm, range and what is left, at five moments. */
const BARE_FIGURES = 20;

/** Runs inside the bare page: writes every figure at each movement. */
function writeBare(): void {
  const figures = [...document.querySelectorAll("td")].map((cell) => cell.firstChild);
  let step = 0;
  window.addEventListener("pointermove", () => {
    step += 1;
    for (const [at, figure] of figures.entries())
      if (figure instanceof Text) figure.data = String(1000 + ((step * 7 + at) % 900));
  });
}

const bare = `<body style="margin:0;touch-action:none"><table class="phases">${`<tr>${"<td>1000</td>".repeat(4)}</tr>`.repeat(BARE_FIGURES / 4)}</table></body>`;

interface Track {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Where the finger goes back and forth, CSS px. */
  readonly box: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
}

/** What each step of a drag took, ms. */
async function steps_ms({ page, context, box }: Track): Promise<readonly number[]> {
  const session = await context.newCDPSession(page);
  await session.send("Emulation.setCPUThrottlingRate", { rate: SLOWER });
  const touch = (type: "touchStart" | "touchMove" | "touchEnd", there_1: number) =>
    session.send("Input.dispatchTouchEvent", {
      type,
      touchPoints:
        type === "touchEnd" ? [] : [{ x: box.x + box.width * there_1, y: box.y + box.height / 2, id: 1 }],
    });
  /** Back and forth; each movement is answered once the page has taken it. */
  const drag = async (steps: number) => {
    for (let step = 0; step < steps; step += 1)
      await touch("touchMove", 0.2 + 0.55 * Math.abs((((step / steps) * 4) % 2) - 1));
  };
  await page.evaluate(watch);
  await touch("touchStart", 0.4);
  await drag(STEPS / 4); // what is compiled on its first use is not what a drag costs
  await page.evaluate(taken);
  await drag(STEPS);
  await touch("touchEnd", 0);
  const took_ms = await page.evaluate(taken);
  if (took_ms.length < STEPS / 2) throw new Error(`load drag: only ${took_ms.length} steps were seen`);
  return took_ms;
}

const scene = await openScene();
let worst_1 = 0;
try {
  for (const [name, device] of [
    ["tablet", TABLET],
    ["phone", PHONE],
  ] as const) {
    const phone = await scene.phone({ device });
    const { page } = phone;
    await introduce(page, "Bench");
    const load = new Load(page);
    await load.openWith(islandFlight(CARELESS));
    await load.take(/^Both tanks/);
    const box = await load.slider.boundingBox();
    if (box === null) throw new Error("load drag: expected the slider to be on the screen");
    const took_ms = await steps_ms({ page, context: phone.context, box });
    await page.goto("about:blank");
    await page.setContent(bare);
    await page.evaluate(writeBare);
    const bare_ms = await steps_ms({ page, context: phone.context, box });
    const p95_ms = percentile(took_ms, 0.95);
    const bareP95_ms = percentile(bare_ms, 0.95);
    worst_1 = Math.max(worst_1, p95_ms / LIMIT_ms);
    console.log(
      `${name}, ${SLOWER}x slower: a step of a drag takes ${percentile(took_ms, 0.5).toFixed(1)} ms (median), ${p95_ms.toFixed(1)} ms (95th percentile), ${Math.max(...took_ms).toFixed(1)} ms at most, of ${took_ms.length}; ${(p95_ms / LIMIT_ms).toFixed(2)} of the limit of ${LIMIT_ms.toFixed(1)} ms; a bare table of ${BARE_FIGURES} figures takes ${percentile(bare_ms, 0.5).toFixed(1)} and ${bareP95_ms.toFixed(1)} ms here, so that a step is ${(percentile(took_ms, 0.5) / percentile(bare_ms, 0.5)).toFixed(1)} (median) and ${(p95_ms / bareP95_ms).toFixed(1)} (95th) of it`,
    );
    await phone.close();
  }
} finally {
  await scene.end();
}
process.exitCode = worst_1 <= 1 ? 0 : 1;
