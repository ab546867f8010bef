import { beforeAll, describe, expect, it } from "vitest";
import { demoBook, REGISTRATION } from "./harness/book.ts";
import type { Phone } from "./harness/browser.ts";
import { lookInEveryView } from "./harness/every-view.ts";
import { jpeg } from "./harness/picture-file.ts";
import { openScene, type Scene } from "./harness/scene.ts";
import { go, introduce } from "./harness/screens.ts";
import { Walker } from "./harness/walker.ts";

const PRESSURE = "oxygen-pressure";

/** What is written down after a flight, and what the next walk makes of it. */
describe("after the flight", () => {
  let scene: Scene;
  let phone: Phone;
  let walker: Walker;

  beforeAll(async () => {
    scene = await openScene();
    phone = await scene.phone();
    walker = new Walker(phone.page, await demoBook(), await jpeg(phone.page));
    await introduce(phone.page, "MK");
    return scene.end;
  });

  const after = async () => {
    await go(phone.page, `#/${REGISTRATION}/after`);
    await phone.page.getByRole("heading", { level: 2, name: "The flight", exact: true }).waitFor();
  };
  const timed = async (item: string) => {
    await go(phone.page, `#/${REGISTRATION}/timed/${item}`);
    const head = phone.page.locator(".timed-head");
    await head.waitFor();
    return head;
  };

  it("a flight that ended before it began is told at once, and nothing of it is kept", async () => {
    const { page } = phone;
    await after();
    await page.getByRole("textbox", { name: "From" }).fill("ZZQN");
    await page.getByRole("textbox", { name: "To", exact: true }).fill("ZZTW");
    await page.getByLabel("Landed, local").fill("2026-01-05T10:00");
    await page.getByLabel("Took off, local").fill("2026-01-05T11:00");
    await page.getByRole("button", { name: "Keep the flight" }).tap();
    expect(await page.getByRole("alert").textContent()).toContain("It landed before it took off");
    expect(await page.getByText(/^Kept: ZZQN/).count()).toBe(0);
    expect((await lookInEveryView(page)).wrong).toEqual([]);
  });

  it("a flight that was made leaves open what runs by hours, until the counters are read", async () => {
    const { page } = phone;
    expect(await (await timed("inspection-100h")).textContent()).toMatch(/\d h/);
    await after();
    await page.getByRole("textbox", { name: "From" }).fill("ZZQN");
    await page.getByRole("textbox", { name: "To", exact: true }).fill("ZZTW");
    await page.getByRole("textbox", { name: /^In your words, for the next/ }).fill("Door light flickers");
    await page.getByRole("button", { name: "Keep the flight" }).tap();
    expect(await page.getByRole("alert").textContent()).toContain("Say when it took off");
    const minuteAgo = async (minutes: number) =>
      page.evaluate((ago) => {
        const at = new Date(Date.now() - ago * 60_000 - new Date().getTimezoneOffset() * 60_000);
        return at.toISOString().slice(0, 16);
      }, minutes);
    await page.getByLabel("Took off, local").fill(await minuteAgo(50));
    await page.getByLabel("Landed, local").fill(await minuteAgo(2));
    await page.getByRole("spinbutton", { name: "Landings by day" }).fill("1");
    await page.getByRole("button", { name: "Keep the flight" }).tap();
    await page.getByText(/^Kept: ZZQN to ZZTW/).waitFor();
    // a second tap is no second flight
    await page.getByRole("button", { name: "Keep the flight" }).tap();
    expect(await page.getByRole("alert").textContent()).toContain("Say from where it went");
    expect(await (await timed("inspection-100h")).textContent()).toContain("after the last flight");
  });

  it("a counter that runs backwards is asked about, and a meter that was replaced goes on from the old one", async () => {
    const { page } = phone;
    await after();
    const starts = page.getByRole("textbox", { name: /^Engine starts/ });
    await starts.fill("3");
    await page.getByRole("button", { name: "Keep what they show" }).tap();
    expect(await page.getByRole("alert").textContent()).toContain("Engine starts would run backwards");
    await page.getByRole("checkbox", { name: /Tick if the meter was replaced/ }).tap();
    await page.getByRole("textbox", { name: /^Airframe hours/ }).fill("1285,5");
    expect((await lookInEveryView(page)).wrong).toEqual([]);
    await page.getByRole("button", { name: "Keep what they show" }).tap();
    await page.getByText("Kept: 2 counters.").waitFor();
    expect(await (await timed("inspection-100h")).textContent()).not.toContain("after the last flight");
  });

  it("what was filled up is kept with how much, and can be taken back", async () => {
    const { page } = phone;
    await after();
    await page.getByRole("button", { name: "Oil", exact: true }).tap();
    const much = page.getByRole("textbox", { name: "How much, if it is known" });
    await much.fill("plenty");
    const form = page.locator("form").filter({ has: page.getByRole("button", { name: "Oil", exact: true }) });
    await form.getByRole("button", { name: "Keep it" }).tap();
    expect((await page.getByRole("alert").textContent())?.length).toBeGreaterThan(10);
    await much.fill("1,5");
    await form.getByRole("button", { name: "Keep it" }).tap();
    await page.getByText("Kept: oil filled up, 1.5 US qt.").waitFor();
    await form.getByRole("button", { name: "Undo" }).tap();
    await page.getByText("Kept: oil filled up, 1.5 US qt.").waitFor({ state: "detached" });
  });

  it("the next walk opens with where it stands, what is fitted and what was said", async () => {
    const { page } = phone;
    await after();
    await page.getByRole("textbox", { name: "Where" }).fill("Stand 4 by the fence");
    await page
      .getByRole("textbox", { name: "How it is secured" })
      .fill("Tied at three points, nose into wind");
    await page.getByRole("button", { name: "Keep where it stands" }).tap();
    await page.getByText("Kept: Stand 4 by the fence.").waitFor();
    await page.getByRole("link", { name: "To the walk after the flight" }).tap();
    const left = page.getByRole("list", { name: "What the last flight left" });
    await left.waitFor();
    const words = await left.textContent();
    expect(words).toContain("Parked: Stand 4 by the fence. Tied at three points, nose into wind");
    expect(words).toContain("Door light flickers");
    expect(words).toContain("Ground gear fitted: ");
    expect((await lookInEveryView(page)).wrong).toEqual([]);
  });

  it("a look that is gone to before the next walk waits for it, and belongs to that walk", async () => {
    const { page } = phone;
    const { book } = walker;
    const check = book.checks.find(({ id }) => id === PRESSURE);
    const first = book.checks.find(({ id }) => check?.after.includes(id));
    if (check === undefined || first === undefined)
      throw new Error("expected a reading that comes after a look");
    await go(page, `#/${REGISTRATION}/walk/check/${PRESSURE}`);
    await page
      .getByRole("status")
      .filter({ hasText: `${check.title} is looked at in a walk` })
      .waitFor();
    expect(await walker.yes.count()).toBe(0);
    expect((await lookInEveryView(page)).wrong).toEqual([]);
    await walker.startFirstOfDay();
    expect((await walker.onCard()).title).toBe(check.title);
    await walker.card.getByText(`First: ${first.title}. Until that is done, this does not count.`).waitFor();
  });

  it("a reading past its limit is no less a stop when the look was as it should be, and that is said", async () => {
    await walker.read({ value: "60", temperature_degC: "10" });
    await walker.yes.tap();
    await walker.strip
      .filter({ hasText: "as it should be, but its reading is outside the limit: it stays a stop" })
      .waitFor();
  });
});
