import { assess } from "@witnessmark/assess";
import { type Book, issuedText, newDraft, smallBookText } from "@witnessmark/book";
import { planWalk } from "@witnessmark/planner";
import { expect, it } from "vitest";
import { adopted, bookOf, walkUnder } from "../testing/adopted-book.ts";
import { openWalk } from "./open-walk.ts";
import { walkView } from "./walk-view.ts";

it("a check that is only said in other words keeps its look in an open walk, and one under a new name is asked", async () => {
  const first = await bookOf(smallBookText);
  const inWords = (text: string, was: string, now: string): string => {
    expect(text.split(was)).toHaveLength(2);
    return text.replace(was, now);
  };
  const title = "Look at the brake for leaks";
  const words = inWords(
    inWords(inWords(smallBookText, "revision: 3", "revision: 4"), title, "Look along the brake line"),
    "A brake without fluid does not hold.",
    "A brake that leaks pulls to one side.",
  );
  const another = inWords(
    inWords(words, "revision: 4", "revision: 5"),
    "id: right-brake\n",
    "id: right-brake-line\n",
  );
  const { ledger, pilot, walk } = await walkUnder(first, smallBookText);
  const adopt = (book: Book, text: string) => ledger.tell(pilot, adopted(book, text));
  const statusIn = (book: Book, check: string) => {
    const open = openWalk(ledger.state);
    if (open === undefined) throw new Error("expected an open walk");
    const assessment = assess(book, ledger.state, null, ledger.now_ms);
    return walkView(open, planWalk(book, "first-of-day"), ledger.state, assessment).byId.get(check)?.status;
  };
  expect(statusIn(first, "right-brake")).toBe("open");
  await ledger.tell(pilot, {
    type: "check.answered",
    body: { walk, check: "right-brake", answer: "as-it-should-be" },
  });
  expect(statusIn(first, "right-brake")).toBe("clear");

  const reworded = await bookOf(words);
  await adopt(reworded, words);
  expect(reworded.checksById.get("right-brake")?.title).toBe("Look along the brake line");
  expect(statusIn(reworded, "right-brake")).toBe("clear");

  const renamed = await bookOf(another);
  await adopt(renamed, another);
  expect(statusIn(renamed, "right-brake-line")).toBe("open");
});

it("a check that asks something else since an issue is asked again in an open walk, and the others keep their looks", async () => {
  const draft = newDraft(
    smallBookText.replace("shouldBe: Dry.", "shouldBe: Dry, and the line does not chafe."),
    { revision: 3, text: smallBookText },
  );
  const issued = issuedText(draft, { by: "MK", on: "2026-11-12" });
  const [first, second] = [await bookOf(smallBookText), await bookOf(issued)];
  expect(second.checks.filter(({ since }) => since !== undefined).map(({ since }) => since)).toEqual([4]);
  const asked = second.checks.find(({ since }) => since !== undefined);
  if (asked === undefined) throw new Error("expected a check that asks something else");
  const other = second.checks.find(
    ({ id, reading, after }) => id !== asked.id && reading === undefined && after.length === 0,
  );
  if (other === undefined) throw new Error("expected another check");
  const { ledger, pilot, walk } = await walkUnder(first, smallBookText);
  const adopt = (book: Book, text: string) => ledger.tell(pilot, adopted(book, text));
  const look = (check: string) =>
    ledger.tell(pilot, { type: "check.answered", body: { walk, check, answer: "as-it-should-be" } });
  const verdictOn = (book: Book, check: string) =>
    assess(book, ledger.state, null, ledger.now_ms).verdicts.find(({ id }) => id === `check:${check}`);
  await look(asked.id);
  await look(other.id);
  expect(verdictOn(first, asked.id)?.status).toBe("clear");
  await adopt(second, issued);
  expect(verdictOn(second, other.id)?.status).toBe("clear");
  expect(verdictOn(second, asked.id)).toMatchObject({ status: "open" });
  expect(verdictOn(second, asked.id)?.says).toContain("the book asks something else here since revision 4");
  await look(asked.id);
  expect(verdictOn(second, asked.id)?.status).toBe("clear");
});

it("a reading that was taken with another gauge than the book asks for since an issue is asked for again", async () => {
  const first = await bookOf(smallBookText);
  const asked = first.checks.find(({ reading }) => reading !== undefined);
  const gauge = asked?.reading?.gauge;
  if (asked?.reading === undefined || gauge === undefined) throw new Error("expected a check with a reading");
  const text = `${smallBookText.replace("revision: 3", "revision: 4")}`.replace(
    `  - id: ${asked.id}\n`,
    `  - id: ${asked.id}\n    since: 4\n`,
  );
  const second = await bookOf(text);
  expect(second.checksById.get(asked.id)?.since).toBe(4);
  const { ledger, pilot, walk } = await walkUnder(first, smallBookText);
  const look = () =>
    ledger.tell(pilot, {
      type: "check.answered",
      body: { walk, check: asked.id, answer: "as-it-should-be" },
    });
  const says = () =>
    assess(second, ledger.state, null, ledger.now_ms).verdicts.find(({ id }) => id === `check:${asked.id}`)
      ?.says;
  await ledger.tell(pilot, {
    type: "reading.recorded",
    body: {
      walk,
      check: asked.id,
      gauge,
      read: { value: 1600, unit: "psi" },
      temperature: { value: 21, unit: "degC" },
    },
  });
  await look();
  await ledger.tell(pilot, adopted(second, text));
  await look();
  expect(says()).toContain("the book asks something else here since revision 4");
});
