import { type LedgerEvent, ledgerLines, writeLedger } from "@witnessmark/ledger";
import { type Command, type Given, oneWord, textOption } from "../arguments.ts";
import { EXIT } from "../exit-code.ts";
import { isFile, LEDGER_OPTIONS, loadLedger, type StoredLedger, withStoredLedger } from "../ledger-source.ts";

export const ledgerExportCommand: Command = {
  words: ["ledger", "export"],
  usage: "ledger export <registration> [--output file.jsonl] [--data folder | --database url]",
  about: "Writes the whole ledger of one aircraft as JSON Lines.",
  options: { ...LEDGER_OPTIONS, output: { type: "string", short: "o" } },
  async run(given) {
    const { io, options } = given;
    const registration = oneWord(given, ledgerExportCommand, "a registration");
    const output = textOption(given, "output") ?? `${registration}.jsonl`;
    const count = isFile(registration)
      ? await exportFile(given, registration, output)
      : await withStoredLedger(given, registration, async (ledger) => {
          const about = { ...aboutOf(ledger), exportedAt: new Date(io.now_ms()).toISOString() };
          await io.writeBytes(output, ended(ledgerLines(about, ledger.count, oneByOne(ledger))));
          return ledger.count;
        });
    if (options["json"] === true) io.err(JSON.stringify({ file: output, events: count }));
    else io.err(`${output}: ${count} events.`);
    return EXIT.done;
  },
};

const aboutOf = ({ aircraft, operator }: { readonly aircraft: string; readonly operator: string }) => ({
  aircraft,
  operator,
});

async function* oneByOne(ledger: StoredLedger): AsyncGenerator<LedgerEvent> {
  for await (const events of ledger.events()) yield* events;
}

async function* ended(lines: AsyncIterable<string>): AsyncGenerator<string> {
  for await (const line of lines) yield `${line}\n`;
}

async function exportFile(given: Given, from: string, output: string): Promise<number> {
  const ledger = await loadLedger(given, from);
  const about = { ...aboutOf(ledger), exportedAt: new Date(given.io.now_ms()).toISOString() };
  await given.io.writeBytes(output, await writeLedger(about, ledger.events));
  return ledger.events.length;
}
