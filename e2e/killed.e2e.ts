import { isKnownEvent, type LedgerEvent } from "@witnessmark/ledger";
import { beforeEach, describe, expect, it } from "vitest";
import { REGISTRATION } from "./harness/book.ts";
import { onAWalk, sameWalker } from "./harness/on-a-walk.ts";
import { until } from "./harness/patience.ts";
import { phoneLedger, serverEvents, serverHead, serverLedger } from "./harness/records.ts";
import { openScene, type Scene } from "./harness/scene.ts";
import { toWalk } from "./harness/screens.ts";

const KILLS = 3;

/** Ids of the checks and pieces of ground gear that these events say something of. */
const saidOf = (events: readonly LedgerEvent[]): readonly string[] =>
  events.filter(isKnownEvent).flatMap((event) => {
    if (event.type === "check.answered") return [event.body.check];
    return event.type === "groundGear.removed" ? [event.body.item] : [];
  });

describe("what was shown as kept", () => {
  let scene: Scene;
  beforeEach(async () => {
    scene = await openScene();
    return scene.end;
  });

  it(`is there after the browser was killed in the middle of a walk, ${KILLS} times`, async () => {
    let { phone, walker } = await onAWalk(scene, "MK");
    const shown: string[] = [];
    let { left } = await walker.left();
    for (let kill = 0; kill < KILLS; kill += 1) {
      for (let at = 0; at < 3; at += 1) shown.push(await walker.doStep());
      left -= 3;
      // the last tap is not waited for: it may be kept or not, and nothing else may suffer by it
      if (kill % 2 === 1) await walker.yes.or(walker.pieces).tap();
      phone = await scene.killAndReopen(phone);
      walker = sameWalker(phone, walker);
      await toWalk(phone.page);
      const { left: found } = await walker.left();
      expect([left, left - 1]).toContain(found);
      left = found;
    }
    const ledger = await phoneLedger(phone.page, REGISTRATION);
    expect(ledger.faults).toEqual([]);
    expect(saidOf(ledger.events)).toEqual(expect.arrayContaining(shown));
    expect(phone.complaints).toEqual([]);
  });

  it(`is there, and once on the server, after the server was killed in mid-push, ${KILLS} times`, async () => {
    const { phone, walker } = await onAWalk(scene, "MK");
    const shown: string[] = [];
    for (let kill = 0; kill < KILLS; kill += 1) {
      const dies = new Promise<void>((done) => {
        phone.page.once("request", async function push(request) {
          if (request.method() !== "POST") phone.page.once("request", push);
          else await scene.server.kill().then(done);
        });
      });
      shown.push(await walker.doStep());
      await dies;
      shown.push(await walker.doStep(), await walker.doStep());
      await scene.serverAgain();
      // an entry on the phone calls for an exchange at once; the phone need not wait for its next try
      shown.push(await walker.doStep());
    }
    const onPhone = await phoneLedger(phone.page, REGISTRATION);
    expect(saidOf(onPhone.events)).toEqual(expect.arrayContaining(shown));
    await until(
      "the server to have every entry of the phone",
      () => serverHead(scene.server.url, REGISTRATION),
      (head) => head >= onPhone.events.length,
    );
    const ids = (await serverEvents(scene.server.url, REGISTRATION)).map(({ id }) => id);
    expect(ids.toSorted()).toEqual(onPhone.events.map(({ id }) => id).toSorted());
    expect((await serverLedger(scene.server.url, REGISTRATION)).faults).toEqual([]);
    expect(phone.complaints).toEqual([]);
  });
});
