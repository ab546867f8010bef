/*
 * How fast the figures of a load follow a drag, on a tablet and on a phone that are four times slower than this
 * machine. A real touch is moved; the browser hands a movement to the page at the beginning of a frame, so that it
 * cannot be seen sooner than in that frame. A step is what the movement costs that frame: from when it is handed over
 * until the frame with the new figures in the table is painted and given to the compositor, script, style, layout and
 * paint together. A step whose figures are not in their own frame has the wait for them counted with it.
 * Limit: one frame at 60 Hz, 16.7 ms, for 95 steps of 100, by the clock on the wall: other work on the machine counts
 * too. Run: node bench/load-drag.ts
 */
import { PHONE, TABLET } from "@witnessmark/e2e/browser";
import { CARELESS, islandFlight, Load } from "@witnessmark/e2e/load";
import { openScene } from "@witnessmark/e2e/scene";
import { introduce } from "@witnessmark/e2e/screens";
import { percentile } from "@witnessmark/e2e/stopwatch";

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
    const session = await phone.context.newCDPSession(page);
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
    const p95_ms = percentile(took_ms, 0.95);
    worst_1 = Math.max(worst_1, p95_ms / LIMIT_ms);
    console.log(
      `${name}, ${SLOWER}x slower: a step of a drag takes ${percentile(took_ms, 0.5).toFixed(1)} ms (median), ${p95_ms.toFixed(1)} ms (95th percentile), ${Math.max(...took_ms).toFixed(1)} ms at most, of ${took_ms.length}; ${(p95_ms / LIMIT_ms).toFixed(2)} of the limit of ${LIMIT_ms.toFixed(1)} ms`,
    );
    await phone.close();
  }
} finally {
  await scene.end();
}
process.exitCode = worst_1 <= 1 ? 0 : 1;
