import { beforeAll, describe, expect, it } from "vitest";
import { axeFindings } from "./harness/axe.ts";
import { REGISTRATION } from "./harness/book.ts";
import type { Phone } from "./harness/browser.ts";
import { lookInEveryView, lookOnNarrowPhone } from "./harness/every-view.ts";
import { pageMargins, pagesOf } from "./harness/paper.ts";
import { openScene, type Scene } from "./harness/scene.ts";
import { go, introduce } from "./harness/screens.ts";

const two = (n: number) => String(n).padStart(2, "0");
/** So many minutes ago, as a field for a local day and time holds it. */
const ago = (minutes: number): string => {
  const at = new Date(Date.now() - minutes * 60_000);
  return `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}T${two(at.getHours())}:${two(at.getMinutes())}`;
};

/** The walk without the phone, and learning it. */
describe("a walk on paper, and learning the aircraft", () => {
  let scene: Scene;
  let phone: Phone;

  beforeAll(async () => {
    scene = await openScene();
    phone = await scene.phone();
    await introduce(phone.page, "MK");
    return scene.end;
  });

  it("prints every step with its box, its limits at the temperature given, on few pages", async () => {
    const { page } = phone;
    await go(page, `#/${REGISTRATION}/paper`);
    const paper = page.getByRole("article", { name: "The walk on paper" });
    await paper.waitFor();
    const [, steps = "0"] = /; (\d+) steps at/.exec((await paper.textContent()) ?? "") ?? [];
    expect(await paper.locator("tbody tr").count()).toBe(Number(steps));
    expect(Number(steps)).toBeGreaterThan(100);
    await page.getByLabel(/^Temperature of what stands outside/).fill("4");
    await paper.getByText("Limits are those at 4").waitFor();
    expect(await paper.getByText(/ at 20\s°C$/).count()).toBe(0);
    expect((await lookOnNarrowPhone(page)).wrong).toEqual([]);
    // a loose page says whose it is: what the margins of every page are written from
    expect(await pageMargins(page)).toEqual([
      expect.stringMatching(new RegExp(`^"${REGISTRATION} .+, book revision \\d+"$`)),
      expect.stringMatching(/^"First walk of the day, printed \w+day \d+ \w+ \d{4}"$/),
    ]);
    for (const blank of ["Begun at", "Ended at", "Walked by", "Temperature outside", "Signature"])
      await paper.getByText(blank, { exact: true }).waitFor();
    await paper.getByText("Not going yet", { exact: true }).waitFor();
    await page.emulateMedia({ media: "print" });
    const pages = pagesOf(await page.pdf({ format: "A4", preferCSSPageSize: true }));
    await page.emulateMedia({ media: "screen" });
    expect(pages).toBeGreaterThan(1);
    expect(pages).toBeLessThanOrEqual(5);
    await go(page, `#/${REGISTRATION}/typed-in`);
    await page.getByLabel("Begun, local").waitFor();
    expect(await pageMargins(page)).toEqual(["", ""]);
  });

  it("is typed in on one screen; what is missing is shown at its place, and nothing is kept before", async () => {
    const { page } = phone;
    await go(page, `#/${REGISTRATION}/typed-in`);
    await page
      .getByRole("button", { name: /^The other \d+ at stance/ })
      .first()
      .tap();
    await page.getByRole("button", { name: /^Keep it: / }).tap();
    await page.getByText("Say when the walk was begun: its looks count from then.").waitFor();
    await page.getByLabel("Begun, local").fill(ago(50));
    await page.getByLabel("Ended, local").fill(ago(20));
    const row = page.getByRole("group", { name: /^Left main tyre Measure/ });
    await row.getByRole("textbox").fill("much");
    await row.getByRole("button", { name: "As it should be" }).tap();
    await page.getByRole("button", { name: /^Keep it: / }).tap();
    await row.getByRole("alert").waitFor();
    expect(await row.getByRole("alert").textContent()).toContain("is not a number");
    // many rows of few kinds: what axe says of one it says of all
    expect([...(await axeFindings(page)), ...(await lookOnNarrowPhone(page)).wrong]).toEqual([]);
    await page.reload();
    // half typed, and still there
    expect(await row.getByRole("textbox").inputValue()).toBe("much");
    await row.getByRole("textbox").fill("");
    await row.getByRole("button", { name: "Not right" }).tap();
    await row.getByLabel("In the words of the paper").fill("flat on the ground");
    await page.getByRole("button", { name: /^Keep it: / }).tap();
    await page.getByRole("heading", { level: 1, name: "Decide", exact: true }).waitFor();
    await page
      .getByText(/flat on the ground/)
      .first()
      .waitFor();
  });

  it("explains before it asks, and says what would have got past", async () => {
    const { page } = phone;
    await go(page, `#/${REGISTRATION}/learn`);
    await page.getByText("If missed").waitFor();
    await page.getByRole("button", { name: "Ask me" }).tap();
    const choice = page.getByRole("group", { name: "Things that may be wrong" }).getByRole("button").first();
    const good = page.getByRole("button", { name: "As it should be" });
    await choice.or(good).waitFor();
    if (await good.isVisible()) await good.tap();
    else {
      await choice.tap();
      await page.getByRole("button", { name: "These" }).tap();
    }
    await page
      .getByRole("status")
      .filter({ hasText: /So it is|got past|no fault/ })
      .waitFor();
    expect((await lookInEveryView(page)).wrong).toEqual([]);
    await page.getByRole("button", { name: "Next" }).tap();
    await page.getByRole("button", { name: "Ask me" }).waitFor();
    expect(phone.complaints).toEqual([]);
  });
});
