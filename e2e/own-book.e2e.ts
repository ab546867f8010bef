import { beforeAll, describe, expect, it } from "vitest";
import { BookDesk } from "./harness/book-desk.ts";
import { type Phone, TABLET } from "./harness/browser.ts";
import { PATIENCE_ms } from "./harness/patience.ts";
import { openScene, type Scene } from "./harness/scene.ts";
import { go, introduce } from "./harness/screens.ts";

const REGISTRATION = "ZZ-OWN";

describe("somebody's own book, on a tablet", () => {
  let scene: Scene;
  let phone: Phone;
  let desk: BookDesk;
  beforeAll(async () => {
    scene = await openScene();
    phone = await scene.phone({ device: TABLET });
    desk = new BookDesk(phone.page, REGISTRATION);
    await introduce(phone.page, "MK");
    return scene.end;
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
