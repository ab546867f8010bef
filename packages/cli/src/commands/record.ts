import { recordOfLedger } from "@witnessmark/sheet";
import { renderRecordPdf } from "@witnessmark/sheet/pdf";
import { type Command, oneWord, textOption } from "../arguments.ts";
import { EXIT } from "../exit-code.ts";
import { faultLine } from "../fault-line.ts";
import { LEDGER_OPTIONS, loadLedger } from "../ledger-source.ts";
import { Refused } from "../refused.ts";

export const recordCommand: Command = {
  words: ["record"],
  usage:
    "record <file.jsonl | registration> [--from YYYY-MM-DD] [--to YYYY-MM-DD] [--out record.pdf] [--letter] [--data folder | --database url]",
  about: "Writes the aircraft's record for a period as a PDF, with the whole ledger attached.",
  options: {
    ...LEDGER_OPTIONS,
    from: { type: "string" },
    to: { type: "string" },
    out: { type: "string", short: "o" },
    letter: { type: "boolean" },
  },
  async run(given) {
    const { io, options } = given;
    const out = textOption(given, "out");
    const isJson = options["json"] === true;
    if (out === undefined && !isJson)
      throw new Refused(
        "usage",
        `Where to? Give the file to write, such as --out record.pdf, or --json to see what it says.\nIt is written: witnessmark ${recordCommand.usage}`,
      );
    const ledger = await loadLedger(given, oneWord(given, recordCommand, "a ledger file or a registration"));
    for (const fault of ledger.faults) io.err(`The ledger: ${faultLine(fault)}`);
    const result = await recordOfLedger(ledger.events, {
      from: textOption(given, "from"),
      to: textOption(given, "to"),
      now_ms: io.now_ms(),
      faults: ledger.faults,
    });
    if (!result.ok) {
      if (result.why === "bad-period") throw new Refused("usage", `--${result.says}.`);
      throw new Refused("unreadable", `${result.says}.`);
    }
    const { record, ledgerText } = result;
    if (isJson) io.out(JSON.stringify(record, null, 2));
    if (out !== undefined) {
      await io.writeBytes(
        out,
        await renderRecordPdf({
          record,
          ledgerText,
          ...(options["letter"] === true ? { paper: "LETTER" } : {}),
        }),
      );
      const { registration, period, ledger: attached } = record;
      io.err(
        `${out}: ${registration}, ${period.from} to ${period.to}, with ${attached.file} in it. ${attached.says}`,
      );
    }
    return record.ledger.isSound ? EXIT.done : EXIT.faults;
  },
};
