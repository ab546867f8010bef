import { beforeAll, describe, expect, it } from "vitest";
import { REGISTRATION } from "./harness/book.ts";
import { setQuota } from "./harness/browser.ts";
import { lookInEveryView } from "./harness/every-view.ts";
import { fillStorage } from "./harness/fill-storage.ts";
import { type OnAWalk, onAWalk } from "./harness/on-a-walk.ts";
import { goodReading, type ToType } from "./harness/readings.ts";
import { phoneLedger } from "./harness/records.ts";
import { openScene, type Scene } from "./harness/scene.ts";
import { allOnServer, introduce, readyForNoNet } from "./harness/screens.ts";

/** Enough for the app and the demo, with some room beside it. */
const SMALL_B = 13_500_000;
const LARGE_B = 200_000_000;

describe("a phone whose storage is full", () => {
  let scene: Scene;
  let on: OnAWalk;
  let read: ToType = { value: "", temperature_degC: null };
  let before: Awaited<ReturnType<typeof phoneLedger>>;

  beforeAll(async () => {
    scene = await openScene();
    on = await onAWalk(scene, "MK", { quota_B: SMALL_B });
    for (let at = 0; at < 4; at += 1) await on.walker.doStep();
    await allOnServer(on.phone.page);
    before = await phoneLedger(on.phone.page, REGISTRATION);
    await on.walker.card.waitFor();
    return scene.end;
  });

  it("says that an answer was not kept, and what to do, and leaves the step in hand", async () => {
    const { walker, phone } = on;
    const [card, { left }] = [await walker.onCard(), await walker.left()];
    const { step } = await walker.inHand();
    if (step.kind !== "check") throw new Error(`expected a check with a reading in hand, found ${step.id}`);
    read = goodReading(walker.book, step.check);
    await walker.read(read);
    await fillStorage(phone.page);
    await walker.yes.tap();
    await walker.trouble.getByText(/^Not kept\. Free some room, then answer again\./).waitFor();
    expect(await walker.onCard()).toEqual(card);
    expect(await walker.left()).toMatchObject({ left });
    expect(await walker.readingSaid()).toContain(read.value);
  });

  it("leaves what was chosen and typed of a fault where it is", async () => {
    const { walker } = on;
    await walker.no.tap();
    await walker.words.fill("one pocket is empty");
    await walker.answerKeep.tap();
    await walker.trouble.getByText(/^Not kept\./).waitFor();
    expect(await walker.words.inputValue()).toBe("one pocket is empty");
  });

  it("lost nothing that it had kept", async () => {
    const after = await phoneLedger(on.phone.page, REGISTRATION);
    expect(after.faults).toEqual([]);
    expect(after.events).toEqual(before.events);
  });

  it("goes on with the walk once there is room", async () => {
    const { walker, phone } = on;
    await walker.card.waitFor();
    const { left } = await walker.left();
    await setQuota(phone.context, phone.page, scene.server.url, LARGE_B);
    expect(await walker.readingSaid()).toContain(read.value);
    await walker.kept(walker.yes, "as it should be");
    await walker.doStep();
    expect(await walker.left()).toMatchObject({ left: left - 2 });
    await allOnServer(phone.page);
    expect((await phoneLedger(phone.page, REGISTRATION)).faults).toEqual([]);
  });
});

/** Enough for the demo's record, and too little for the files of the app beside it. */
const TOO_SMALL_B = 9_000_000;

describe("a phone that has no room for the app itself", () => {
  it("says that it will not open without a net, and what to do, until there is room", async () => {
    const scene = await openScene();
    const phone = await scene.phone({ quota_B: TOO_SMALL_B });
    await introduce(phone.page, "MK");
    const warning = phone.page.getByRole("alert").filter({ hasText: "Without a net this app will not open" });
    await warning.waitFor();
    expect((await lookInEveryView(phone.page)).wrong).toEqual([]);
    await setQuota(phone.context, phone.page, scene.server.url, LARGE_B);
    await warning.getByRole("button", { name: "Try again" }).tap();
    await readyForNoNet(phone.page);
    expect(await warning.count()).toBe(0);
    await scene.end();
  });
});
