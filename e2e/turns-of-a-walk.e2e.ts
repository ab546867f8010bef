import { readBook, smallBookText } from "@witnessmark/book";
import { beforeAll, describe, expect, it } from "vitest";
import { AddAircraft } from "./harness/add-aircraft.ts";
import type { Phone } from "./harness/browser.ts";
import { until } from "./harness/patience.ts";
import { jpeg } from "./harness/picture-file.ts";
import { openScene, type Scene } from "./harness/scene.ts";
import { go, introduce, recordHappening, toApron, toWalk } from "./harness/screens.ts";
import { Walker } from "./harness/walker.ts";

/** An aircraft of eight steps. */
const SMALL = "ZZ-SML";

describe("the turns that a walk takes", () => {
  let scene: Scene;
  let phone: Phone;
  let walker: Walker;
  let before = "";
  /** Checks among the steps that were done before the break. */
  let looks = 0;
  const leftButton = () => phone.page.getByRole("button", { name: /^Left, \d+$/ });

  beforeAll(async () => {
    scene = await openScene();
    phone = await scene.phone();
    const small = await readBook(smallBookText, "small.yaml");
    if (!small.ok) throw new Error("expected the small book to read");
    walker = new Walker(phone.page, small.book, await jpeg(phone.page));
    await introduce(phone.page, "MK");
    const add = new AddAircraft(phone.page);
    await add.open();
    await add.choose({ name: "s.yaml", mimeType: "text/yaml", buffer: Buffer.from(smallBookText) });
    await phone.page.getByRole("heading", { level: 1, name: "Aircraft", exact: true }).waitFor();
    await toApron(phone.page);
    await toWalk(phone.page, SMALL);
    await walker.startFirstOfDay();
    return scene.end;
  });

  it("a step that was skipped comes back at the end", async () => {
    const skipped = await walker.inHand();
    await walker.skip();
    const next = await walker.inHand();
    expect(next.step.id).not.toBe(skipped.step.id);
    for (let at = 0; at < 3; at += 1) {
      if ((await walker.inHand()).step.kind === "check") looks += 1;
      await walker.doStep();
    }
    await go(phone.page, `#/${SMALL}/left`);
    await phone.page.getByRole("listitem").filter({ hasText: skipped.title }).first().waitFor();
    await go(phone.page, `#/${SMALL}/walk`);
    await walker.card.waitFor();
  });

  it("a break asks the last three looks again, before anything else", async () => {
    const { left } = await walker.left();
    await walker.leave();
    await walker.comeBack();
    // one of them may have been open already: it rests on the step that was skipped
    await until(
      "more is left than before the break",
      async () => (await walker.left()).left,
      (now) => now > left,
    );
    expect(await walker.askedAgain()).toBe(looks);
    await walker.card.getByText(/^Away from .* look once more\.$/).waitFor();
  });

  it("comes to its end although a look could not be made that others rest on", async () => {
    await walker.goToId("tyre-look.left-main-tyre");
    await walker.couldNotCheck("Out of reach");
    const most = 16;
    for (let at = 0; at < most && !(await walker.isAtEnd()); at += 1) {
      const { step } = await walker.inHand();
      if (step.id === "tyre-look.left-main-tyre") await walker.couldNotCheck("Out of reach");
      else await walker.doStep();
    }
    expect(await walker.isAtEnd()).toBe(true);
    await walker.finish();
  });

  it("a happening reopens what it makes untrue, and names it", async () => {
    await go(phone.page, `#/${SMALL}/left`);
    before = (await leftButton().textContent()) ?? "";
    await go(phone.page, `#/${SMALL}/happened`);
    await recordHappening(phone.page, "Flown");
    const reopened = await phone.page.getByRole("main").getByRole("listitem").allTextContents();
    expect(reopened.join(" ")).toContain("Read the dipstick");
    const again = await until(
      "the looks that no longer count",
      () => phone.page.getByRole("link", { name: /^Look again, \d+ looks?$/ }).textContent(),
      (text) => text !== null,
    );
    expect(Number(/\d+/.exec(again ?? "")?.[0])).toBe(reopened.length);
  });

  it("a happening said by mistake is taken back, and the looks count again", async () => {
    await phone.page.getByRole("button", { name: "Undo" }).tap();
    await phone.page.getByRole("heading", { name: `What happened to ${SMALL}?` }).waitFor();
    await go(phone.page, `#/${SMALL}/left`);
    await leftButton().filter({ hasText: before }).waitFor();
    expect(phone.complaints).toEqual([]);
  });
});
