import { type Command, readArguments } from "./arguments.ts";
import { assessCommand } from "./commands/assess.ts";
import { bookCheckCommand } from "./commands/book-check.ts";
import { bookPackCommand } from "./commands/book-pack.ts";
import { bookUnpackCommand } from "./commands/book-unpack.ts";
import { ledgerExportCommand } from "./commands/ledger-export.ts";
import { ledgerImportCommand } from "./commands/ledger-import.ts";
import { ledgerVerifyCommand } from "./commands/ledger-verify.ts";
import { recordCommand } from "./commands/record.ts";
import { rulesCommand } from "./commands/rules.ts";
import { sheetCommand } from "./commands/sheet.ts";
import { workCommand } from "./commands/work.ts";
import { EXIT } from "./exit-code.ts";
import type { Io } from "./io.ts";
import { Refused } from "./refused.ts";

export const COMMANDS: readonly Command[] = [
  assessCommand,
  workCommand,
  bookCheckCommand,
  bookPackCommand,
  bookUnpackCommand,
  ledgerExportCommand,
  ledgerImportCommand,
  ledgerVerifyCommand,
  recordCommand,
  rulesCommand,
  sheetCommand,
];

function help(io: Io): void {
  io.out(
    "Witnessmark advises; the pilot in command decides. The approved manual, the local rules and licensed mechanics come first.\n",
  );
  for (const command of COMMANDS) io.out(`witnessmark ${command.usage}\n    ${command.about}`);
  io.out("\nEvery command takes --json for programs. Exit codes: docs/command-line.md");
}

/** Carries out one command line and gives its exit code; every refusal is a sentence on the error stream. */
export async function run(argv: readonly string[], io: Io): Promise<number> {
  try {
    if (argv.length === 0 || argv[0] === "--help" || argv[0] === "-h" || argv[0] === "help") {
      help(io);
      return argv.length === 0 ? EXIT.usage : EXIT.done;
    }
    const command = COMMANDS.find(({ words }) => words.every((word, index) => argv[index] === word));
    if (command === undefined) {
      const known = COMMANDS.map(({ words }) => words.join(" ")).join(", ");
      throw new Refused("usage", `There is no command "${argv.slice(0, 2).join(" ")}". There are: ${known}.`);
    }
    const given = { io, ...readArguments(command, argv.slice(command.words.length)) };
    if (given.options["help"] === true) {
      io.out(`witnessmark ${command.usage}\n    ${command.about}`);
      return EXIT.done;
    }
    return await command.run(given);
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    io.err(error.message);
    return EXIT[error.exit];
  }
}
