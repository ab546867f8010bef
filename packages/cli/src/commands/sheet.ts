import { sheetOfDecision } from "@witnessmark/sheet";
import { renderSheetPdf } from "@witnessmark/sheet/pdf";
import { type Command, oneWord, textOption } from "../arguments.ts";
import { EXIT } from "../exit-code.ts";
import { faultLine } from "../fault-line.ts";
import { LEDGER_OPTIONS, loadLedger } from "../ledger-source.ts";
import { Refused } from "../refused.ts";

export const sheetCommand: Command = {
  words: ["sheet"],
  usage:
    "sheet <file.jsonl | registration> [--decision id] [--output sheet.pdf] [--letter] [--data folder | --database url]",
  about: "Prints the sheet of a signed decision as a PDF, with the signed record attached.",
  options: {
    ...LEDGER_OPTIONS,
    decision: { type: "string" },
    output: { type: "string", short: "o" },
    letter: { type: "boolean" },
  },
  async run(given) {
    const { io, options } = given;
    const ledger = await loadLedger(given, oneWord(given, sheetCommand, "a ledger file or a registration"));
    for (const fault of ledger.faults) io.err(`The ledger: ${faultLine(fault)}`);
    const result = await sheetOfDecision(ledger.events, textOption(given, "decision"));
    if (!result.ok)
      throw new Refused(result.why === "no-such-decision" ? "unreadable" : "faults", `${result.says}.`);
    const { sheet, book, decision, record, check } = result;
    const pdf = await renderSheetPdf({
      sheet,
      book,
      attachments: [
        { name: "decision.json", text: record, description: "The signed decision and its assessment" },
      ],
      at: new Date(decision.recordedAt),
      ...(options["letter"] === true ? { paper: "LETTER" as const } : {}),
    });
    const output =
      textOption(given, "output") ?? `${sheet.registration}-${decision.recordedAt.slice(0, 10)}.pdf`;
    await io.writeBytes(output, pdf);
    if (options["json"] === true)
      io.err(JSON.stringify({ file: output, decision: decision.id, matches: check.matches }));
    else
      io.err(
        `${output}: ${sheet.title}, ${sheet.date}.${sheet.remark === undefined ? "" : ` ${sheet.remark}`}`,
      );
    return check.matches && ledger.faults.length === 0 ? EXIT.done : EXIT.faults;
  },
};
