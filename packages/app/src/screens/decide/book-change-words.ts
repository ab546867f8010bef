import { changeWords, plainOf } from "@witnessmark/book";

/** What a book's later text says otherwise; `undefined` where one of the two is not here, or cannot be read. */
export function bookChangeWords(
  before: string | undefined,
  after: string | undefined,
): readonly string[] | undefined {
  if (before === undefined || after === undefined) return undefined;
  const [was, is] = [plainOf(before, "the earlier book"), plainOf(after, "the book")];
  return was.ok && is.ok ? changeWords(was.plain, is.plain) : undefined;
}
