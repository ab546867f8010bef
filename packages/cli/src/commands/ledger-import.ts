import { readLedger } from "@witnessmark/ledger";
import { sift } from "@witnessmark/server";
import { type Command, oneWord } from "../arguments.ts";
import { EXIT } from "../exit-code.ts";
import { faultLine } from "../fault-line.ts";
import { LEDGER_OPTIONS } from "../ledger-source.ts";
import { withStore } from "../open-database.ts";
import { Refused } from "../refused.ts";

const BATCH = 500;

export const ledgerImportCommand: Command = {
  words: ["ledger", "import"],
  usage: "ledger import <file.jsonl> [--data folder | --database url]",
  about: "Adds the events of a ledger file to the database. Events it has already are passed over.",
  options: { ...LEDGER_OPTIONS, anyway: { type: "boolean" } },
  async run(given) {
    const { io, options } = given;
    const path = oneWord(given, ledgerImportCommand, "a ledger file");
    const read = await readLedger(await io.readText(path), { now_ms: io.now_ms() });
    const aircraft = read.events[0]?.aircraft;
    if (read.faults.length > 0 || aircraft === undefined) {
      for (const fault of read.faults) io.err(faultLine(fault));
      if (options["anyway"] !== true || aircraft === undefined) {
        throw new Refused(
          "faults",
          `${path} has faults (above), and nothing of it was taken. With --anyway its sound events are taken and the others are set aside.`,
        );
      }
    }
    const counts = { accepted: 0, duplicate: 0, conflict: 0, quarantined: 0 };
    const aside: string[] = [];
    await withStore(given, async (store, operator) => {
      for (let at = 0; at < read.events.length; at += BATCH) {
        const arrivals = await Promise.all(
          read.events.slice(at, at + BATCH).map((event) => sift(event, operator, aircraft)),
        );
        const { results } = await store.append(aircraft, arrivals, io.now_ms());
        for (const result of results) {
          counts[result.outcome] += 1;
          if ("reason" in result) aside.push(`${result.id}: ${result.reason}`);
        }
      }
    });
    if (options["json"] === true) io.out(JSON.stringify({ file: path, aircraft, ...counts, aside }, null, 2));
    else {
      for (const line of aside) io.err(`Set aside: ${line}`);
      io.out(
        `${aircraft}: ${counts.accepted} taken, ${counts.duplicate} known already, ${counts.conflict + counts.quarantined} set aside.`,
      );
    }
    return aside.length === 0 ? EXIT.done : EXIT.faults;
  },
};
