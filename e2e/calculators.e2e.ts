import { quantities } from "@witnessmark/engine";
import type { Locator, Page } from "playwright-core";
import { beforeAll, describe, expect, it } from "vitest";
import { openScene } from "./harness/scene.ts";
import { go, introduce } from "./harness/screens.ts";

describe("the calculators", () => {
  let page: Page;
  let complaints: readonly string[];
  let result: Locator;

  beforeAll(async () => {
    const scene = await openScene();
    const phone = await scene.phone();
    page = phone.page;
    complaints = phone.complaints;
    result = page.getByRole("region", { name: "Result" }).getByRole("status");
    await introduce(page, "MK");
    return scene.end;
  });

  it("are found from the settings, and have every quantity of the registry", async () => {
    await go(page, "#/settings");
    await page.getByRole("link", { name: "All calculators" }).tap();
    await page.getByRole("heading", { level: 1, name: "Calculators" }).waitFor();
    const links = page.getByRole("main").getByRole("listitem").getByRole("link");
    expect(await links.count()).toBe(quantities.size);
  });

  it("a quantity is looked for, opened, and worked out in the units chosen", async () => {
    await page.getByRole("searchbox", { name: "Look for" }).fill("pressure altitude setting");
    await page.getByRole("link", { name: /^Pressure altitude of a place/ }).tap();
    await page.getByLabel("Elevation above mean sea level", { exact: true }).fill("5883");
    await result.filter({ hasText: "Still to give: altimeter setting (QNH)" }).waitFor();
    await page.getByLabel("Altimeter setting (QNH)", { exact: true }).fill("30.10");
    // in hectopascals, as it begins: refused at its field
    await page.getByText(/^30\.1.hPa is outside 850 to 1,100.hPa/).waitFor();
    await page.getByLabel("Unit of altimeter setting (QNH)", { exact: true }).selectOption("inHg");
    await result.filter({ hasText: /^5,718\.09.ft$/ }).waitFor();
    await page.getByLabel(/^Unit of the result/).selectOption("m");
    await result.filter({ hasText: /^1,742\.87.m$/ }).waitFor();
    await page.getByRole("row", { name: /elevation above mean sea level.*5,883.ft.*1,793\.14.m/ }).waitFor();
  });

  it("its address leads back to it, and what was typed is still there after a look at the list", async () => {
    expect(new URL(page.url()).hash).toBe("#/calculators/pressure-altitude");
    await page.getByRole("link", { name: "All calculators" }).tap();
    await page.getByRole("searchbox", { name: "Look for" }).waitFor();
    await page.goBack();
    await result.filter({ hasText: /^1,742\.87.m$/ }).waitFor();
  });

  it("a list has a row for each thing", async () => {
    await go(page, "#/calculators/centre-of-gravity");
    await page.getByLabel(/^Unit of mass of each/).selectOption("lb");
    await page.getByLabel(/^Unit of arm of each/).selectOption("in");
    await page.getByLabel(/^Unit of the result/).selectOption("in");
    const row = async (number: number, mass: string, arm: string) => {
      await page.getByLabel(new RegExp(`^Mass of each.*row ${number}$`)).fill(mass);
      await page.getByLabel(new RegExp(`^Arm of each.*row ${number}$`)).fill(arm);
    };
    await row(1, "100", "10");
    await row(3, "300", "20");
    await result.filter({ hasText: /^17\.5.in$/ }).waitFor();
    await page.getByRole("button", { name: "Take row 1 away" }).tap();
    await result.filter({ hasText: /^20.in$/ }).waitFor();
  });

  it("a rule of thumb says that it is no answer, and an address that is none says so", async () => {
    await go(page, "#/calculators/density-altitude-rule");
    await page.getByText("Cross-check only.").waitFor();
    await go(page, "#/calculators/no-such-thing");
    await page.getByText("There is no quantity “no-such-thing”.").waitFor();
    expect(complaints).toEqual([]);
  });
});
