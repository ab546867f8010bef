import { readLedger } from "@witnessmark/ledger";
import { sift } from "@witnessmark/server";
import { type Command, oneWord } from "../arguments.ts";
import { EXIT } from "../exit-code.ts";
import { faultLine } from "../fault-line.ts";
import { LEDGER_OPTIONS } from "../ledger-source.ts";
import { withStore } from "../open-database.ts";
import { Refused } from "../refused.ts";

const BATCH = 500;
/** So many are named of those that were set aside for one reason; `--json` has them all. */
const NAMED = 3;

/** One sentence for each reason, with its count and the first few: a file of another operator has one for every event. */
function asideLines(aside: readonly { readonly id: string; readonly reason: string }[]): readonly string[] {
  const byReason = new Map<string, string[]>();
  for (const { id, reason } of aside) {
    const ids = byReason.get(reason);
    if (ids === undefined) byReason.set(reason, [id]);
    else ids.push(id);
  }
  return [...byReason].map(([reason, ids]) => {
    if (ids.length === 1) return `Set aside: ${ids[0]}: ${reason}`;
    const first = ids.slice(0, NAMED).join(", ");
    const rest = ids.length > NAMED ? ` and ${(ids.length - NAMED).toLocaleString("en")} more` : "";
    return `Set aside: ${ids.length.toLocaleString("en")} entries. ${reason} They are ${first}${rest}.`;
  });
}

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
    const aside: { readonly id: string; readonly reason: string }[] = [];
    let [done, isStopped] = [0, false];
    await withStore(given, async (store, operator) => {
      const off = io.onStop(() => {
        isStopped = true;
      });
      try {
        for (let at = 0; at < read.events.length && !isStopped; at += BATCH) {
          const arrivals = await Promise.all(
            read.events.slice(at, at + BATCH).map((event) => sift(event, operator, aircraft)),
          );
          const { results } = await store.append(aircraft, arrivals, io.now_ms());
          for (const result of results) {
            counts[result.outcome] += 1;
            if ("reason" in result) aside.push({ id: result.id, reason: result.reason });
          }
          done = Math.min(at + BATCH, read.events.length);
        }
      } finally {
        off();
      }
    });
    const isPart = done < read.events.length;
    if (options["json"] === true)
      io.out(
        JSON.stringify(
          {
            file: path,
            aircraft,
            ...counts,
            left: read.events.length - done,
            aside: aside.map(({ id, reason }) => `${id}: ${reason}`),
          },
          null,
          2,
        ),
      );
    else {
      for (const line of asideLines(aside)) io.err(line);
      io.out(
        `${aircraft}: ${counts.accepted} taken, ${counts.duplicate} known already, ${counts.conflict + counts.quarantined} set aside.`,
      );
    }
    if (isPart) {
      const [of, left] = [read.events.length, read.events.length - done].map((n) => n.toLocaleString("en"));
      io.err(
        `Stopped: ${done.toLocaleString("en")} of ${of} entries were looked at, each whole; ${left} were not. Run the same command again to go on: what is there already is passed over.`,
      );
      return EXIT.stopped;
    }
    return aside.length === 0 ? EXIT.done : EXIT.faults;
  },
};
