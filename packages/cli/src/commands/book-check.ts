import { basename } from "node:path";
import { type BookDoubt, consistencyOf, faultSentence, readBook } from "@witnessmark/book";
import type { Command } from "../arguments.ts";
import { EXIT } from "../exit-code.ts";
import { isPack, packOf } from "../pack-file.ts";
import { Refused } from "../refused.ts";

export const bookCheckCommand: Command = {
  words: ["book", "check"],
  usage: "book check <file.yaml | file.zip> …",
  about: "Reads books, names every fault by file, line and column, and what does not hang together.",
  options: {},
  async run({ io, words, options }) {
    if (words.length === 0)
      throw new Refused(
        "usage",
        "Which book? Name one or more files: witnessmark book check my-aircraft.yaml",
      );
    const results = await Promise.all(words.map((path) => checked(path, io)));
    if (options["json"] === true) {
      io.out(
        JSON.stringify(
          results.map(({ path, result, doubts }) => ({
            file: path,
            ok: result.ok,
            faults: result.ok ? [] : result.faults,
            doubts,
            ...(result.ok
              ? {
                  revision: result.book.revision,
                  sha256: result.book.sha256,
                  checks: result.book.checks.length,
                }
              : {}),
          })),
          null,
          2,
        ),
      );
    } else {
      for (const { path, file, result, doubts } of results) {
        if (result.ok) {
          const { book } = result;
          for (const doubt of doubts) io.out(doubtLine(file, doubt));
          io.out(
            `${path}: ${book.aircraft.registration}, ${book.aircraft.type}, revision ${book.revision}: ${book.checks.length} checks, no faults${doubtCount(doubts)}.`,
          );
        } else {
          for (const fault of result.faults) io.out(faultSentence(fault));
          io.out(`${path}: ${result.faults.length === 1 ? "one fault" : `${result.faults.length} faults`}.`);
        }
      }
    }
    return results.every(({ result }) => result.ok) ? EXIT.done : EXIT.faults;
  },
};

async function checked(path: string, io: Parameters<Command["run"]>[0]["io"]) {
  const text = isPack(path) ? (await packOf(io, path)).text : await io.readText(path);
  const file =
    path === "-" ? "standard input" : isPack(path) ? `book.yaml in ${basename(path)}` : basename(path);
  const result = await readBook(text, file);
  return { path, file, result, doubts: result.ok ? consistencyOf(result.book, text) : [] };
}

/** `zz.yaml, line 12, column 9, equipment[3]: No check looks at “Winch”. Name the points at which it is looked at.` */
const doubtLine = (file: string, { line, column, path, says, remedy }: BookDoubt): string =>
  `${file}, line ${line}, column ${column}, ${path}: ${says} ${remedy}`;

const doubtCount = ({ length }: readonly BookDoubt[]): string =>
  length === 0 ? "" : length === 1 ? ", one doubt" : `, ${length} doubts`;
