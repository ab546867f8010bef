import { writeLedger } from "@witnessmark/ledger";
import { type Command, oneWord, textOption } from "../arguments.ts";
import { EXIT } from "../exit-code.ts";
import { LEDGER_OPTIONS, loadLedger } from "../ledger-source.ts";

export const ledgerExportCommand: Command = {
  words: ["ledger", "export"],
  usage: "ledger export <registration> [--output file.jsonl] [--data folder | --database url]",
  about: "Writes the whole ledger of one aircraft as JSON Lines.",
  options: { ...LEDGER_OPTIONS, output: { type: "string", short: "o" } },
  async run(given) {
    const { io, options } = given;
    const registration = oneWord(given, ledgerExportCommand, "a registration");
    const ledger = await loadLedger(given, registration);
    const text = await writeLedger(
      {
        aircraft: ledger.aircraft,
        operator: ledger.operator,
        exportedAt: new Date(io.now_ms()).toISOString(),
      },
      ledger.events,
    );
    const output = textOption(given, "output") ?? `${registration}.jsonl`;
    await io.writeBytes(output, text);
    if (options["json"] === true) io.err(JSON.stringify({ file: output, events: ledger.events.length }));
    else io.err(`${output}: ${ledger.events.length} events.`);
    return EXIT.done;
  },
};
