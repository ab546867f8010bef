import { recordOfLedger } from "@witnessmark/sheet";
import { recordOfSource, renderRecordPdf, type SourceRecord } from "@witnessmark/sheet/pdf";
import { type Command, type Given, oneWord, textOption } from "../arguments.ts";
import { EXIT } from "../exit-code.ts";
import { faultLine } from "../fault-line.ts";
import { isFile, LEDGER_OPTIONS, loadLedger, withStoredLedger } from "../ledger-source.ts";
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
    const result = await recordFrom(given, oneWord(given, recordCommand, "a ledger file or a registration"));
    if (!result.ok) {
      if (result.why === "bad-period") throw new Refused("usage", `--${result.says}.`);
      throw new Refused("unreadable", `${result.says}.`);
    }
    const { record, file: ledgerText } = result;
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

/** Of a file all of it is read and judged; out of the database it comes page by page. */
async function recordFrom(given: Given, from: string): Promise<SourceRecord> {
  const { io } = given;
  const asked = { from: textOption(given, "from"), to: textOption(given, "to"), now_ms: io.now_ms() };
  if (!isFile(from)) return await withStoredLedger(given, from, (ledger) => recordOfSource(ledger, asked));
  const { events, faults } = await loadLedger(given, from);
  for (const fault of faults) io.err(`The ledger: ${faultLine(fault)}`);
  const result = await recordOfLedger(events, { ...asked, faults });
  return result.ok ? { ok: true, record: result.record, file: result.ledgerText } : result;
}
