import { assess } from "@witnessmark/assess";
import { type Book, issuedText, newDraft, readBook, smallBookText } from "@witnessmark/book";
import { newId } from "@witnessmark/ledger";
import { planWalk } from "@witnessmark/planner";
import { expect, it } from "vitest";
import { person, ToldLedger } from "../testing/told-ledger.ts";
import { openWalk } from "./open-walk.ts";
import { walkView } from "./walk-view.ts";

async function read(text: string): Promise<Book> {
  const result = await readBook(text, "small.yaml");
  if (!result.ok) throw new Error(`expected a book, found ${result.faults[0].found}`);
  return result.book;
}

it("a check that is only said in other words keeps its look in an open walk, and one under a new name is asked", async () => {
  const first = await read(smallBookText);
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
  const ledger = new ToldLedger(first.aircraft.registration, Date.UTC(2026, 10, 12, 7, 20));
  const pilot = person("MK");
  const walk = newId();
  const adopt = async (book: Book, text: string) =>
    ledger.tell(pilot, {
      type: "book.adopted",
      body: {
        sha256: book.sha256,
        revision: book.revision,
        registration: book.aircraft.registration,
        type: book.aircraft.type,
        text,
      },
    });
  const statusIn = (book: Book, check: string) => {
    const open = openWalk(ledger.state);
    if (open === undefined) throw new Error("expected an open walk");
    const assessment = assess(book, ledger.state, null, ledger.now_ms);
    return walkView(open, planWalk(book, "first-of-day"), ledger.state, assessment).byId.get(check)?.status;
  };
  await adopt(first, smallBookText);
  await ledger.tell(pilot, {
    type: "walk.started",
    body: { walk, kind: "first-of-day", bookSha256: first.sha256 },
  });
  expect(statusIn(first, "right-brake")).toBe("open");
  await ledger.tell(pilot, {
    type: "check.answered",
    body: { walk, check: "right-brake", answer: "as-it-should-be" },
  });
  expect(statusIn(first, "right-brake")).toBe("clear");

  const reworded = await read(words);
  await adopt(reworded, words);
  expect(reworded.checksById.get("right-brake")?.title).toBe("Look along the brake line");
  expect(statusIn(reworded, "right-brake")).toBe("clear");

  const renamed = await read(another);
  await adopt(renamed, another);
  expect(statusIn(renamed, "right-brake-line")).toBe("open");
});

it("a check that asks something else since an issue is asked again in an open walk, and what was read of it is kept", async () => {
  const draft = newDraft(
    smallBookText.replace("shouldBe: Dry.", "shouldBe: Dry, and the line does not chafe."),
    { revision: 3, text: smallBookText },
  );
  const issued = issuedText(draft, { by: "MK", on: "2026-11-12" });
  const [first, second] = [await read(smallBookText), await read(issued)];
  expect(second.checks.filter(({ since }) => since !== undefined).map(({ since }) => since)).toEqual([4]);
  const asked = second.checks.find(({ since }) => since !== undefined);
  if (asked === undefined) throw new Error("expected a check that asks something else");
  const other = second.checks.find(
    ({ id, reading, after }) => id !== asked.id && reading === undefined && after.length === 0,
  );
  if (other === undefined) throw new Error("expected another check");
  const ledger = new ToldLedger(first.aircraft.registration, Date.UTC(2026, 10, 12, 7, 20));
  const pilot = person("MK");
  const walk = newId();
  const adopt = (book: Book, text: string) =>
    ledger.tell(pilot, {
      type: "book.adopted",
      body: {
        sha256: book.sha256,
        revision: book.revision,
        registration: book.aircraft.registration,
        type: book.aircraft.type,
        text,
      },
    });
  const look = (check: string) =>
    ledger.tell(pilot, { type: "check.answered", body: { walk, check, answer: "as-it-should-be" } });
  const verdictOn = (book: Book, check: string) =>
    assess(book, ledger.state, null, ledger.now_ms).verdicts.find(({ id }) => id === `check:${check}`);
  await adopt(first, smallBookText);
  await ledger.tell(pilot, {
    type: "walk.started",
    body: { walk, kind: "first-of-day", bookSha256: first.sha256 },
  });
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
