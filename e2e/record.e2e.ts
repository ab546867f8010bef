import { readFileSync } from "node:fs";
import { beforeAll, describe, expect, it } from "vitest";
import { REGISTRATION } from "./harness/book.ts";
import type { Phone } from "./harness/browser.ts";
import { lookInEveryView } from "./harness/every-view.ts";
import { pushLongPast } from "./harness/long-past.ts";
import { PATIENCE_ms } from "./harness/patience.ts";
import { openScene, type Scene } from "./harness/scene.ts";
import { apronHas, go, introduce } from "./harness/screens.ts";

/** An aircraft with a record too long for a phone that is new to it. */
const OLD = "ZZ-OLD";

/** With the two years that the demo has behind it. */
describe("the record", () => {
  let scene: Scene;
  let phone: Phone;

  beforeAll(async () => {
    scene = await openScene({ past: "1" });
    phone = await scene.phone();
    await introduce(phone.page, "MK");
    return scene.end;
  });

  const open = async (address: string) => {
    await go(phone.page, `#/${REGISTRATION}/${address}`);
    await phone.page.getByRole("heading", { level: 1, name: "Record", exact: true }).waitFor();
    await phone.page.getByRole("main").waitFor();
  };

  it("has what is open, what runs out first and the past, clear to every eye and finger", async () => {
    const { page } = phone;
    await open("record");
    await page.getByRole("link", { name: /the same lamp dark again/ }).waitFor();
    const timed = page.getByRole("link", { name: /^Clear\s*100 h inspection/ });
    expect(await timed.textContent()).toContain("0.4 h");
    expect((await lookInEveryView(page)).wrong).toEqual([]);
  });

  it("takes down that an inspection was done, and then counts from there", async () => {
    const { page } = phone;
    await open("timed/inspection-100h");
    await page.getByRole("button", { name: "Keep it" }).tap();
    expect(await page.getByRole("alert").textContent()).toBe("Say who did it, or who released it.");
    await page.getByRole("textbox", { name: "By, as on the work order" }).fill("The workshop");
    await page.getByRole("button", { name: "Keep it" }).tap();
    await page.getByText("Kept.", { exact: true }).waitFor();
    expect(await page.locator(".timed-head").textContent()).toContain("100.0 h");
    expect((await lookInEveryView(page)).wrong).toEqual([]);
  });

  it("follows a component by its own hours, and a pilot's own papers by their printed day", async () => {
    const { page } = phone;
    await open("timed/starter-generator");
    await page.getByText("Fitted or removed").tap();
    await page.getByRole("textbox", { name: /^Serial number/ }).fill("SG-0500");
    await page.getByRole("button", { name: "It is fitted" }).tap();
    expect(await page.getByRole("alert").textContent()).toContain("expected what it had run");
    await page.getByRole("textbox", { name: /^It had run then itself/ }).fill("900");
    await page.getByRole("button", { name: "It is fitted" }).tap();
    await page.getByText("Kept: number SG-0500 is fitted.").waitFor();
    // what was done to the one before does not count for it
    expect(await page.locator(".timed-head").textContent()).toContain("not known");
    expect((await lookInEveryView(page)).wrong).toEqual([]);
    await page.getByRole("button", { name: "Undo" }).tap();
    await page.getByText(/^Number SG-0417, fitted/).waitFor();
    await open("timed/us-medical");
    await page.getByLabel("Done, or issued, on").fill("2026-05-10");
    await page.getByLabel(/^Born on/).fill("1984-05-10");
    // 14 CFR 61.23(d)(1): 40 or older, to the end of the 24th month
    await page.getByRole("button", { name: "Take 31 May 2028" }).tap();
    await page.getByRole("textbox", { name: /^By:/ }).fill("Dr. Holm");
    await page.getByRole("button", { name: "Keep it" }).tap();
    await page.getByText("No longer follow it").waitFor();
    expect(await page.locator(".life").textContent()).toContain("good until 31 May 2028");
  });

  it("takes down a discrepancy that no check found, where the drawing is tapped", async () => {
    const { page } = phone;
    await open("discrepancy/new");
    await page.getByRole("button", { name: "Write it down" }).tap();
    expect(await page.getByRole("alert").textContent()).toContain("Write what is not right first");
    await page.locator(".place-plan").tap({ position: { x: 180, y: 100 } });
    await page.getByRole("textbox", { name: "What is not right" }).fill("Scratch beside the door");
    expect((await lookInEveryView(page)).wrong).toEqual([]);
    await page.getByRole("button", { name: "Write it down" }).tap();
    await page.getByRole("heading", { level: 3, name: "What became of it" }).waitFor();
    expect(await page.locator(".life").textContent()).toContain("Scratch beside the door");
    expect((await lookInEveryView(page)).wrong).toEqual([]);
  });

  it("gives no relief for a lamp whose days by the list are over", async () => {
    const { page } = phone;
    await open("record");
    await page.getByRole("link", { name: /the same lamp dark again/ }).tap();
    await page.getByRole("button", { name: /^Fly with it/ }).tap();
    const dialog = page.getByRole("dialog");
    await dialog.getByText(/Its time ended with \d{4}-\d\d-\d\d\./).waitFor();
    expect(await dialog.getByRole("button", { name: "Sign the relief" }).count()).toBe(0);
    expect(await dialog.textContent()).toContain("91.213(a)");
    expect((await lookInEveryView(page)).wrong).toEqual([]);
    await page.keyboard.press("Escape");
  });

  it("goes through the rules step by step, and asks for the placard, before a relief is signed", async () => {
    const { page } = phone;
    await open("discrepancy/new");
    await page.getByRole("textbox", { name: "What is not right" }).fill("Taxi light is dark");
    await page.getByRole("button", { name: "Write it down" }).tap();
    await page.getByRole("button", { name: /^Say what it is/ }).tap();
    const dialog = page.getByRole("dialog");
    await dialog.getByRole("combobox").selectOption({ label: "Taxi light" });
    await dialog.getByRole("textbox").fill("The bulb is gone");
    await dialog.getByRole("button", { name: "Keep it" }).tap();
    await dialog.waitFor({ state: "detached" });
    await page.getByRole("button", { name: /^Fly with it/ }).tap();
    const sign = dialog.getByRole("button", { name: "Sign the relief" });
    const asked: string[] = [];
    while (!(await sign.isVisible())) {
      const question = dialog.getByRole("group").last();
      asked.push((await question.locator("legend").textContent()) ?? "");
      expect(asked.length).toBeLessThan(8);
      await question.getByRole("button", { name: /^(Yes|Removed|The pilot)$/ }).tap();
    }
    expect(asked.at(-1)).toContain("Is a placard fitted: “Taxi light inoperative”?");
    expect((await lookInEveryView(page)).wrong).toEqual([]);
    await sign.tap();
    await page.getByRole("button", { name: /^End the relief/ }).waitFor();
    expect(await page.locator(".life").textContent()).toContain("placard: Taxi light inoperative");
    // the browser's own dialog cannot be looked at: what stands there when it is asked to print is
    await page.evaluate(() => {
      window.print = () => {
        document.body.dataset["printed"] =
          document.querySelector(".is-printing .placard p")?.textContent ?? "";
      };
    });
    await page.getByRole("button", { name: "Print the placard" }).tap();
    expect(await page.evaluate(() => document.body.dataset["printed"])).toBe("Taxi light inoperative");
  });

  it("goes to a mechanic as a page in one file, and what was done comes back as a file", async () => {
    const { page, context } = phone;
    await open("discrepancy/new");
    await page.getByRole("textbox", { name: "What is not right" }).fill("Strap <frayed>");
    await page.getByRole("button", { name: "Write it down" }).tap();
    const saved = page.waitForEvent("download");
    await page.getByRole("button", { name: /^For the mechanic/ }).tap();
    const paper = await context.newPage();
    await paper.setContent(readFileSync(await (await saved).path(), "utf8"));
    await paper.getByRole("heading", { level: 1, name: "Strap <frayed>" }).waitFor();
    await paper.getByRole("button", { name: "Save the answer as a file" }).tap();
    expect(await paper.getByRole("alert").textContent()).toBe("Say what was done.");
    await paper.getByRole("textbox", { name: "What was done" }).fill("Strap replaced");
    await paper.getByRole("textbox", { name: /^Reference/ }).fill("WO 118");
    await paper.getByRole("textbox", { name: /^Released by/ }).fill("J. Vane");
    const back = paper.waitForEvent("download");
    await paper.getByRole("button", { name: "Save the answer as a file" }).tap();
    const answer = readFileSync(await (await back).path());
    await paper.close();
    await page.getByRole("button", { name: /^Take in an answer/ }).tap();
    const dialog = page.getByRole("dialog");
    const file = { name: "answer.json", mimeType: "application/json" };
    await dialog.locator("input").setInputFiles({ ...file, buffer: Buffer.from("{}") });
    expect(await dialog.getByRole("alert").textContent()).toContain("no answer to a discrepancy");
    await dialog.locator("input").setInputFiles({ ...file, buffer: answer });
    await dialog.getByText("Strap replaced; WO 118").waitFor();
    expect((await lookInEveryView(page)).wrong).toEqual([]);
    await dialog.getByRole("button", { name: "Take it in" }).tap();
    await page.getByRole("heading", { level: 3, name: "If it is there again" }).waitFor();
    expect(await page.locator(".life").textContent()).toContain(
      "Strap replaced; WO 118. Released by J. Vane",
    );
  });

  it("has the past of each point, a page at a time", async () => {
    const { page } = phone;
    await open("point/right-main-tyre");
    const lines = page.locator(".life li");
    expect(await lines.count()).toBe(20);
    expect(await lines.first().textContent()).toContain("Demo");
    expect((await lookInEveryView(page)).wrong).toEqual([]);
    await page.getByRole("button", { name: /^Earlier: / }).tap();
    expect(await lines.count()).toBe(40);
  });

  it("is a PDF of a period, and a period that cannot be is refused in words", async () => {
    const { page } = phone;
    await open("record/past");
    const form = page.locator(".record-pdf");
    const saved = page.waitForEvent("download");
    await form.getByRole("button").tap();
    expect(
      readFileSync(await (await saved).path())
        .subarray(0, 5)
        .toString(),
    ).toBe("%PDF-");
    await form.getByLabel("From").fill("2026-05-02");
    await form.getByLabel("To").fill("2026-05-01");
    await form.getByRole("button").tap();
    const trouble = form.getByRole("alert");
    await trouble.waitFor();
    expect(await trouble.textContent()).toMatch(/2026-05-0[12]/);
  });

  it("is saved as files with no net", async () => {
    const { page } = phone;
    await open("record/past");
    for (const name of ["Readings, CSV", "What runs out, CSV", "Its last days, calendar"]) {
      const [download] = await Promise.all([
        page.waitForEvent("download"),
        page.getByRole("button", { name }).tap(),
      ]);
      expect(download.suggestedFilename()).toMatch(/^zz-skr-(readings|runs-out)\.(csv|ics)$/);
    }
    expect(phone.complaints).toEqual([]);
  });

  it("that is long leaves old answers at the server, says so, and brings them when they are asked for", async () => {
    const { page } = phone;
    // a phone that hears of it while it is short takes all of it
    await phone.context.setOffline(true);
    await pushLongPast(scene.server.url, OLD);
    await phone.context.setOffline(false);
    await go(page, "#/");
    await apronHas(page, OLD);
    const older = page
      .locator("section")
      .filter({ has: page.getByRole("heading", { name: "Older answers" }) });
    const look = async (address: string, heading: string) => {
      await go(page, `#/${OLD}/${address}`);
      await page.getByRole("heading", { level: 1, name: heading, exact: true }).waitFor();
      await older.getByText("Everything that a verdict rests on is here.").waitFor();
    };
    await look("aircraft", "Aircraft");
    await look("record/past", "Record");
    await look("point/left-static-ports", "Record");
    const lines = page.locator(".life li");
    const here = await lines.count();
    expect(here).toBeGreaterThan(0);
    await phone.context.setOffline(true);
    await older.getByRole("button", { name: "Fetch everything" }).tap();
    await older.getByRole("alert").getByText("the server is out of reach").waitFor();
    expect((await lookInEveryView(page)).wrong).toEqual([]);
    await phone.context.setOffline(false);
    await older.getByRole("button", { name: "Fetch everything" }).tap();
    await older.waitFor({ state: "detached", timeout: PATIENCE_ms });
    const more = page.getByRole("button", { name: /^Earlier: / });
    await more.tap();
    await more.tap();
    expect(await lines.count()).toBeGreaterThan(here);
    expect(phone.complaints).toEqual([]);
  });
});
