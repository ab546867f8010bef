import { beforeAll, describe, expect, it } from "vitest";
import type { BookDesk } from "./harness/book-desk.ts";
import type { Phone } from "./harness/browser.ts";
import { Drawing, middleOf } from "./harness/drawing.ts";
import { openDesk } from "./harness/open-desk.ts";
import { PATIENCE_ms, until } from "./harness/patience.ts";
import { go } from "./harness/screens.ts";

const REGISTRATION = "ZZ-OWN";

describe("somebody's own book, on a tablet", () => {
  let phone: Phone;
  let desk: BookDesk;
  beforeAll(async () => {
    const opened = await openDesk(REGISTRATION);
    ({ phone, desk } = opened);
    return opened.scene.end;
  });

  const measured = (text: string) => phone.page.locator(".dimension-text", { hasText: text }).first();

  it("is drawn anew from other first figures; a point that was moved stays, and is named", async () => {
    await go(phone.page, "#/begin");
    await desk.button("Feet").tap();
    await desk.begin("Piston single, tail wheel", {
      Registration: REGISTRATION,
      Type: "Wren 2",
      "Wing span": "35",
      Length: "22.3",
    });
    await desk.open("points", "pitot");
    await desk.type("Place, aft, metres", "2.1");
    await desk.open("figures");
    await measured("10.67 m").waitFor({ timeout: PATIENCE_ms });
    await desk.type("Wing span, m", "11.2");
    await measured("11.20 m").waitFor({ timeout: PATIENCE_ms });
    await phone.page.getByText("Drawn anew; 1 place changed by hand stays.").waitFor();
    await desk.button("Put back Left pitot tube").waitFor();
  });

  it("says at its field what is wrong with a figure, and keeps what was", async () => {
    await desk.field("Wing span, m").fill("0");
    await desk.field("Wing span, m").blur();
    await phone.page.getByRole("alert").filter({ hasText: "5 to 40 m" }).waitFor();
    await measured("11.20 m").waitFor();
    await desk.open("outline");
    await desk.type("Corner 2, aft, metres", "6.9");
    await phone.page
      .getByText(/an outline that does not cross itself/)
      .first()
      .waitFor({ timeout: PATIENCE_ms });
    await desk.button("Undo").tap();
    await phone.page.getByText(/an outline that does not cross itself/).waitFor({ state: "detached" });
    await desk.open("points", "pitot");
    await desk.type("Place, up, metres", "9");
    await phone.page
      .getByText(/a height above the ground, at most/)
      .first()
      .waitFor({ timeout: PATIENCE_ms });
    await desk.button("Undo").tap();
  });

  it("has a point where the drawing is tapped, named as it is typed", async () => {
    await desk.open("points");
    await desk.button("Place a point").tap();
    const drawing = phone.page.getByRole("group", { name: /from above$/ });
    const box = await drawing.boundingBox();
    if (box === null) throw new Error("expected the drawing to be seen");
    await phone.page.touchscreen.tap(box.x + box.width * 0.49, box.y + box.height * 0.3);
    await desk.heading(/ew point$/);
    await desk.type("Name", "Right aerial mast, and its foot");
    await desk.heading("Right aerial mast, and its foot");
    expect(await desk.field("Short name").inputValue()).toBe("right-aerial-mast-and-its-foot");
    expect(await desk.field("On the drawing").getAttribute("placeholder")).toBe("R aerial mast");
  });

  it("is found again on the Apron, with the way on", async () => {
    await go(phone.page, "#/");
    await phone.page.getByRole("link", { name: `Go on with the book of ${REGISTRATION}` }).tap();
    await phone.page.getByText("Revision 1, draft").waitFor();
    expect(phone.complaints).toEqual([]);
  });
});

describe("a book counted from the datum of its handbook, on a tablet", () => {
  const HERON = "ZZ-HER";
  const DATUM = "Datum of the handbook’s arms: how far behind the tip of the nose";
  let phone: Phone;
  let desk: BookDesk;
  beforeAll(async () => {
    const opened = await openDesk(HERON);
    ({ phone, desk } = opened);
    return opened.scene.end;
  });

  const aft = () => desk.field("Place, aft, metres");
  /** How far aft a point stands. */
  const aftOf = async (point: string): Promise<number> => {
    await desk.open("points", point);
    return Number(await aft().inputValue());
  };

  it("keeps the last drawing while a figure is none, and draws the datum where it is said", async () => {
    const { page } = phone;
    await go(page, "#/begin");
    await desk.button("Piston single, tail wheel").tap();
    await desk.field("Wing span").fill("10.74");
    await desk.field(DATUM).fill("1.15");
    await page.getByText("datum at 1.15 m aft of the tip of the nose").waitFor();
    await desk.field(DATUM).fill("11.5");
    await page.getByRole("alert").filter({ hasText: "−10 to 10 m" }).waitFor();
    await page.getByText(/^Drawn last: 10\.7 m from tip to tip/).waitFor();
    await page.getByRole("img", { name: /^From above/ }).waitFor();
    await desk.begin("Piston single, tail wheel", {
      Registration: HERON,
      Type: "Heron Light 150",
      Seats: "3",
      "Wing span": "10.74",
      Length: "6.9",
      [DATUM]: "1.15",
    });
    // the tip of the spinner is the foremost part
    expect(await aftOf("spinner")).toBeLessThan(-0.8);
    await page.locator(".datum-text").first().waitFor();
  });

  it("moves along with another datum in one step, what a hand has moved too", async () => {
    await desk.open("points", "pitot");
    await desk.type("Place, aft, metres", "1.25");
    await desk.open("figures");
    await desk.type(`${DATUM}, m`, "-0.5");
    await phone.page.getByText("All that is drawn is counted from there").waitFor();
    // 1.15 m aft of the tip until now, 0.5 m ahead of it from now on
    expect(await aftOf("pitot")).toBeCloseTo(1.25 + 1.65, 6);
    await desk.button("Undo").tap();
    await until(
      "the point as it was",
      () => aft().inputValue(),
      (value) => value === "1.25",
    );
    await desk.button("Undo").tap();
  });

  it("has wheels with names, which take their tyres and their pair along", async () => {
    const { page } = phone;
    await desk.open("gear-and-propellers");
    const right = page.getByRole("group", { name: "Right main wheel", exact: true });
    const axle = right.getByLabel("Axle, aft of the datum, m");
    await axle.fill("-0.05");
    await axle.blur();
    await page.getByText("Its mirror image goes with it. 8 points and stances follow.").waitFor();
    await desk.kept();
    expect(await aftOf("left-main-tyre")).toBe(-0.05);
    await page.locator(".dimension-text", { hasText: "0.05 m ahead of the datum" }).first().waitFor();
    await desk.button("Undo").tap();
    await until(
      "the tyre as it was",
      () => aft().inputValue(),
      (value) => Number(value) > 0,
    );
  });

  it("has an outline that is dragged by its handles with a finger; what stands on it follows", async () => {
    const { page } = phone;
    const before = await aftOf("right-flap");
    await desk.open("outline");
    const drawing = new Drawing(page, /, from above$/);
    const handle = drawing.surface.getByRole("button", { name: /^Wing root, trailing edge/ });
    const from = await middleOf(handle);
    await page.touchscreen.tap(from.x, from.y);
    await drawing.surface.getByRole("button", { name: "Wing root, trailing edge, in hand" }).waitFor({
      state: "attached",
    });
    const chord = page
      .getByRole("group", { name: "Wing" })
      .getByRole("group", { name: "Root" })
      .getByLabel("Chord, m");
    const was = Number(await chord.inputValue());
    await drawing.fingers([[from, { x: from.x + 30, y: from.y }]], async () => undefined);
    await until(
      "a longer chord",
      () => chord.inputValue(),
      (value) => Number(value) > was + 0.2,
    );
    await page.getByText(/points and stances follow\.$/).waitFor();
    await desk.kept();
    expect(await aftOf("right-flap")).toBeGreaterThan(before + 0.05);
    await desk.button("Undo").tap();
    await until(
      "the flap as it was",
      () => aft().inputValue(),
      (value) => Number(value) === before,
    );
  });

  it("has a point that is selected by a tap though others are near, dragged with its mirror image, and copied", async () => {
    const { page } = phone;
    await desk.open("points");
    const drawing = new Drawing(page, /points, from above$/);
    const aileron = drawing.surface.getByRole("button", { name: /^Left aileron and its hinges/ });
    const from = await middleOf(aileron);
    await page.touchscreen.tap(from.x, from.y);
    await desk.heading("Left aileron and its hinges");
    const at = await middleOf(aileron);
    const was = Number(await aft().inputValue());
    await drawing.fingers([[at, { x: at.x - 24, y: at.y }]], async () => undefined);
    await until(
      "the aileron further ahead",
      () => aft().inputValue(),
      (value) => Number(value) < was - 0.2,
    );
    const now = Number(await aft().inputValue());
    expect(await aftOf("right-aileron")).toBe(now);
    await desk.button("Copy").tap();
    await until(
      "a copy a hand aft of it",
      () => aft().inputValue(),
      (value) => Math.abs(Number(value) - now - 0.1) < 0.006,
    );
    expect(await desk.field("Short name").inputValue()).not.toBe("right-aileron");
    await desk.button("Undo").tap();
  });

  it("has a point where its side is tapped, also beside another; a tap outside says so; it is mirrored", async () => {
    const { page } = phone;
    await desk.open("points");
    const side = new Drawing(page, /points, from the left$/);
    const box = await side.surface.boundingBox();
    if (box === null) throw new Error("expected the side view");
    const door = await middleOf(side.surface.getByRole("button", { name: "Left door" }));
    await desk.button("Place a point").tap();
    await page.touchscreen.tap(box.x + 8, box.y + 8);
    await page.getByText("That is outside the aircraft. Tap on it.").waitFor();
    await page.touchscreen.tap(door.x, door.y);
    await desk.heading(/ew point$/);
    await page.getByText("That is outside the aircraft. Tap on it.").waitFor({ state: "hidden" });
    await desk.type("Place, right, metres", "-0.6");
    await desk.button("Mirror to the other side").tap();
    await desk.kept();
    expect(phone.complaints).toEqual([]);
  });
});
