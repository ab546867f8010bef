import { type Book, readBook } from "@witnessmark/book";
import type { EventDraft } from "@witnessmark/ledger";

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
