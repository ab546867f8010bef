import { copyFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { REGISTRATION } from "./harness/book.ts";
import { introduced, type OnAWalk, onAWalk } from "./harness/on-a-walk.ts";
import { until } from "./harness/patience.ts";
import { phoneLedger, serverEvents, serverHead, serverLedger } from "./harness/records.ts";
import { openScene, type Scene } from "./harness/scene.ts";
import { allOnServer, toWalk } from "./harness/screens.ts";
import { DATABASE } from "./harness/server.ts";

describe("a server whose database was put back to an older copy", () => {
  let scene: Scene;
  let one: OnAWalk;
  let two: OnAWalk;
  const database = () => join(scene.server.dataDirectory, DATABASE);

  beforeAll(async () => {
    scene = await openScene();
    one = await onAWalk(scene, "MK");
    two = await introduced(scene, "RT");
    await toWalk(two.phone.page);
    return scene.end;
  });

  it("is refilled by a phone with its own entries and those of others, every one once", async () => {
    await one.walker.doStep();
    await allOnServer(one.phone.page);
    await scene.server.stop();
    copyFileSync(database(), `${database()}.older`);
    const older = (await phoneLedger(one.phone.page, REGISTRATION)).events.length;
    await scene.serverAgain();

    const { left } = await one.walker.left();
    await one.walker.doStep();
    await two.walker.leftBecomes(left - 1);
    // what is in hand on the other phone stays in hand: it answers the same step, and then one of its own
    await two.walker.doStep();
    await two.walker.doStep();
    await one.walker.leftBecomes(left - 2);
    const whole = (await phoneLedger(one.phone.page, REGISTRATION)).events;
    expect(whole.length).toBeGreaterThan(older + 2);
    // the other phone goes home, and its entries with it
    await two.phone.context.setOffline(true);

    await scene.server.stop();
    for (const beside of ["-wal", "-shm"]) rmSync(`${database()}${beside}`, { force: true });
    copyFileSync(`${database()}.older`, database());
    await scene.serverAgain();
    expect(await serverHead(scene.server.url, REGISTRATION)).toBeLessThan(whole.length);

    await until(
      "the server to have again what it had",
      () => serverHead(scene.server.url, REGISTRATION),
      (head) => head >= whole.length,
      60_000,
    );
    const events = await serverEvents(scene.server.url, REGISTRATION);
    expect(events.map(({ id }) => id).toSorted()).toEqual(whole.map(({ id }) => id).toSorted());
    expect((await serverLedger(scene.server.url, REGISTRATION)).faults).toEqual([]);
  });

  it("goes on from there with both phones", async () => {
    await two.phone.context.setOffline(false);
    const { left } = await one.walker.left();
    await one.walker.doStep();
    await two.walker.leftBecomes(left - 1);
    for (const { phone } of [one, two]) {
      await allOnServer(phone.page);
      expect(phone.complaints).toEqual([]);
    }
    const [onOne, onTwo] = [
      await phoneLedger(one.phone.page, REGISTRATION),
      await phoneLedger(two.phone.page, REGISTRATION),
    ];
    expect(onOne.events).toEqual(onTwo.events);
    expect(await serverHead(scene.server.url, REGISTRATION)).toBe(onOne.events.length);
  });
});
