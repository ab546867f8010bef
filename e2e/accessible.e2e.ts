import { readBook, smallBookText } from "@witnessmark/book";
import type { Page } from "playwright-core";
import { beforeAll, describe, expect, it } from "vitest";
import { AddAircraft } from "./harness/add-aircraft.ts";
import { REGISTRATION } from "./harness/book.ts";
import type { Phone } from "./harness/browser.ts";
import { Conditions, loadedFlightSoon } from "./harness/conditions.ts";
import { Decide } from "./harness/decide.ts";
import { lookInEveryView } from "./harness/every-view.ts";
import { answerCount, movingParts, vanishedControls, vanishedMarks } from "./harness/look.ts";
import { jpeg } from "./harness/picture-file.ts";
import { openScene, type Scene } from "./harness/scene.ts";
import { apronHas, go, introduce, recordHappening, toSheet, toWalk } from "./harness/screens.ts";
import { Walker } from "./harness/walker.ts";

/** An aircraft of nine steps, so that its walk can be walked to the end; the demo's is looked at where size matters. */
const SMALL = "ZZ-SML";

describe("every screen, for every eye and finger: axe finds nothing, and all is large and clear enough", () => {
  let scene: Scene;
  let phone: Phone;
  let page: Page;
  let walker: Walker;
  let decide: Decide;

  const oddNames = new Set<string>();
  const isClean = async () => {
    const { wrong, odd } = await lookInEveryView(page);
    for (const name of odd) oddNames.add(name);
    expect(wrong).toEqual([]);
  };
  const at = async (address: string, heading: string) => {
    await go(page, address);
    await page.getByRole("heading", { level: 1, name: heading, exact: true }).waitFor();
    await page.getByRole("main").waitFor();
  };

  beforeAll(async () => {
    scene = await openScene();
    phone = await scene.phone();
    page = phone.page;
    const small = await readBook(smallBookText, "small.yaml");
    if (!small.ok) throw new Error("expected the small book to read");
    walker = new Walker(page, small.book, await jpeg(page));
    decide = new Decide(page);
    return scene.end;
  });

  it("who are you", isClean);

  it("the Apron", async () => {
    await introduce(page, "MK");
    await isClean();
  });

  it("a book with faults, and one that is taken", async () => {
    const add = new AddAircraft(page);
    await add.open();
    const file = (text: string) => ({ name: "my.yaml", mimeType: "text/yaml", buffer: Buffer.from(text) });
    await add.choose(
      file(smallBookText.replace("revision: 3", "revision: third").replace("seats: 4", "chairs: 4")),
    );
    expect((await add.faults()).length).toBeGreaterThan(1);
    await isClean();
    await add.choose(file(smallBookText));
    await page.getByRole("heading", { level: 1, name: "Aircraft", exact: true }).waitFor();
    await isClean();
  });

  it("a table from paper: its beginning, one that is pasted, and one that is traced on a picture", async () => {
    await at("#/chart", "From paper");
    await isClean();
    await page.getByRole("button", { name: "Paste a table" }).tap();
    await page.getByLabel(/^Paste it here/).fill("PA ft \\ OAT °C\t0\t20\n0\t210\t240\n2000\t250\t190");
    await page.getByText("stands out").waitFor();
    await isClean();
    await page.getByRole("button", { name: /^Begin again/ }).tap();
    await page.getByLabel("Choose a picture").setInputFiles(await jpeg(page));
    await page.getByRole("heading", { name: "The axes" }).waitFor();
    await isClean();
  });

  it("a book that is begun from a few figures, with what is missing, and one that stands", async () => {
    await at("#/begin", "Begin a book");
    await page.getByRole("button", { name: "Glider tug" }).tap();
    await page.getByRole("button", { name: "Begin this book" }).tap();
    await page.getByText("As the manual calls it.").waitFor();
    await isClean();
    await page.getByLabel("Registration").fill("zz-tug");
    await page.getByLabel("Type", { exact: true }).fill("Wagtail 3");
    await page.getByLabel("Wing span").fill("36,5 ft");
    await page.getByLabel("Length").fill("7.1");
    await page.getByRole("img", { name: /^From above: 11\.1 m from tip to tip, 7\.1 m long/ }).waitFor();
    await page.getByRole("button", { name: "Begin this book" }).tap();
    await page.getByRole("heading", { level: 1, name: "Book", exact: true }).waitFor();
    await page.getByText("Without a landing table the runway stays open.").waitFor();
    await isClean();
    await at("#/ZZ-TUG/book/figures", "Book");
    await page.getByLabel("Wing span, m").waitFor();
    await isClean();
    await at("#/ZZ-TUG/book/outline", "Book");
    await page.getByLabel("Corner 2, aft, metres").first().waitFor();
    await isClean();
  });

  it("a check in the book", async () => {
    await at(`#/${SMALL}/aircraft/oil-level`, "Aircraft");
    await isClean();
  });

  it("which walk", async () => {
    await go(page, "#/");
    await apronHas(page, SMALL);
    await toWalk(page, SMALL);
    await isClean();
  });

  it("a reading, its figure typed wrongly, and read", async () => {
    await walker.startFirstOfDay();
    expect(await answerCount(page)).toBeGreaterThan(5);
    await walker.goToId("oxygen-pressure");
    await walker.readingButton.tap();
    await walker.figure.field.fill("plenty");
    await walker.figure.set.tap();
    await isClean();
    await page.keyboard.press("Escape");
    await walker.read({ value: "1600", temperature_degC: "21" });
    await walker.why.tap();
    await isClean();
  });

  it("not right, and could not check", async () => {
    await walker.no.tap();
    await walker.words.waitFor();
    await isClean();
    await walker.back.tap();
    await walker.could.tap();
    await walker.answerKeep.waitFor();
    await isClean();
    await walker.back.tap();
  });

  it("after an answer, with Undo beside it", async () => {
    await walker.doStep();
    await isClean();
  });

  it("what is wanted now and then, a note, and a break", async () => {
    await walker.more.tap();
    await page.getByRole("dialog").waitFor();
    await isClean();
    await page.getByRole("button", { name: /^Note/ }).tap();
    await page.getByRole("heading", { name: "Note" }).waitFor();
    await isClean();
    await page.keyboard.press("Escape");
    await walker.more.tap();
    await page.getByRole("button", { name: /^I am leaving/ }).tap();
    await page.getByRole("button", { name: "I am back" }).waitFor();
    await isClean();
    await page.getByRole("button", { name: "I am back" }).tap();
    await walker.card.waitFor();
  });

  it("ground gear, and what is left", async () => {
    await go(page, `#/${SMALL}/walk/ground-gear/chocks`);
    await walker.card.getByRole("button", { name: /pieces? off, / }).waitFor();
    await isClean();
    await at(`#/${SMALL}/gear`, "Walk");
    await isClean();
    await at(`#/${SMALL}/left`, "Walk");
    await isClean();
    await at(`#/${SMALL}/order`, "Walk");
    await page.getByRole("button", { name: "Walk it like this" }).waitFor();
    await isClean();
  });

  it("the end of the walk", async () => {
    await go(page, `#/${SMALL}/walk`);
    await walker.card.waitFor();
    await walker.notRight("stiff to turn", true);
    await walker.goToId("right-brake");
    await walker.couldNotCheck("Too dark");
    while (!(await walker.isAtEnd())) await walker.doStep();
    await isClean();
    await walker.finish();
  });

  it("Decide, with a working open, and why one goes", async () => {
    await page
      .getByRole("button", { name: /Working$/ })
      .first()
      .tap();
    await isClean();
    await decide.askGo();
    await decide.dialog.getByRole("button", { name: "Sign: go" }).tap();
    await decide.dialog.getByRole("alert").waitFor();
    await isClean();
    await page.keyboard.press("Escape");
  });

  it("signed, and its sheet", async () => {
    await decide.go("Looked at with a lamp", "An invented permit");
    await isClean();
    await decide.sheet();
    await isClean();
  });

  it("something happened, and the decision lapsed", async () => {
    await at(`#/${SMALL}/happened`, "Walk");
    await isClean();
    await recordHappening(page, "Flown");
    await isClean();
    await toSheet(page, "Decide");
    await decide.last
      .getByText(/lapsed/i)
      .first()
      .waitFor();
    await isClean();
  });

  it("the demo's turboprop: its walk, what is left of it, and all its verdicts", async () => {
    await at(`#/${REGISTRATION}/walk`, "Walk");
    await walker.startFirstOfDay();
    await isClean();
    await at(`#/${REGISTRATION}/left`, "Walk");
    await isClean();
    await at(`#/${REGISTRATION}/decide`, "Decide");
    await isClean();
  });

  it("settings, what is put away, and an address that is none", async () => {
    await at("#/settings", "Units and theme");
    await isClean();
    await at("#/archived", "Put away");
    await isClean();
    await at("#/no/such/place/here", "Not here");
    await isClean();
    expect(phone.complaints).toEqual([]);
  });

  it("the calculators: the list, a fault at its field, and lists", async () => {
    await at("#/calculators", "Calculators");
    await isClean();
    await go(page, "#/calculators/pressure-altitude");
    await page.getByLabel("Altimeter setting (QNH)", { exact: true }).fill("30.1");
    await isClean();
    await go(page, "#/calculators/centre-of-gravity");
    await isClean();
  });

  it("Conditions: nothing planned, what is asked for, and all of it with a working open", async () => {
    const conditions = new Conditions(page);
    await conditions.open();
    await isClean();
    await conditions.openWith(loadedFlightSoon());
    await conditions.choose("Runway", "24");
    await conditions.choose("Surface", "dry");
    const folds = ["What you read or were told", "Route", "Your own minima", "Units of this screen"];
    for (const heading of ["Airspace", ...folds]) await conditions.unfold(heading);
    await conditions.paste("METAR ZZTW 120750Z 24014G22KT 9999 BKN0Z2 05/03 Q1008");
    await conditions.told("Taken").waitFor();
    await isClean();
    await conditions.cell(/^Density altitude/).tap();
    await page.getByRole("dialog").waitFor();
    await isClean();
    await page.getByRole("dialog").getByRole("button", { name: "Close" }).tap();
  });

  it("every control, picture and landmark met on the way has a name that can be read aloud", () => {
    expect([...oddNames]).toEqual([]);
  });
});

describe("an eye that forces its own colours, or wants less to move", () => {
  let scene: Scene;
  let page: Page;

  beforeAll(async () => {
    scene = await openScene();
    ({ page } = await scene.phone());
    await introduce(page, "MK");
    return scene.end;
  });

  const screens = ["#/", `#/${REGISTRATION}/walk`, `#/${REGISTRATION}/decide`, "#/settings"];

  it.each(["light", "dark"] as const)(
    "finds every control and every mark with forced colours, %s",
    async (theme) => {
      await page.emulateMedia({ forcedColors: "active", colorScheme: theme });
      for (const address of screens) {
        await go(page, address);
        await page.getByRole("main").waitFor();
        expect([...(await vanishedControls(page)), ...(await vanishedMarks(page))]).toEqual([]);
      }
    },
  );

  it("sees nothing move when less motion is asked for", async () => {
    await page.emulateMedia({ forcedColors: "none", colorScheme: "light", reducedMotion: "reduce" });
    for (const address of screens) {
      await go(page, address);
      await page.getByRole("main").waitFor();
      expect(await movingParts(page)).toEqual([]);
    }
  });
});
