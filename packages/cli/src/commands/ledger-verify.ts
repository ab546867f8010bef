import { readLedger } from "@witnessmark/ledger";
import type { Command } from "../arguments.ts";
import { oneWord } from "../arguments.ts";
import { EXIT } from "../exit-code.ts";
import { faultLine } from "../fault-line.ts";

export const ledgerVerifyCommand: Command = {
  words: ["ledger", "verify"],
  usage: "ledger verify <file.jsonl>",
  about: "Checks a ledger file: layout, every hash, every device's chain, every signature, nothing cut off.",
  options: {},
  async run(given) {
    const { io, options } = given;
    const path = oneWord(given, ledgerVerifyCommand, "a ledger file");
    const read = await readLedger(await io.readText(path), { now_ms: io.now_ms() });
    const devices = new Set(read.events.map((event) => event.device)).size;
    if (options["json"] === true) {
      io.out(
        JSON.stringify(
          {
            file: path,
            header: read.header,
            events: read.events.length,
            devices,
            faults: read.faults,
            remarks: read.remarks,
          },
          null,
          2,
        ),
      );
    } else {
      for (const fault of read.faults) io.out(faultLine(fault));
      for (const remark of read.remarks) io.out(`To know: ${remark.says}.`);
      const what = `${path}: ${read.events.length} events of ${devices === 1 ? "one device" : `${devices} devices`}`;
      io.out(
        read.faults.length === 0
          ? `${what}, as they were made.`
          : `${what}, ${read.faults.length === 1 ? "one fault" : `${read.faults.length} faults`}.`,
      );
    }
    return read.faults.length === 0 ? EXIT.done : EXIT.faults;
  },
};
