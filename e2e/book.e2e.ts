import { beforeAll, describe, expect, it } from "vitest";
import { BookDesk } from "./harness/book-desk.ts";
import { type Phone, TABLET } from "./harness/browser.ts";
import { PATIENCE_ms } from "./harness/patience.ts";
import { openScene, type Scene } from "./harness/scene.ts";
import { go, introduce } from "./harness/screens.ts";

const REGISTRATION = "ZZ-WREN";

describe("a book for one's own aircraft, on a tablet", () => {
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

  it("is a draft once it is begun, and outlives the browser with every step", async () => {
    await desk.begin("Piston single, tail wheel", {
      Registration: REGISTRATION,
      Type: "Wren 2",
      "Wing span": "10.7",
      Length: "6.8",
    });
    await phone.page.getByText("Revision 1, draft").waitFor();
    await desk.open("stances", "nose");
    await desk.type("Name", "In front of the nose");
    await desk.heading("In front of the nose");
    phone = await scene.killAndReopen(phone);
    desk = new BookDesk(phone.page, REGISTRATION);
    await desk.open("stances", "nose");
    await desk.heading("In front of the nose");
    await desk.button("Undo").tap();
    await desk.heading("Before the nose");
    await desk.button("Redo").tap();
    await desk.heading("In front of the nose");
  });

  it("says what is missing for which answers", async () => {
    await desk.open();
    await phone.page.getByText("Without a landing table the runway stays open.").waitFor();
  });

  it("is issued by a person, and walked", async () => {
    await desk.issue();
    await phone.page.getByText(/^Revision 1, .+, MK$/).waitFor();
    await go(phone.page, `#/${REGISTRATION}/start`);
    await phone.page.getByRole("button", { name: /^First of the day/ }).tap();
    await phone.page.getByRole("button", { name: "As it should be" }).waitFor({ timeout: PATIENCE_ms });
  });

  it("has a next revision, which says what changes; the walk that is open goes on in it", async () => {
    await desk.open("points", "spinner");
    await desk.button("Change this book").tap();
    await desk.type("Name", "Spinner and its screws");
    await desk.open("changes");
    await phone.page.getByText("Spinner: name Spinner and its screws, was Spinner").waitFor();
    await desk.issue();
    await phone.page.getByText(/^Revision 2, .+, MK$/).waitFor();
    await go(phone.page, `#/${REGISTRATION}/walk`);
    await phone.page.getByRole("button", { name: "As it should be" }).waitFor({ timeout: PATIENCE_ms });
    expect(phone.complaints).toEqual([]);
  });
});
