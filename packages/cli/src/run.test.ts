import { createHash } from "node:crypto";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { ruleQuestions } from "@witnessmark/assess";
import { smallBookText } from "@witnessmark/book";
import { type WalkedLedger, walkedLedger } from "@witnessmark/sheet/testing/walked-ledger";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { EXIT } from "./exit-code.ts";
import { run } from "./run.ts";
import { memoryIo } from "./testing/memory-io.ts";

let ledger: WalkedLedger;
let folder: string;
beforeAll(async () => {
  ledger = await walkedLedger();
  folder = mkdtempSync(join(tmpdir(), "witnessmark-cli-"));
});
afterAll(() => rmSync(folder, { recursive: true }));

async function command(words: string, files: Record<string, string | Uint8Array> = {}) {
  const machine = memoryIo({ "walk.jsonl": ledger.text, ...files });
  const exit = await run(words.split(" "), machine.io);
  return { exit, out: machine.out(), err: machine.err(), written: machine.written };
}

describe("a command line that is not understood", () => {
  it.each([
    { words: "walk", says: 'There is no command "walk".' },
    { words: "ledger burn", says: 'There is no command "ledger burn".' },
    { words: "ledger verify", says: "Expected a ledger file, found none." },
    { words: "ledger verify a.jsonl b.jsonl", says: "Expected a ledger file, found a.jsonl b.jsonl." },
    { words: "assess walk.jsonl --speed 9", says: "Unknown option '--speed'" },
    { words: "work", says: "Which quantity?" },
    { words: "work pressure-altitude elevation_ft", says: 'found "elevation_ft"' },
    { words: "work pressure-altitude elevation_ft=high", says: 'found "elevation_ft=high"' },
    { words: "work no-such-thing a_m=1", says: "no-such-thing: expected one of the" },
    { words: "assess walk.jsonl --at tomorrow", says: "--at: expected a moment with its offset" },
    { words: "book check", says: "Which book?" },
    { words: "rules", says: "Which question?" },
    { words: "rules no-such", says: 'There is no question "no-such".' },
    { words: "rules after-maintenance maybe", says: "Expected name=answer with one of released" },
    {
      words: "rules after-maintenance released=perhaps",
      says: 'released: expected yes or no, found "perhaps".',
    },
    { words: "rules locator-does-not-work seats_count=many", says: "seats_count: expected a number from" },
  ])("$words: says so, and how it is written", async ({ words, says }) => {
    const { exit, err } = await command(words);
    expect(err).toContain(says);
    expect(exit).toBe(EXIT.usage);
  });

  it("with no words at all prints every command and the caution", async () => {
    const machine = memoryIo();
    expect(await run([], machine.io)).toBe(EXIT.usage);
    expect(machine.out()).toContain("the pilot in command decides");
    for (const name of [
      "assess",
      "work",
      "book check",
      "ledger export",
      "ledger import",
      "ledger verify",
      "record",
      "rules",
      "sheet",
    ]) {
      expect(machine.out()).toContain(`witnessmark ${name}`);
    }
  });
});

describe("work", () => {
  it("works a published example out, with its source", async () => {
    // FAA-H-8083-25, chapter 11: elevation 5,883 ft, 30.10 inHg: pressure altitude 5,718 ft
    const { exit, out } = await command(
      "work pressure-altitude elevation_ft=5883 altimeterSetting_inHg=30.10 --json",
    );
    const answer = JSON.parse(out);
    expect(exit).toBe(EXIT.done);
    expect(answer.output.pressureAltitude_m / 0.3048).toBeCloseTo(5718, -0.5);
    expect(answer.quantity.sources.length).toBeGreaterThan(0);
  });

  it("takes a list of numbers for an input that is one", async () => {
    // FAA-H-8083-25C, figure 10-5: 3,320 lb and 281,430 lb-in, printed as 84.8 in
    const masses = "2100,340,350,450,80";
    const { exit, out } = await command(
      `work centre-of-gravity mass_lb=${masses} arm_in=78.3,85,121,75,150 --json`,
    );
    expect(exit).toBe(EXIT.done);
    const answer = JSON.parse(out);
    expect(answer.output.centreOfGravity_m / 0.0254).toBeCloseTo(84.8, 1);
    expect(answer.inputs[0].given).toEqual({ value: [2100, 340, 350, 450, 80], unit: "lb" });
    const semicolons = masses.replaceAll(",", ";");
    const same = await command(
      `work centre-of-gravity mass_lb=${semicolons} arm_in=78,3;85;121;75;150 --json`,
    );
    expect(JSON.parse(same.out).output).toEqual(answer.output);
  });

  it("says which word is no list", async () => {
    const { exit, err } = await command("work centre-of-gravity mass_lb=1,,2 arm_in=1,2,3");
    expect(err).toContain('Expected a name and numbers, such as mass_lb=340,350; found "mass_lb=1,,2".');
    expect(exit).toBe(EXIT.usage);
  });

  it("lists what there is, for people and for programs", async () => {
    const { out } = await command("work --list");
    expect(out).toContain("pressure-altitude");
    const listed = JSON.parse((await command("work --list --json")).out);
    expect(listed.length).toBeGreaterThan(20);
  });
});

describe("book check", () => {
  it("passes a book that is right", async () => {
    const { exit, out } = await command("book check small.yaml", { "small.yaml": smallBookText });
    expect(out).toMatch(/^small\.yaml: ZZ-SML, Pipit 1, revision 3: \d+ checks, no faults\.$/);
    expect(exit).toBe(EXIT.done);
  });

  it("names file, line and column of each fault", async () => {
    const bad = smallBookText.replace("revision: 3", "revision: three").replace("engines: 1", "motors: 1");
    const { exit, out } = await command("book check small.yaml", { "small.yaml": bad });
    expect(out).toMatch(/small\.yaml, line 2, column 11/);
    expect(out).toContain("motors");
    expect(exit).toBe(EXIT.faults);
  });

  it("says which file cannot be read", async () => {
    const { exit, err } = await command("book check none.yaml");
    expect(err).toContain("none.yaml could not be read");
    expect(exit).toBe(EXIT.unreadable);
  });
});

describe("ledger verify", () => {
  it("finds nothing wrong with a ledger as it was made", async () => {
    const { exit, out } = await command("ledger verify walk.jsonl");
    expect(out).toContain(`${ledger.events.length} events of one device, as they were made.`);
    expect(exit).toBe(EXIT.done);
  });

  it("names the line of a changed byte", async () => {
    const lines = ledger.text.split("\n");
    const line = lines.findIndex((text) => text.includes('"check.answered"'));
    lines[line] = (lines[line] ?? "").replace("as-it-should-be", "not-right");
    const { exit, out } = await command("ledger verify changed.jsonl", { "changed.jsonl": lines.join("\n") });
    expect(out).toContain(`line ${line + 1}`);
    expect(exit).toBe(EXIT.faults);
  });

  it("says that a file was cut short", async () => {
    const { exit, out } = await command("ledger verify cut.jsonl", {
      "cut.jsonl": ledger.text.slice(0, ledger.text.length * 0.6),
    });
    expect(out).toContain("cut short");
    expect(exit).toBe(EXIT.faults);
  });
});

describe("assess", () => {
  it("says what stands in the way, from a file alone, and works the decision out again", async () => {
    const { exit, out } = await command("assess walk.jsonl");
    expect(out).toContain("ZZ-SML, Pipit 1, book revision 3");
    expect(out).toContain("its assessment comes out the same");
    expect(out).toContain("Fit for no real flight.");
    expect(out).toContain("the pilot in command decides");
    expect(exit).toBe(EXIT.open); // readings were asked for and none was recorded
  });

  it("gives programs the same", async () => {
    const { out } = await command("assess walk.jsonl --json");
    const answer = JSON.parse(out);
    expect(answer.assessment.aircraft).toBe("ZZ-SML");
    expect(answer.recomputed.matches).toBe(true);
    expect(answer.decision.id).toBe(ledger.decision);
  });

  it("counts time: a day later, looks that hold for hours are open", async () => {
    const count = (out: string) => JSON.parse(out).assessment.counts.open;
    const then = count((await command("assess walk.jsonl --json --at 2026-11-12T08:30:00+01:00")).out);
    const later = count((await command("assess walk.jsonl --json --at 2026-11-14T08:30:00+01:00")).out);
    expect(later).toBeGreaterThan(then);
  });
});

describe("sheet", () => {
  it("is a PDF with the signed record in it", async () => {
    const { exit, err, written } = await command("sheet walk.jsonl --output sheet.pdf");
    expect(err).toContain("sheet.pdf: Not going yet, Thursday 12 November 2026.");
    const pdf = Buffer.from(written.get("sheet.pdf") ?? []);
    expect(pdf.subarray(0, 5).toString("latin1")).toBe("%PDF-");
    expect(pdf.toString("latin1")).toContain("decision.json");
    expect(exit).toBe(EXIT.done);
  });

  it("says when there is no such decision", async () => {
    const { exit, err } = await command("sheet walk.jsonl --decision 01900000-0000-7000-8000-00000000ffff");
    expect(err).toContain("There is no decision");
    expect(exit).toBe(EXIT.unreadable);
  });
});

describe("record", () => {
  it("is a PDF of the period with the whole ledger in it", async () => {
    const { exit, err, written } = await command(
      "record walk.jsonl --from 2026-11-01 --to 2026-11-12 --out record.pdf",
    );
    expect(err).toContain("record.pdf: ZZ-SML, 2026-11-01 to 2026-11-12, with ZZ-SML.jsonl in it.");
    const pdf = Buffer.from(written.get("record.pdf") ?? []).toString("latin1");
    expect(pdf).toMatch(/^%PDF-/);
    expect(pdf).toContain("(ZZ-SML.jsonl)");
    expect(exit).toBe(EXIT.done);
  });

  it("gives programs what it says, and writes no file that was not asked for", async () => {
    const { exit, out, written } = await command("record walk.jsonl --json");
    const record = JSON.parse(out);
    expect(record.period).toEqual({ from: "2026-11-12", to: "2026-11-12" });
    expect(record.decisions).toMatchObject([{ id: ledger.decision, title: "Not going yet", signed: true }]);
    expect(record.ledger).toMatchObject({ events: ledger.events.length, isSound: true });
    expect(written.size).toBe(0);
    expect(exit).toBe(EXIT.done);
  });

  it("says what is wrong with a period, and when no file is named", async () => {
    const noDay = await command("record walk.jsonl --from 2026-11-31 --out record.pdf");
    expect(noDay.err).toBe(
      '--from: expected a day of the calendar, written YYYY-MM-DD, received "2026-11-31"; November 2026 ends with day 30.',
    );
    expect(noDay.exit).toBe(EXIT.usage);
    const backwards = await command("record walk.jsonl --from 2026-11-12 --to 2026-11-02 --out record.pdf");
    expect(backwards.err).toContain("give an earlier first day or a later last day");
    expect(backwards.exit).toBe(EXIT.usage);
    expect(backwards.written.size).toBe(0);
    const nowhere = await command("record walk.jsonl");
    expect(nowhere.err).toContain("Give the file to write, such as --out record.pdf");
    expect(nowhere.exit).toBe(EXIT.usage);
  });

  it("of a ledger that does not hold is written, and says so in file and exit code", async () => {
    const changed = ledger.text.replace("as-it-should-be", "not-right");
    const { exit, err, written } = await command("record changed.jsonl --out record.pdf", {
      "changed.jsonl": changed,
    });
    expect(err).toContain("was changed after it was made");
    expect(written.has("record.pdf")).toBe(true);
    expect(exit).toBe(EXIT.faults);
    const cut = await command("record cut.jsonl --json", {
      "cut.jsonl": ledger.text.slice(0, ledger.text.length * 0.6),
    });
    expect(JSON.parse(cut.out).ledger).toMatchObject({
      isSound: false,
      says: expect.stringContaining("promises"),
    });
    expect(cut.exit).toBe(EXIT.faults);
  });
});

describe("a database", () => {
  it("takes a ledger in, once, and gives it back to the letter", async () => {
    const first = await command(`ledger import walk.jsonl --data ${folder}`);
    expect(first.out).toBe(`ZZ-SML: ${ledger.events.length} taken, 0 known already, 0 set aside.`);
    const second = await command(`ledger import walk.jsonl --data ${folder}`);
    expect(second.out).toBe(`ZZ-SML: 0 taken, ${ledger.events.length} known already, 0 set aside.`);
    const { written } = await command(`ledger export ZZ-SML --output out.jsonl --data ${folder}`);
    const eventLines = (text: string) => text.trim().split("\n").slice(1, -1);
    expect(eventLines(new TextDecoder().decode(written.get("out.jsonl")))).toEqual(eventLines(ledger.text));
  });

  it("is stopped between two batches: it says how far it came, and the same command goes on", async () => {
    const other = mkdtempSync(join(tmpdir(), "witnessmark-cli-"));
    const count = ledger.events.length;
    const machine = memoryIo({ "walk.jsonl": ledger.text }, undefined, (stop) => {
      stop();
      return () => {};
    });
    const line = ["ledger", "import", "walk.jsonl", "--data", other];
    expect(await run(line, machine.io)).toBe(EXIT.stopped);
    expect(machine.err()).toContain(
      `Stopped: 0 of ${count} entries were looked at, each whole; ${count} were not.`,
    );
    expect(machine.out()).toBe("ZZ-SML: 0 taken, 0 known already, 0 set aside.");
    const again = await command(`ledger import walk.jsonl --data ${other}`);
    expect(again.out).toBe(`ZZ-SML: ${count} taken, 0 known already, 0 set aside.`);
    rmSync(other, { recursive: true });
  });

  it("does not take a file with faults, unless told to, and then sets the bad events aside", async () => {
    const other = mkdtempSync(join(tmpdir(), "witnessmark-cli-"));
    const changed = ledger.text.replace("as-it-should-be", "not-right");
    const refused = await command(`ledger import changed.jsonl --data ${other}`, {
      "changed.jsonl": changed,
    });
    expect(refused.err).toContain("nothing of it was taken");
    expect(refused.exit).toBe(EXIT.faults);
    const taken = await command(`ledger import changed.jsonl --anyway --data ${other}`, {
      "changed.jsonl": changed,
    });
    expect(taken.out).toBe(`ZZ-SML: ${ledger.events.length - 1} taken, 0 known already, 1 set aside.`);
    rmSync(other, { recursive: true });
  });

  it("says of another operator's file in one sentence what it is, how many, and which are the first", async () => {
    const other = mkdtempSync(join(tmpdir(), "witnessmark-cli-"));
    const { exit, err, out } = await command(`ledger import walk.jsonl --operator strangers --data ${other}`);
    const count = ledger.events.length;
    const [first, second, third] = ledger.events.map(({ id }) => id);
    const lines = err.trim().split("\n");
    expect(lines).toHaveLength(1);
    expect(lines[0]).toMatch(/^Set aside: \d+ entries\. It belongs to the operator /);
    expect(lines[0]).toContain(`They are ${first}, ${second}, ${third} and ${count - 3} more.`);
    expect(out).toBe(`ZZ-SML: 0 taken, 0 known already, ${count} set aside.`);
    expect(exit).toBe(EXIT.faults);
    rmSync(other, { recursive: true });
  });

  it("names the aircraft there are when one is not there", async () => {
    const { exit, err } = await command(`assess ZZ-NON --data ${folder}`);
    expect(err).toContain("There is no ledger of ZZ-NON in the database. There are: ZZ-SML.");
    expect(exit).toBe(EXIT.unreadable);
  });
});

describe("rules", () => {
  it("--list names every question that the screen has", async () => {
    const { exit, out } = await command("rules --list");
    expect(exit).toBe(EXIT.done);
    for (const { id, title } of ruleQuestions.values()) expect(out).toContain(`${id}: ${title}`);
  });

  it("with nothing said permits nothing, and names what it wants to know", async () => {
    const { exit, out } = await command("rules after-maintenance");
    expect(exit).toBe(EXIT.open);
    expect(out).toContain("Not known is no permission.");
    expect(out).toContain("released: Was it released by a person who may? (yes or no)");
  });

  // 14 CFR 91.407: released, entered, and with passengers only after a check flight
  it("with all said answers by every step, with its text and the caution", async () => {
    const said = "released=yes recorded=yes mayFlyOtherwise=yes groundTestsConclusive=no flownAndLogged=no";
    const with_ = await command(`rules after-maintenance ${said} passengers=yes`);
    expect(with_.exit).toBe(EXIT.stop);
    expect(with_.out).toContain("It may not be flown so: 91.407(b).");
    const without = await command(`rules after-maintenance ${said} passengers=no`);
    expect(without.exit).toBe(EXIT.done);
    expect(without.out).toContain("Source: 14 CFR 91.407");
    expect(without.out).toContain("The rule's own text and the authority come first");
  });

  it("takes a figure in any unit of its kind: 50 NM are 92.6 km", async () => {
    const [miles, km] = await Promise.all(
      ["farthestFromDeparture_NM=50", "farthestFromDeparture_km=92.6"].map((each) =>
        command(`rules locator-does-not-work ${each} --json`),
      ),
    );
    const saidOf = (out: string) => (JSON.parse(out) as { said: Record<string, number> }).said; // as written above
    expect(saidOf(miles?.out ?? "")["farthestFromDeparture_m"]).toBeCloseTo(92_600, 6);
    expect(saidOf(km?.out ?? "")["farthestFromDeparture_m"]).toBeCloseTo(92_600, 6);
  });
});

describe("book pack and unpack", () => {
  const JPEG = Uint8Array.from([0xff, 0xd8, 0xff, 0xe0, 1, 2, 3]);
  const SHA = createHash("sha256").update(JPEG).digest("hex");
  const text = smallBookText.replace(/\n {4}method: /, `\n    photo: ${SHA}\n    method: `);

  it("puts a book and the pictures it names into one file, and takes it apart again", async () => {
    expect(text).toContain(SHA);
    const packed = await command("book pack my.yaml --photos pictures", {
      "my.yaml": text,
      "pictures/left tyre.jpg": JPEG,
      "pictures/notes.txt": "none",
    });
    expect(packed.err).toBe("");
    expect(packed.out).toContain(`left tyre.jpg: ${SHA}, what right looks like`);
    expect(packed.out).toContain("my.zip: the book and 1 picture.");
    const zip = packed.written.get("my.zip");
    if (zip === undefined) throw new Error("expected a pack");
    const checked = await command("book check my.zip", { "my.zip": zip });
    expect(checked.out).toMatch(/^my\.zip: ZZ-SML.* no faults/m);
    const apart = await command("book unpack my.zip --output here", { "my.zip": zip });
    expect(apart.exit).toBe(EXIT.done);
    expect(new TextDecoder().decode(apart.written.get("here/book.yaml"))).toBe(text);
    expect(apart.written.get(`here/photos/${SHA}.jpg`)).toEqual(JPEG);
  });

  it("says which picture is missing", async () => {
    const { exit, err } = await command("book pack my.yaml", { "my.yaml": text });
    expect(err).toContain(SHA);
    expect(exit).toBe(EXIT.faults);
  });

  it("takes nothing of a file that is no pack", async () => {
    const { exit, err, written } = await command("book unpack my.zip", { "my.zip": "PK no" });
    expect(err).toContain("Expected a ZIP file with a book in it");
    expect(exit).toBe(EXIT.faults);
    expect(written.size).toBe(0);
  });
});
