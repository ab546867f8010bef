import { basename } from "node:path";
import { faultSentence, readBook } from "@witnessmark/book";
import type { Command } from "../arguments.ts";
import { EXIT } from "../exit-code.ts";
import { Refused } from "../refused.ts";

export const bookCheckCommand: Command = {
  words: ["book", "check"],
  usage: "book check <file.yaml> …",
  about: "Reads books and names every fault by file, line and column.",
  options: {},
  async run({ io, words, options }) {
    if (words.length === 0)
      throw new Refused(
        "usage",
        "Which book? Name one or more files: witnessmark book check my-aircraft.yaml",
      );
    const results = [];
    for (const path of words) {
      const result = await readBook(
        await io.readText(path),
        path === "-" ? "standard input" : basename(path),
      );
      results.push({ path, result });
    }
    if (options["json"] === true) {
      io.out(
        JSON.stringify(
          results.map(({ path, result }) => ({
            file: path,
            ok: result.ok,
            faults: result.ok ? [] : result.faults,
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
      for (const { path, result } of results) {
        if (result.ok) {
          const { book } = result;
          io.out(
            `${path}: ${book.aircraft.registration}, ${book.aircraft.type}, revision ${book.revision}: ${book.checks.length} checks, no faults.`,
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
