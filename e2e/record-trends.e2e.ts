import { beforeAll, describe, expect, it } from "vitest";
import { demoBook, REGISTRATION } from "./harness/book.ts";
import type { Phone } from "./harness/browser.ts";
import { lookInEveryView } from "./harness/every-view.ts";
import { leakingPast } from "./harness/leaking-past.ts";
import { pushPast } from "./harness/past-readings.ts";
import { jpeg } from "./harness/picture-file.ts";
import { openScene, type Scene } from "./harness/scene.ts";
import { go, introduce, toWalk } from "./harness/screens.ts";
import { Trends } from "./harness/trends.ts";
import { Walker } from "./harness/walker.ts";

const RIGHT_TYRE = "main-tyre-pressure.right-main-tyre";

describe("what has moved since it was last looked at", () => {
  let scene: Scene;
  let phone: Phone;
  let trends: Trends;

  beforeAll(async () => {
    scene = await openScene();
    await pushPast(scene.server.url, REGISTRATION, leakingPast());
    phone = await scene.phone();
    await introduce(phone.page, "MK");
    trends = new Trends(phone.page);
    return scene.end;
  });

  it("is told first: the tyre that leaks, with when its limit is met", async () => {
    await trends.open();
    expect(await trends.all.first().getAttribute("aria-label")).toMatch(/^Caution, Right main tyre/);
    expect(await trends.block("Right main tyre").textContent()).toMatch(
      /A slow leak: 0\.0\d bar a week\. Below 5\.20 in /,
    );
    expect(await trends.block("Engine oil used").textContent()).toContain("Oil use rises");
    expect(await trends.block("Left main tyre").textContent()).toContain(
      "Steady within what the gauge can tell",
    );
  });

  it("reads well on every screen", async () => {
    expect(await lookInEveryView(phone.page)).toEqual({ wrong: [], odd: [] });
  });

  it("has a chart of its own, and every reading behind it in a table", async () => {
    await trends.openOne(RIGHT_TYRE);
    await trends.chart.waitFor();
    expect(await trends.chart.getAttribute("aria-label")).toContain("A slow leak");
    const first = (await trends.rows.first().getByRole("cell").allTextContents()).join(" | ");
    expect(first).toMatch(/bar at 4.°C \| 5\.2\d \| AB$/);
    await trends.rows.filter({ hasText: "Refilled: it begins anew" }).waitFor();
    await trends.earlier.tap();
    await phone.page.getByText("Page 2 of 2").waitFor();
    expect(await lookInEveryView(phone.page)).toEqual({ wrong: [], odd: [] });
  });

  it("says in words that a count is not followed", async () => {
    await go(phone.page, `#/${REGISTRATION}/trend/vests`);
    await phone.page.getByText("or it is a count").waitFor();
  });

  it("is told while the reading is typed, when it is less than expected", async () => {
    await go(phone.page, "#/");
    await toWalk(phone.page);
    const walker = new Walker(phone.page, await demoBook(), await jpeg(phone.page));
    await walker.startFirstOfDay();
    await go(phone.page, `#/${REGISTRATION}/walk/check/${RIGHT_TYRE}`);
    await walker.read({ value: "5.00", temperature_degC: "15" });
    await walker.card.getByText(/^0\.\d\d.bar less than expected since /).waitFor();
  });

  it("leaves no complaint", () => {
    expect(phone.complaints).toEqual([]);
  });
});
