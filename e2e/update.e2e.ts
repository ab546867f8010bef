import type { Page } from "playwright-core";
import { beforeAll, describe, expect, it } from "vitest";
import { REGISTRATION } from "./harness/book.ts";
import { BUILD_MARK, type BuiltApp, buildApp } from "./harness/build-app.ts";
import { introduced, type OnAWalk } from "./harness/on-a-walk.ts";
import { until } from "./harness/patience.ts";
import { openScene, type Scene } from "./harness/scene.ts";
import { apronHas, finishHere, go, toApron, toWalk, updateOffer } from "./harness/screens.ts";

const versionOf = (page: Page) =>
  page.evaluate(
    (name) => document.querySelector(`meta[name="${name}"]`)?.getAttribute("content") ?? "first",
    BUILD_MARK,
  );

/** Whether a newer version has been fetched and waits to be taken up. */
const isWaiting = (page: Page) =>
  page.evaluate(async () => ((await navigator.serviceWorker.getRegistration())?.waiting ?? null) !== null);

/** What a phone tells the page when it is taken up again. */
const takenUpAgain = (page: Page) => page.evaluate(() => window.dispatchEvent(new Event("pageshow")));

const isPart = (address: string) => /\/assets\/[\w-]+\.js$/.test(address);

describe("a newer version of the app", () => {
  let scene: Scene;
  let on: OnAWalk;
  let second: BuiltApp;

  beforeAll(async () => {
    second = await buildApp("second");
    scene = await openScene();
    on = await introduced(scene, "MK");
    return async () => {
      await scene.end();
      second.remove();
    };
  });

  it("is not needed: the version that is here starts with no net, the parts that come when wanted too", async () => {
    const { page, context } = on.phone;
    await scene.server.stop();
    await context.setOffline(true);
    await page.reload();
    await apronHas(page, REGISTRATION);
    for (const [place, heading] of [
      ["#/settings", "Units and theme"],
      ["#/add", "Add an aircraft"],
      [`#/${REGISTRATION}/decide`, "Decide"],
    ] as const) {
      await go(page, place);
      await page.getByRole("heading", { level: 1, name: heading, exact: true }).waitFor();
    }
    await toApron(page);
  });

  it("is fetched beside the old one, and not offered while a walk is under way", async () => {
    const { page, context } = on.phone;
    await scene.serverAgain({ appDirectory: second.directory });
    await context.setOffline(false);
    await toWalk(page);
    await on.walker.startFirstOfDay();
    await on.walker.doStep();
    await page.reload();
    await until(
      "the newer version to wait",
      () => isWaiting(page),
      (waits) => waits,
    );
    expect(await versionOf(page)).toBe("first");
    await toApron(page);
    await apronHas(page, REGISTRATION);
    await takenUpAgain(page);
    expect(await updateOffer(page).isVisible()).toBe(false);
  });

  it("leaves the old one working, with parts that the server no longer has", async () => {
    const { page } = on.phone;
    const parts = await until(
      "the parts of the old version",
      () => page.evaluate(() => performance.getEntriesByType("resource").map(({ name }) => name)),
      (names) => names.filter(isPart).length > 5,
    );
    const asked = parts.filter(isPart);
    const answers = await page.evaluate(async (names) => {
      const statuses = new Set<number>();
      for (const name of names) {
        const answer = await fetch(name);
        await answer.arrayBuffer(); // a body that nobody reads keeps the worker that gave it from being relieved
        statuses.add(answer.status);
      }
      return [...statuses];
    }, asked);
    expect(answers).toEqual([200]);
    const gone = await Promise.all(asked.map(async (name) => (await fetch(name)).status));
    expect(gone).toContain(404);
    await go(page, `#/${REGISTRATION}/happened`);
    await page.getByRole("heading", { name: `What happened to ${REGISTRATION}?` }).waitFor();
    expect(await versionOf(page)).toBe("first");
  });

  it("is offered once the walk is over, and taken up by a tap, with everything that was kept", async () => {
    const { page } = on.phone;
    await finishHere(page);
    await toApron(page);
    await apronHas(page, REGISTRATION);
    await updateOffer(page).waitFor();
    const loaded = page.waitForEvent("load");
    await updateOffer(page).tap();
    await loaded;
    await apronHas(page, REGISTRATION);
    expect(await versionOf(page)).toBe("second");
    await toWalk(page);
    expect(on.phone.complaints).toEqual([]);
  });
});
