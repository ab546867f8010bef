import { type Book, readBook } from "@witnessmark/book";
import { type Author, type EventDraft, newId } from "@witnessmark/ledger";
import { person, ToldLedger } from "./told-ledger.ts";

/** A book of a test. @throws {Error} naming its first fault */
export async function bookOf(text: string): Promise<Book> {
  const result = await readBook(text, "test.yaml");
  if (result.ok) return result.book;
  const [{ path, found }] = result.faults;
  throw new Error(`expected a book, found ${path}: ${found}`);
}

/** Puts a book in force. */
export const adopted = ({ sha256, revision, aircraft }: Book, text: string): EventDraft => ({
  type: "book.adopted",
  body: { sha256, revision, registration: aircraft.registration, type: aircraft.type, text },
});

/** The first walk of a day, begun under a book that was just put in force. */
export async function walkUnder(
  book: Book,
  text: string,
): Promise<{
  readonly ledger: ToldLedger;
  readonly pilot: Author;
  readonly walk: string;
}> {
  const ledger = new ToldLedger(book.aircraft.registration, Date.UTC(2026, 10, 12, 7, 20));
  const [pilot, walk] = [person("MK"), newId()];
  await ledger.tell(pilot, adopted(book, text), {
    type: "walk.started",
    body: { walk, kind: "first-of-day", bookSha256: book.sha256 },
  });
  return { ledger, pilot, walk };
}
