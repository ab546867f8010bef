import type { Book, BookFault } from "@witnessmark/book";
import type { AdoptedBook } from "@witnessmark/ledger";

/**
 * Why a book cannot become the next revision: its number stands for another text already, or for one before the one in
 * force. An issued revision never changes, and walks and decisions name it by its number.
 *
 * @param issued every revision of the aircraft so far, the one in force last
 */
export function revisionFault(
  book: Pick<Book, "revision" | "sha256">,
  text: string,
  fileName: string,
  issued: readonly Pick<AdoptedBook, "revision" | "sha256" | "author" | "recordedAt">[],
): BookFault | undefined {
  const inForce = issued.at(-1);
  if (inForce === undefined || inForce.sha256 === book.sha256) return undefined;
  const highest = Math.max(...issued.map(({ revision }) => revision));
  const other = issued.findLast(
    ({ revision, sha256 }) => revision === book.revision && sha256 !== book.sha256,
  );
  if (other === undefined && book.revision > inForce.revision) return undefined;
  const lines = text.split(/\r?\n/);
  const line = lines.findIndex((each) => /^revision\s*:/.test(each)) + 1;
  return {
    file: fileName,
    line,
    column: line === 0 ? 0 : (lines[line - 1] ?? "").search(/\S+\s*$/) + 1,
    path: "revision",
    expected: `a revision above ${highest}: revision ${inForce.revision} is in force`,
    found:
      other === undefined
        ? `revision ${book.revision}, which is older`
        : `revision ${book.revision} with another text than the one that ${other.author.name} adopted as ${book.revision} on ${other.recordedAt.slice(0, 10)}`,
    remedy: `an issued revision never changes. If this file is right, give it revision ${highest + 1} and adopt it again; if it holds a few changes only, make them in the book and issue that`,
  };
}
