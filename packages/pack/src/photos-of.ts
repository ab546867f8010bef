import type { Book } from "@witnessmark/book";

/** The pictures that the checks of a book name, each once, in the order of the walk. */
export function photosOf(book: Pick<Book, "checks">): readonly string[] {
  return [...new Set(book.checks.map(({ photo }) => photo).filter((photo) => photo !== undefined))];
}
