/** The one way to the reader of books, so that it and its YAML parser come in a part of their own, when needed. */
export { readBook } from "@witnessmark/book";
