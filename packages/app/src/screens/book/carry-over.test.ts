import { assess } from "@witnessmark/assess";
import { type Book, type BookEdit, editText, smallBookText } from "@witnessmark/book";
import { planWalk } from "@witnessmark/planner";
import { expect, it } from "vitest";
import { adopted, bookOf, walkUnder } from "../../testing/adopted-book.ts";
import { openWalk } from "../../walk/open-walk.ts";
import { walkView } from "../../walk/walk-view.ts";

it("a walk that is open goes on under the next revision: what was seen stays, readings are held against the new limits, what is new is asked", async () => {
  const first = await bookOf(smallBookText);
  const look = first.checks.find(({ id }) => id === "right-brake");
  if (look === undefined) throw new Error("expected the check of the brake");
  const { point: _point, stance: _stance, reading: _reading, ...rest } = look;
  const edits: readonly BookEdit[] = [
    { set: ["revision"], to: 4 },
    { set: ["checks", 3, "reading", "limit", "rows", 1, "low"], to: "6.5 US qt" },
    {
      insert: ["checks", 4],
      item: {
        ...(JSON.parse(JSON.stringify(rest)) as { readonly [key: string]: string }), // what a check says, as plain text
        holds: { until: ["flown"] },
        least: "2 s",
        id: "oil-cap",
        at: "oil",
        title: "Turn the cap",
        oneSided: "x",
      },
    },
    { remove: ["checks", 4, "oneSided"] },
  ];
  const text = editText(smallBookText, edits);
  const next = await bookOf(text);

  const { ledger, pilot, walk } = await walkUnder(first, smallBookText);
  await ledger.tell(pilot, {
    type: "reading.recorded",
    body: {
      walk,
      check: "oil-level",
      gauge: "dipstick",
      read: { value: 6, unit: "USqt" },
      temperature: { value: 15, unit: "degC" },
    },
  });
  for (const check of ["oil-level", "right-brake"])
    await ledger.tell(pilot, { type: "check.answered", body: { walk, check, answer: "as-it-should-be" } });

  const statusIn = (book: Book, check: string) => {
    const open = openWalk(ledger.state);
    if (open === undefined) throw new Error("expected an open walk");
    const assessment = assess(book, ledger.state, null, ledger.now_ms);
    return walkView(open, planWalk(book, "first-of-day"), ledger.state, assessment).byId.get(check)?.status;
  };
  expect(statusIn(first, "oil-level")).toBe("clear");
  const before = statusIn(first, "right-brake");

  await ledger.tell(pilot, adopted(next, text));
  expect(openWalk(ledger.state)).toMatchObject({ id: walk, bookSha256: first.sha256 });
  expect(statusIn(next, "right-brake")).toBe(before); // the same look
  expect(statusIn(next, "oil-level")).toBe("stop"); // read 6, and now at least 6.5 is asked
  expect(statusIn(next, "oil-cap")).toBe("open"); // never looked at
});
