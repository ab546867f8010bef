import { readFileSync } from "node:fs";
import { join } from "node:path";
import { askedByChance } from "@witnessmark/assess";
import { fold, isKnownEvent } from "@witnessmark/ledger";
import { beforeAll, describe, expect, it } from "vitest";
import { AddAircraft } from "./harness/add-aircraft.ts";
import { demoBook, firstOfDay, REGISTRATION } from "./harness/book.ts";
import { lookInEveryView } from "./harness/every-view.ts";
import { type OnAWalk, onAWalk } from "./harness/on-a-walk.ts";
import { phoneLedger } from "./harness/records.ts";
import { openScene, type Scene } from "./harness/scene.ts";
import { go } from "./harness/screens.ts";
import { ROOT } from "./harness/server.ts";

const text = (name: string, contents: string | Buffer, mimeType = "text/yaml") => ({
  name,
  mimeType,
  buffer: Buffer.from(contents),
});

describe("what is typed or chosen wrongly", () => {
  let scene: Scene;
  let on: OnAWalk;
  let add: AddAircraft;

  beforeAll(async () => {
    scene = await openScene();
    on = await onAWalk(scene, "MK");
    add = new AddAircraft(on.phone.page);
    return scene.end;
  });

  const stepOf = (id: string) => {
    const step = firstOfDay(on.walker.book).find((each) => each.step.id === id);
    if (step === undefined) throw new Error(`expected the step ${id} in the book`);
    return step;
  };
  const typesOf = async () =>
    (await phoneLedger(on.phone.page, REGISTRATION)).events.filter(isKnownEvent).map(({ type }) => type);

  /** The first check of the walk: bags on a scale that reads to 150 kg. */
  it.each([
    { typed: "", says: /Type what the gauge shows, in kg/ },
    { typed: "plenty", says: /"plenty" is not a number; type what the gauge shows/ },
    { typed: "45 bar", says: /bar is a unit of pressure; this is a mass, type it,? in kg/ },
    { typed: "45 stones", says: /"stones" is no unit of a mass; type a number, in kg/ },
    { typed: "4,5,0", says: /more than one decimal mark/ },
    { typed: "4500", says: /The gauge shows 0 to \d+\skg; was that 45\skg\?/ },
    { typed: "-45", says: /The gauge shows 0 to \d+\skg; was that 45\skg\?/ },
  ])("a reading of “$typed” is refused at its place, in words, and nothing of it stays", async (given) => {
    const { walker, phone } = on;
    await walker.goToId("bags-weigh");
    await walker.readingButton.tap();
    const figure = walker.figure;
    await figure.field.fill(given.typed);
    await figure.set.tap();
    const said = await figure.said.textContent();
    const invalid = await figure.field.getAttribute("aria-invalid");
    await phone.page.keyboard.press("Escape");
    await figure.dialog.waitFor({ state: "hidden" });
    expect(said).toMatch(given.says);
    expect(invalid).toBe("true");
    expect(await walker.readingSaid()).toContain("not read");
    expect(await walker.verdict.textContent()).toContain("Not read yet");
  });

  it("a decimal comma is understood, and said back as it was understood", async () => {
    const { walker } = on;
    await walker.goToId("bags-weigh");
    await walker.readingButton.tap();
    await walker.figure.field.fill("45,5");
    await walker.figure.said.filter({ hasText: /Understood: 45\.5\skg/ }).waitFor();
    await walker.figure.set.tap();
    await walker.figure.dialog.waitFor({ state: "hidden" });
    expect(await walker.readingSaid()).toContain("45.5");
  });

  it("a check that asks for a reading is not answered without one", async () => {
    const { walker } = on;
    const step = stepOf("vests");
    await walker.goTo(step);
    await walker.yes.tap();
    await walker.verdict.filter({ hasText: /first, or say why you could not/ }).waitFor();
    expect(await walker.onCard()).toMatchObject({ title: step.title });
  });

  it("a photo that is none is refused before anything of the answer is kept", async () => {
    const { walker } = on;
    const step = stepOf("parachute-hatch");
    const before = await typesOf();
    await walker.goTo(step);
    const { left } = await walker.left();
    await walker.yes.tap();
    await walker.photoInput.setInputFiles(text("IMG_0002.jpg", "this is no picture", "image/jpeg"));
    await walker.yes.tap();
    await walker.trouble.filter({ hasText: /picture|photo/i }).waitFor();
    expect(await walker.onCard()).toMatchObject({ place: step.place });
    expect(await walker.left()).toMatchObject({ left });
    expect(await typesOf()).toEqual(before);
  });

  it("a look that its walk has drawn stays in hand without a photo or a reason, and goes on with one", async () => {
    const { walker, phone } = on;
    const { events } = await phoneLedger(phone.page, REGISTRATION);
    const state = fold(events);
    const [drawn] = askedByChance(walker.book, state, [...state.walks.values()].at(-1) ?? null);
    const step = stepOf(drawn ?? "");
    await walker.goTo(step);
    const { left } = await walker.left();
    await walker.yes.tap();
    await walker.card.getByRole("heading", { name: "This walk asks for a photo" }).waitFor();
    expect((await lookInEveryView(phone.page)).wrong).toEqual([]);
    await walker.yes.tap();
    await walker.card.getByText("A photo, or a reason why not.").waitFor();
    expect(await walker.left()).toMatchObject({ left });
    await walker.noPhotoWhy.fill("No light");
    await walker.kept(walker.yes, step.place);
    expect(await typesOf()).toContain("evidence.declined");
  });

  it("a fault with a photo that is none is raised once, however often it is tried", async () => {
    const { walker, phone } = on;
    const step = stepOf("step");
    await walker.goTo(step);
    await walker.no.tap();
    await walker.words.fill("gives way under a foot");
    await walker.photoInput.setInputFiles(text("IMG_0003.jpg", "nor is this", "image/jpeg"));
    await walker.answerKeep.tap();
    await walker.trouble.waitFor();
    if (await walker.answerKeep.isVisible()) {
      await walker.answerKeep.tap();
      await walker.trouble.waitFor();
    }
    const raised = (await typesOf()).filter((type) => type === "discrepancy.raised");
    expect(raised.length).toBeLessThanOrEqual(1);
    await go(phone.page, `#/${REGISTRATION}/walk`);
  });

  it("a book with faults has each of them told with line and column, and nothing of it is taken", async () => {
    const book = readFileSync(join(ROOT, "books/zz-skr.yaml"), "utf8").split("\n");
    const lineOf = (start: RegExp) => book.findIndex((line) => start.test(line)) + 1;
    const spoil = (line: number, change: (text: string) => string) => {
      const before = book[line - 1] ?? "";
      const after = change(before);
      expect(after).not.toBe(before);
      book[line - 1] = after;
      return line;
    };
    const wrong = [
      spoil(lineOf(/^revision: /), () => "revision: fourteen"),
      spoil(lineOf(/^\s+gauge: bag-scale/), (line) => line.replace("bag-scale", "bag-scail")),
      spoil(lineOf(/^\s+at: baggage-net/), (line) => line.replace("at: baggage-net", "at: no-such-point")),
      spoil(lineOf(/^\s+title: Touch the exit handle/) + 1, (line) => line.replace(/: \w+/, ": shove")),
    ];
    await add.open();
    await add.choose(text("spoilt.yaml", book.join("\n")));
    const faults = await add.faults();
    expect(faults.map(({ line }) => line)).toEqual(wrong.toSorted((a, b) => a - b));
    expect(faults.every(({ column }) => column > 0)).toBe(true);
    expect(await add.said()).toMatch(/^Four faults in spoilt\.yaml\. Nothing of it was taken\./);
    expect(faults.find(({ line }) => line === wrong[1])?.words).toContain("bag-scail");
  });

  it.each([
    {
      what: "a file that is no YAML",
      file: text("photo.yaml", Buffer.from([137, 80, 78, 71, 13, 10, 26, 10, 0, 255])),
    },
    { what: "a text that is no book", file: text("list.yaml", "- milk\n- bread\n") },
    { what: "an empty file", file: text("empty.yaml", "") },
    {
      what: "YAML that does not read",
      file: text("torn.yaml", "witnessmark: 1\naircraft: {registration: ZZ-NEW\n"),
    },
  ])("$what is refused as a book, with what is wrong", async ({ file }) => {
    await add.open();
    await add.choose(file);
    expect((await add.faults()).length).toBeGreaterThan(0);
    expect(await add.said()).toContain("Nothing of it was taken.");
  });

  it("a ledger file is refused as a book, and the aircraft are what they were", async () => {
    const ledger = await (
      await fetch(`${scene.server.url}/api/aircraft/${REGISTRATION}/ledger.jsonl`)
    ).text();
    const before = (await phoneLedger(on.phone.page, REGISTRATION)).events.length;
    await add.open();
    await add.choose(text("ledger.yaml", ledger));
    expect((await add.faults()).length).toBeGreaterThan(0);
    expect((await phoneLedger(on.phone.page, REGISTRATION)).events).toHaveLength(before);
    expect(await demoBook()).toMatchObject({ aircraft: { registration: REGISTRATION } });
    expect(on.phone.complaints).toEqual([]);
  });
});
