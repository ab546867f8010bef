import { isDeepStrictEqual } from "node:util";
import { beforeAll, describe, expect, it } from "vitest";
import { REGISTRATION } from "./harness/book.ts";
import type { Phone } from "./harness/browser.ts";
import { lookInEveryView } from "./harness/every-view.ts";
import { CARELESS, islandFlight, Load } from "./harness/load.ts";
import { until } from "./harness/patience.ts";
import { serverEvents } from "./harness/records.ts";
import { openScene, type Scene } from "./harness/scene.ts";
import { introduce, toSheet } from "./harness/screens.ts";

/** All of it inside; where the weights leave little room, it says so. */
const INSIDE = /^(The whole flight inside the envelope|Inside, but too close to be sure)$/;

describe("the load of a flight", () => {
  let scene: Scene;
  let phone: Phone;
  let load: Load;

  beforeAll(async () => {
    scene = await openScene();
    phone = await scene.phone();
    await introduce(phone.page, "MK");
    load = new Load(phone.page);
    await load.openWith(islandFlight(CARELESS));
    return scene.end;
  });

  it("that is inside at take-off and behind the aft limit on the way is told, with how far", async () => {
    await load.answers(/^Behind the aft limit by \d.mm/);
    await load
      .moment("Landing")
      .filter({ hasText: /behind/ })
      .waitFor();
    expect(await load.moment("Take-off").textContent()).not.toContain("behind");
  });

  it("is put right by the fewest moves, and Undo takes them back", async () => {
    await load.fits.getByRole("heading", { name: "Put it right" }).waitFor();
    expect(
      await load.fits
        .getByRole("listitem")
        .filter({ hasText: / from / })
        .count(),
    ).toBe(1);
    await load.fits.getByRole("button", { name: "Plan this move" }).tap();
    await load.answers(INSIDE);
    await load.fits.getByRole("heading", { name: "What still fits" }).waitFor();
    await load.undo.first().tap();
    await load.answers(/^Behind the aft limit/);
  });

  it("is put right in another way, and the first comes again; each is taken back by Undo", async () => {
    const { fits } = load;
    await fits.getByRole("button", { name: "Another way" }).tap();
    await fits.getByRole("heading", { name: "Put it right, way 2" }).waitFor();
    await fits.getByRole("button", { name: /^Plan th/ }).tap();
    await load.answers(INSIDE);
    await load.undo.first().tap();
    await load.answers(/^Behind the aft limit/);
    await fits.getByRole("heading", { name: "Put it right", exact: true }).waitFor();
  });

  it("is put right with nothing moved, by what is left behind; Undo brings it back", async () => {
    const { fits } = load;
    await fits.getByText(/^Leave behind Bags, in tail locker: 45.kg$/).waitFor();
    await fits.getByRole("button", { name: "Leave it behind" }).tap();
    await load.answers(INSIDE);
    await load.undo.first().tap();
    await load.answers(/^Behind the aft limit/);
  });

  it("has headline, table and chart say the same of the worst point", async () => {
    const headline = (await load.answer.textContent()) ?? "";
    const [, size] = /by (\d+).mm/.exec(headline) ?? [];
    await load
      .moment("Worst")
      .filter({ hasText: new RegExp(`${size}.mm behind`) })
      .waitFor();
    await phone.page
      .locator(".envelope-margin")
      .filter({ hasText: new RegExp(`^${size}.mm over$`) })
      .waitFor();
  });

  it("follows a figure that is typed, and says at its place what cannot be", async () => {
    await load.take(/^Tail locker/);
    await load.type("20");
    await load.answers(INSIDE);
    await load.type("60");
    await phone.page
      .getByRole("listitem")
      .filter({ hasText: /^Tail locker 15.kg over$/ })
      .waitFor();
    await load.fits.getByText(/^Leave behind Bags/).waitFor();
    await load.type("20");
    await load.answers(INSIDE);
  });

  it.each(["Temperature of the fuel", "Fuel totaliser"])(
    "takes the %s away again: not known",
    async (name) => {
      const { page } = phone;
      const row = page.getByRole("button", { name: new RegExp(`^${name}`) });
      const says = async (figure: string): Promise<void> => {
        await row.tap();
        const dialog = page.getByRole("dialog", { name });
        await dialog.getByRole("textbox").fill(figure);
        await dialog.getByRole("button", { name: "Set" }).tap();
        await dialog.waitFor({ state: "hidden" });
      };
      await says("8");
      await row.filter({ hasText: /8.(°C|L)$/ }).waitFor();
      await says("");
      await row.filter({ hasText: /not known$/ }).waitFor();
    },
  );

  it.each([/^Both tanks/, /^Aft bay/, /^Seat 1/])(
    "follows a finger on %s, and reads the same made anew",
    async (place) => {
      const stops = [
        [0.6, 0.9],
        [0.9, 0.12],
        [0.12, 0.5],
      ] as const;
      await load.take(place);
      const anew: (readonly string[])[] = [];
      for (const [from_1, to_1] of stops) {
        await load.drag(from_1, to_1);
        await phone.page.mouse.up();
        await toSheet(phone.page, "Decide");
        await load.open();
        await load.take(place);
        anew.push(await load.figures());
      }
      expect(new Set(anew.map((figures) => figures.join())).size).toBe(stops.length);
      // one finger comes by the same places again and stays down: what is drawn before each is that of another
      for (const [index, [from_1, to_1]] of stops.entries()) {
        if (index === 0) await load.drag(from_1, to_1);
        else await load.slide(from_1, to_1);
        await until(
          `all that follows the finger to read at ${to_1} as it did made anew, ${JSON.stringify(anew[index])}`,
          () => load.figures(),
          (followed) => isDeepStrictEqual(followed, anew[index]),
        );
      }
      await phone.page.mouse.up();
    },
  );

  it("is clear to every eye and finger, in every view", async () => {
    const { wrong, odd } = await lookInEveryView(phone.page);
    expect({ wrong, odd }).toEqual({ wrong: [], odd: [] });
  });

  it("is kept in the ledger, and Decide says where it tips over", async () => {
    await until(
      "the planned flight on the server",
      async () =>
        (await serverEvents(scene.server.url, REGISTRATION)).filter(({ type }) => type === "flight.planned")
          .length,
      (count) => count > 0,
    );
    await toSheet(phone.page, "Decide");
    await phone.page
      .getByRole("listitem")
      .filter({ hasText: /fuel in the tanks/ })
      .first()
      .waitFor();
    expect(phone.complaints).toEqual([]);
  });
});
