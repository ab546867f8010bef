import { beforeAll, describe, expect, it } from "vitest";
import { REGISTRATION } from "./harness/book.ts";
import type { Phone } from "./harness/browser.ts";
import { lookInEveryView } from "./harness/every-view.ts";
import { Import } from "./harness/import.ts";
import { PATIENCE_ms } from "./harness/patience.ts";
import { serverEvents } from "./harness/records.ts";
import { openScene, type Scene } from "./harness/scene.ts";
import { allOnServer, go, introduce } from "./harness/screens.ts";

const LEFT = "main-tyre-pressure.left-main-tyre";

const DAY_ms = 86_400_000;

/** A year and more of one tyre up to yesterday, a reading every day; 450 rows go in three batches. */
const history = (rows: number, minute = 40): string =>
  [
    "Date;Time;Check;Pressure (bar);Temperature (°C);Read by",
    ...Array.from({ length: rows }, (_, place) => {
      const day = new Date(Date.now() - (rows - place) * DAY_ms).toISOString().slice(0, 10);
      return `${day};07:${String(minute).padStart(2, "0")};${LEFT};${(5.36 + (place % 3) / 100).toFixed(2).replace(".", ",")};${place % 20};AB`;
    }),
  ].join("\r\n");

describe("a file that is brought in", () => {
  let scene: Scene;
  let phone: Phone;
  let screen: Import;

  beforeAll(async () => {
    scene = await openScene();
    phone = await scene.phone();
    await introduce(phone.page, "MK");
    screen = new Import(phone.page);
    return scene.end;
  });

  const isClean = async () => expect(await lookInEveryView(phone.page)).toEqual({ wrong: [], odd: [] });

  it("with a good history is matched by its headings, shown, kept, and read in the trends", async () => {
    await screen.open();
    await isClean();
    await screen.choose("tyre.csv", history(450));
    expect(await screen.column("Pressure").inputValue()).toBe("value");
    await screen.preview.waitFor();
    expect(await screen.preview.getByRole("row").nth(1).textContent()).toContain("5.36");
    await isClean();
    await screen.bringIn("450 readings");
    await phone.page
      .getByText("450 readings of tyre.csv are on the record.")
      .waitFor({ timeout: PATIENCE_ms });
    await isClean();
    await allOnServer(phone.page);
    const events = await serverEvents(scene.server.url, REGISTRATION);
    expect(events.filter(({ type }) => type === "reading.imported")).toHaveLength(450);
    await go(phone.page, `#/${REGISTRATION}/trend/${LEFT}`);
    const first = phone.page.getByRole("row").nth(1);
    await first.waitFor({ timeout: PATIENCE_ms });
    expect(await first.textContent()).toMatch(/bar at \d+.°C.*AB$/);
  });

  it("once more is known: nothing is brought in twice, and all of it can be taken back", async () => {
    await screen.open();
    await screen.choose("tyre.csv", history(450));
    await phone.page.getByRole("button", { name: "Nothing to bring in" }).waitFor();
    expect(await screen.preview.textContent()).toContain("450 on record already");
    await screen.open();
    await isClean();
    await phone.page.getByRole("button", { name: "Take 450 readings back" }).tap();
    await phone.page.getByRole("heading", { name: "Taken back" }).waitFor({ timeout: PATIENCE_ms });
    await screen.choose("tyre.csv", history(450));
    await phone.page.getByRole("button", { name: "Bring in 450 readings" }).waitFor();
  });

  it("is stopped with what is in said, goes on from there, and is taken back in one step", async () => {
    await screen.open();
    await screen.choose("long.csv", history(2_000, 7));
    await screen.stopAtOnce();
    await screen.bringIn("2,000 readings");
    await phone.page.getByRole("heading", { name: "Stopped" }).waitFor({ timeout: PATIENCE_ms });
    const said = await phone.page
      .getByText(/of 2,000 readings of long\.csv are on the record\.$/)
      .textContent();
    const [inFirst = "0"] = said?.split(" ") ?? [];
    const first = Number(inFirst.replaceAll(",", ""));
    expect(first).toBeGreaterThan(0);
    expect(first).toBeLessThan(2_000);
    await isClean();
    await phone.page.getByRole("button", { name: /^Bring in the other/ }).tap();
    await phone.page
      .getByText("2,000 readings of long.csv are on the record.", { exact: true })
      .waitFor({ timeout: PATIENCE_ms });
    await phone.page.getByRole("button", { name: "Take them back" }).tap();
    await phone.page.getByRole("heading", { name: "Taken back" }).waitFor({ timeout: PATIENCE_ms });
    await screen.open();
    expect(await phone.page.getByRole("region", { name: "Brought in before" }).count()).toBe(0);
  });

  it("that reads both ways is not guessed: mark, order of the date, check and unit are asked for", async () => {
    await screen.open();
    await screen.choose("odd.csv", 'Date,Reading\n03/04/2024,"5,240"\n05/06/2024,"5,210"\n');
    await screen.question.getByRole("heading", { name: /the day or the month/ }).waitFor();
    await isClean();
    await screen.answer(/^The day/);
    await screen.question.getByRole("heading", { name: /decimal mark in “Reading”/ }).waitFor();
    await isClean();
    await screen.answer(/^The point/);
    await screen.question.getByRole("heading", { name: /Which check/ }).waitFor();
    await isClean();
    await screen.pick(LEFT);
    await screen.pick("gauge");
    // the wrong mark is seen before anything is kept: no tyre gauge goes to five thousand
    await screen.faults.waitFor();
    expect(await screen.faults.textContent()).toContain(
      "Look whether the decimal mark or the unit is another one",
    );
    await phone.page.getByRole("button", { name: "Nothing to bring in" }).waitFor();
  });

  it("with decimal commas that part its cells says so at every row, and keeps nothing", async () => {
    await screen.open();
    await screen.choose(
      "comma.csv",
      `Date,Check,Value,Unit\n2024-04-03,${LEFT},5,24,bar\n2024-04-04,${LEFT},5,21,bar\n`,
    );
    await screen.faults.waitFor();
    expect(await screen.faults.getByRole("listitem").count()).toBe(2);
    expect(await screen.faults.textContent()).toContain("A decimal comma parts cells here");
  });

  it("with bad rows names each at its place, page by page, and brings in the others", async () => {
    await screen.open();
    const bad = Array.from({ length: 12 }, (_, place) => `2024-02-30,${LEFT},plenty ${place},bar`);
    await screen.choose(
      "bad.csv",
      ["Date,Check,Value,Unit", `2024-04-03,${LEFT},5.24,bar`, ...bad].join("\n"),
    );
    await screen.faults.getByText("Page 1 of 3").waitFor();
    expect(await screen.faults.getByRole("listitem").first().textContent()).toMatch(/Row 3.*2024-02-30/s);
    await isClean();
    await screen.faults.getByRole("button", { name: "Later" }).tap();
    await screen.faults.getByText("Page 2 of 3").waitFor();
    await screen.bringIn("1 reading");
    await phone.page.getByText("1 reading of bad.csv is on the record.").waitFor({ timeout: PATIENCE_ms });
    await phone.page.getByRole("button", { name: "Take it back" }).tap();
    await phone.page.getByRole("heading", { name: "Taken back" }).waitFor({ timeout: PATIENCE_ms });
  });

  it("of what runs out adds what nobody follows, and when it was last done", async () => {
    await screen.open();
    await screen.choose(
      "timed.csv",
      "Item;Interval;Last done;Last done by;Airframe hours\n100 h inspection;;2024-04-03;The workshop;1180,5\nSpare hoses;12 months;2024-05-06;The workshop;\nSeat belts;often;;;\n",
    );
    await screen.preview.waitFor();
    expect(await screen.faults.getByRole("listitem").allTextContents()).toHaveLength(1);
    await isClean();
    await screen.bringIn("2 rows");
    await phone.page.getByText("2 rows of timed.csv are on the record.").waitFor({ timeout: PATIENCE_ms });
    await go(phone.page, `#/${REGISTRATION}/timed/spare-hoses`);
    await phone.page.getByRole("heading", { name: "Spare hoses" }).waitFor();
    expect(await phone.page.locator(".life").textContent()).toContain("6 May 2024");
  });

  it("that is no CSV says what was found and what to do", async () => {
    await screen.open();
    await screen.choose("picture.csv", "\u0000\u0001\u0002 no text");
    const wrong = phone.page.getByRole("region", { name: "What is wrong with the file" });
    await wrong.waitFor();
    expect(await wrong.textContent()).toContain("a file that is no text");
    await isClean();
    expect(phone.complaints).toEqual([]);
  });
});
