import { type ParseArgsOptionsConfig, parseArgs } from "node:util";
import { Refused } from "./refused.ts";

/** One command: what it is called, what it takes, and what it does. */
export interface Command {
  /** The words that name it: `["ledger", "verify"]`. */
  readonly words: readonly string[];
  /** How it is written, after the program's name. */
  readonly usage: string;
  readonly about: string;
  readonly options: ParseArgsOptionsConfig;
  run(given: Given): Promise<number>;
}

export interface Given {
  readonly io: import("./io.ts").Io;
  readonly words: readonly string[];
  readonly options: Readonly<Record<string, string | boolean | undefined>>;
}

/** Reads what follows a command's name. @throws {Refused} `usage`, naming what was not understood and how to write it */
export function readArguments(command: Command, rest: readonly string[]): Omit<Given, "io"> {
  try {
    const { values, positionals } = parseArgs({
      args: [...rest],
      options: { json: { type: "boolean" }, help: { type: "boolean", short: "h" }, ...command.options },
      allowPositionals: true,
      strict: true,
    });
    // no option of ours is given more than once, so no value is a list
    return { words: positionals, options: values as Given["options"] };
  } catch (error) {
    const what = error instanceof Error ? (error.message.split(". ")[0] ?? error.message) : String(error);
    throw new Refused("usage", `${what}.\nIt is written: witnessmark ${command.usage}`);
  }
}

/** The option as text, where it was given. */
export const textOption = (given: Given, name: string): string | undefined => {
  const value = given.options[name];
  return typeof value === "string" ? value : undefined;
};

/** The one word that a command needs. @throws {Refused} `usage` */
export function oneWord(given: Given, command: Command, what: string): string {
  const [word, ...more] = given.words;
  if (word === undefined || more.length > 0) {
    const found = word === undefined ? "none" : given.words.join(" ");
    throw new Refused(
      "usage",
      `Expected ${what}, found ${found}.\nIt is written: witnessmark ${command.usage}`,
    );
  }
  return word;
}
