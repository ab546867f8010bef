import { beforeAll, describe, expect, it } from "vitest";
import { REGISTRATION } from "./harness/book.ts";
import { Decide } from "./harness/decide.ts";
import { introduced, type OnAWalk, onAWalk } from "./harness/on-a-walk.ts";
import { until } from "./harness/patience.ts";
import { phoneLedger, serverEvents } from "./harness/records.ts";
import { openScene, type Scene } from "./harness/scene.ts";
import { allOnServer, toSheet, toWalk } from "./harness/screens.ts";
import { percentile } from "./harness/stopwatch.ts";

describe("two phones on one walk", () => {
  let scene: Scene;
  let one: OnAWalk;
  let two: OnAWalk;

  beforeAll(async () => {
    scene = await openScene();
    two = await introduced(scene, "RT");
    one = await onAWalk(scene, "MK");
    return scene.end;
  });

  it("are on the same walk as soon as one has begun it", async () => {
    // the other phone's Apron says so by itself
    await two.phone.page.getByRole("link", { name: `Go on walking: ${REGISTRATION}` }).waitFor();
    await toWalk(two.phone.page);
    await two.walker.card.waitFor();
    expect(await two.walker.left()).toEqual(await one.walker.left());
  });

  it("see each other's answers while both are connected", async () => {
    const took_ms: number[] = [];
    for (const [says, sees] of [
      [one, two],
      [one, two],
      [two, one],
      [one, two],
      [two, one],
    ] as const) {
      await says.walker.doStep();
      const from_ms = performance.now();
      await sees.walker.leftBecomes((await says.walker.left()).left);
      took_ms.push(performance.now() - from_ms);
    }
    console.log(
      `two phones: kept on one until seen on the other, median ${percentile(took_ms, 0.5).toFixed(0)} ms, ` +
        `longest ${Math.max(...took_ms).toFixed(0)} ms, of ${took_ms.length}`,
    );
  });

  it("go their own ways without a connection, and are one again when they meet", async () => {
    const { left } = await one.walker.left();
    await one.phone.context.setOffline(true);
    const answered = [await one.walker.doStep(), await one.walker.doStep()];
    // the other one is at the same step, and finds otherwise
    await two.walker.notRight("loose to the touch", false);
    await two.walker.doStep();
    const third = await two.walker.doStep();
    expect((await one.walker.left()).left).toBe(left - 2);
    await one.phone.context.setOffline(false);
    await one.walker.leftBecomes(left - 3);
    await two.walker.leftBecomes(left - 3);
    for (const { phone } of [one, two]) await allOnServer(phone.page);
    const [onOne, onTwo] = [
      await phoneLedger(one.phone.page, REGISTRATION),
      await phoneLedger(two.phone.page, REGISTRATION),
    ];
    expect(onOne.events).toEqual(onTwo.events);
    expect([...onOne.faults, ...onTwo.faults]).toEqual([]);
    expect(answered).not.toContain(third);
    expect(await serverEvents(scene.server.url, REGISTRATION)).toHaveLength(onOne.events.length);
  });

  it("show where they disagree, with both names, on both", async () => {
    for (const { phone } of [one, two]) {
      await toSheet(phone.page, "Decide");
      const decide = new Decide(phone.page);
      const verdict = decide.verdicts.filter({ hasText: /MK.*as it should be.*RT.*not right/s });
      await verdict.first().waitFor();
      expect(await decide.count("stop")).toBeGreaterThanOrEqual(1);
    }
    await until(
      "no complaint of either page",
      () => [...one.phone.complaints, ...two.phone.complaints],
      (complaints) => complaints.length === 0,
    );
  });
});
