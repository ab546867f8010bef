import { ruleQuestions } from "@witnessmark/assess";
import type { Page } from "playwright-core";
import { beforeAll, describe, expect, it } from "vitest";
import { REGISTRATION } from "./harness/book.ts";
import { type Phone, TABLET } from "./harness/browser.ts";
import { lookInEveryView, lookOnNarrowPhone } from "./harness/every-view.ts";
import { Rules } from "./harness/rules.ts";
import { openScene, type Scene } from "./harness/scene.ts";
import { go, introduce, showIn } from "./harness/screens.ts";

describe("what the rules say", () => {
  let scene: Scene;
  let phone: Phone;
  let page: Page;
  let rules: Rules;

  beforeAll(async () => {
    scene = await openScene({ past: "1" });
    phone = await scene.phone();
    page = phone.page;
    rules = new Rules(page);
    await introduce(page, "MK");
    return scene.end;
  });

  it("is found from the settings, with every question of the registry, and can be searched by its rule", async () => {
    await go(page, "#/settings");
    await page.getByRole("link", { name: "All questions" }).tap();
    await rules.heading.waitFor();
    const links = page.getByRole("main").getByRole("listitem").getByRole("link");
    expect(await links.count()).toBe(ruleQuestions.size);
    expect((await lookInEveryView(page)).wrong).toEqual([]);
    await page.getByRole("searchbox", { name: "Look for" }).fill("91.407");
    await page.getByRole("link", { name: /^May it fly after work on it/ }).tap();
    await page.getByRole("heading", { level: 2, name: "May it fly after work on it?" }).waitFor();
  });

  it("permits nothing while nothing is said, and answers step by step as it is", async () => {
    await rules.says.filter({ hasText: "Not known is no permission." }).waitFor();
    expect(await rules.steps.count()).toBe(3);
    await rules.say(/^Was it released/, "Yes");
    await rules.say(/^Was the entry/, "Yes");
    await rules.says.filter({ hasText: /^Not known yet: 91\.407\(b\)/ }).waitFor();
    await rules.say(/^Are passengers/, "Yes");
    await rules.say(/^May the work have changed/, "Yes");
    await rules.say(/^Do tests on the ground/, "No");
    await rules.say(/^Has a pilot rated/, "No");
    await rules.says.filter({ hasText: "It may not be flown so: 91.407(b)." }).waitFor();
    await rules.steps.nth(2).filter({ hasText: "does not hold" }).waitFor();
    expect((await lookInEveryView(page)).wrong).toEqual([]);
    await rules.say(/^Has a pilot rated/, "Yes");
    await rules.says.filter({ hasText: "It may be flown after the work." }).waitFor();
    // what was answered is there again after a look at the list
    await page.getByRole("link", { name: "All questions" }).tap();
    await page.getByRole("searchbox", { name: "Look for" }).waitFor();
    await page.goBack();
    await rules.says.filter({ hasText: "It may be flown after the work." }).waitFor();
    await page.getByRole("button", { name: "Answer again from the start" }).tap();
    await rules.says.filter({ hasText: "Not known is no permission." }).waitFor();
  });

  it("takes days, figures in their units and one of a list; a figure that cannot be is said at its place", async () => {
    await rules.open("locator-removed");
    await page.getByLabel("On which day was it removed?").fill("2026-01-10");
    await page.getByLabel("Day of the flight").fill("2026-04-11");
    await rules.says.filter({ hasText: "The last day is 2026-04-10." }).waitFor();
    await rules.says.filter({ hasText: /^It may not be flown without: 91\.207\(f\)\(10\)\(ii\)/ }).waitFor();
    await rules.open("transponder");
    await rules.say(/^Is one aboard/, "No");
    await rules.say(/^Within 30 NM/, "No");
    await page.getByRole("combobox", { name: /^Airspace on the way/ }).selectOption("E");
    await page.getByLabel("Highest above mean sea level", { exact: true }).fill("105000");
    await page.getByText(/is outside .* Check the figure and its unit/).waitFor();
    await rules.says.filter({ hasText: "Not known is no permission." }).waitFor();
    expect((await lookInEveryView(page)).wrong).toEqual([]);
    await page.getByLabel("Highest above mean sea level", { exact: true }).fill("10500");
    await page.getByLabel(/^The ground below there/).fill("1500");
    await rules.says.filter({ hasText: /^It may not be flown so without leave/ }).waitFor();
    await page.getByLabel(/^The ground below there/).fill("8500");
    await rules.says.filter({ hasText: "It may be flown so." }).waitFor();
  });

  it("is answered by the keyboard alone", async () => {
    await rules.open("pilot-papers");
    const yes = (asks: RegExp) => rules.of(asks).getByRole("button", { name: "Yes", exact: true });
    for (const asks of [/^The pilot certificate/, /^An identification/, /^The medical/]) {
      for (let tabs = 0; tabs < 12; tabs += 1) {
        await page.keyboard.press("Tab");
        if (await yes(asks).evaluate((button) => button === document.activeElement)) break;
      }
      await page.keyboard.press("Enter");
      expect(await yes(asks).getAttribute("aria-pressed")).toBe("true");
    }
    await rules.says.filter({ hasText: "The pilot's papers are there." }).waitFor();
  });

  it("stands beside the list on a tablet, and an address that is none says so", async () => {
    await showIn(page, { ...TABLET, theme: "light" });
    await rules.open("no-such-thing");
    await page.getByText("There is no question “no-such-thing”.").waitFor();
    // what was looked for is still there
    await page.getByRole("searchbox", { name: "Look for" }).fill("");
    await page.getByRole("link", { name: /^May the pilot do this work/ }).click();
    await page.getByRole("combobox", { name: "Which work is it?" }).selectOption("hose");
    await page.getByRole("combobox", { name: /^Which certificate/ }).selectOption("private");
    await rules.steps.filter({ hasText: "43 appendix A (c)(21)" }).waitFor();
    expect((await lookInEveryView(page)).wrong).toEqual([]);
  });

  it("is come to from a discrepancy, beside relief", async () => {
    await go(page, `#/${REGISTRATION}/record`);
    await page.getByRole("link", { name: /the same lamp dark again/ }).tap();
    await page.getByRole("link", { name: /^Who may do the work/ }).waitFor();
    expect((await lookInEveryView(page)).wrong).toEqual([]);
    await page.getByRole("link", { name: /^Is a special permit to be had/ }).tap();
    await page
      .getByRole("heading", { level: 2, name: "May a special flight permit be asked for?" })
      .waitFor();
    await page.goBack();
    await page.getByRole("link", { name: /^May it fly after the work/ }).tap();
    await page.getByRole("heading", { level: 2, name: "May it fly after work on it?" }).waitFor();
  });

  it("is named where no relief is given", async () => {
    await page.goBack();
    await page.getByRole("button", { name: /^Fly with it/ }).tap();
    const dialog = page.getByRole("dialog");
    await dialog.getByText(/No relief for this flight\./).waitFor();
    expect((await lookInEveryView(page)).wrong).toEqual([]);
    await dialog.getByRole("link", { name: "May a special flight permit be asked for?" }).tap();
    await page
      .getByRole("heading", { level: 2, name: "May a special flight permit be asked for?" })
      .waitFor();
    expect(phone.complaints).toEqual([]);
  });

  it.each([...ruleQuestions.keys()])("has its page of %s, clear on the narrowest phone", async (id) => {
    await rules.open(id);
    await rules.says.waitFor();
    const { wrong, odd } = await lookOnNarrowPhone(page);
    expect(wrong).toEqual([]);
    expect(odd).toEqual([]);
  });
});
