/* The turboprop of the demo, and the state of it after ten years. */
import { readFile } from "node:fs/promises";
import { type Book, readBook } from "@witnessmark/book";
import { type AircraftState, fold, generateHistory, type KnownEvent } from "@witnessmark/ledger";
import { checkLike } from "../../e2e/harness/check-like.ts";

const BOOK = new URL("../../books/zz-skr.yaml", import.meta.url);

export async function turboprop(): Promise<Book> {
  const result = await readBook(await readFile(BOOK, "utf8"), "zz-skr.yaml");
  if (!result.ok) {
    throw new Error(`bench: expected a book without faults, found ${result.faults.length}`);
  }
  return result.book;
}

/** Everything up to the last decision on a first walk of the day: a whole walk, just signed, nothing flown since. */
function untilSigned(events: readonly KnownEvent[]): readonly KnownEvent[] {
  const first = events.findLast(
    (event) => event.type === "walk.started" && event.body.kind === "first-of-day",
  );
  const walk = first?.type === "walk.started" ? first.body.walk : "";
  const signed = events.findIndex((event) => event.type === "decision.signed" && event.body.walk === walk);
  if (signed < 0) throw new Error("bench: expected a signed first walk in the history, found none");
  return events.slice(0, signed + 1);
}

/**
 * Ten years of it, as a state alone: a phone does not hold the events beside it.
 *
 * @param start_ms when its first flight was made, milliseconds since 1970 UTC
 */
export async function tenYears(
  of: Book,
  start_ms = Date.UTC(2031, 0, 1, 6),
): Promise<{ readonly state: AircraftState; readonly now_ms: number }> {
  const history = await generateHistory({
    years: 10,
    flightsPerYear: 340,
    start_ms,
    seed: 20_310_101,
    seal: "none",
    checks: of.checks.map((check) => checkLike(of, check)),
    groundGear: of.groundGear.map(({ id, count, stowedIn: [where = "cabin"] }) => ({
      item: id,
      count,
      stowedIn: where,
    })),
    book: { sha256: of.sha256, revision: of.revision, type: of.aircraft.type, text: "as read from its file" },
  });
  const events = untilSigned(history);
  return { state: fold(events), now_ms: Date.parse(events.at(-1)?.recordedAt ?? "") };
}
