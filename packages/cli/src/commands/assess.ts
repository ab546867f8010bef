import { type Assessment, assess, standing, type Verdict } from "@witnessmark/assess";
import type { LedgerEvent } from "@witnessmark/ledger";
import { sheetOfDecision } from "@witnessmark/sheet";
import { type Command, type Given, oneWord, textOption } from "../arguments.ts";
import { EXIT } from "../exit-code.ts";
import { faultLine } from "../fault-line.ts";
import { LEDGER_OPTIONS, loadLedger, stateAndBook } from "../ledger-source.ts";
import { Refused } from "../refused.ts";

const CAUTION =
  "Witnessmark advises; the pilot in command decides. The approved manual, the local rules and licensed mechanics come first.";

/** The moment of `--at`, or now. @throws {Refused} */
function moment_ms(given: Given): number {
  const text = textOption(given, "at");
  if (text === undefined) return given.io.now_ms();
  const at_ms = Date.parse(text);
  if (!/T.*(Z|[+-]\d\d:\d\d)$/.test(text) || !Number.isFinite(at_ms)) {
    throw new Refused(
      "usage",
      `--at: expected a moment with its offset, such as 2026-11-12T08:20:00+01:00; found "${text}".`,
    );
  }
  return at_ms;
}

const exitOf = (assessment: Assessment): number => {
  switch (assessment.status) {
    case "clear":
      return EXIT.done;
    case "caution":
      return EXIT.caution;
    case "open":
      return EXIT.open;
    case "stop":
      return EXIT.stop;
    default:
      return assessment.status satisfies never;
  }
};

function printVerdict(given: Given, verdict: Verdict): void {
  const { io } = given;
  const margin = verdict.margin === undefined ? "" : `  [${verdict.margin.text}]`;
  io.out(`${verdict.status.toUpperCase().padEnd(8)}${verdict.title}${margin}`);
  io.out(`        ${verdict.says}`);
  if (given.options["working"] !== true) return;
  for (const { label, value } of verdict.working.lines) io.out(`          ${label}: ${value}`);
  if (verdict.working.formula !== undefined) io.out(`          ${verdict.working.formula.text}`);
  for (const source of verdict.sources)
    io.out(
      `          Source: ${[source.title, source.locator].filter((part) => part !== undefined).join(", ")}`,
    );
}

/** Whether the last decision's assessment comes out the same again, and what to say of it. */
async function recomputed(
  events: readonly LedgerEvent[],
  decision: string,
): Promise<{ readonly matches: boolean; readonly says: string }> {
  const result = await sheetOfDecision(events, decision);
  if (!result.ok) return { matches: false, says: `It cannot be worked out again: ${result.says}.` };
  return result.check.matches
    ? { matches: true, says: "Worked out again from the ledger, its assessment comes out the same." }
    : {
        matches: false,
        says: `Worked out again, its assessment does not come out the same: ${result.check.why}.`,
      };
}

export const assessCommand: Command = {
  words: ["assess"],
  usage:
    "assess <file.jsonl | registration> [--at moment] [--book file.yaml] [--all] [--working] [--data folder | --database url]",
  about: "Says what stands between an aircraft and flight, from its ledger alone.",
  options: {
    ...LEDGER_OPTIONS,
    at: { type: "string" },
    book: { type: "string" },
    all: { type: "boolean" },
    working: { type: "boolean" },
  },
  async run(given) {
    const { io, options } = given;
    const ledger = await loadLedger(given, oneWord(given, assessCommand, "a ledger file or a registration"));
    const { state, book } = await stateAndBook(given, ledger);
    const at_ms = moment_ms(given);
    const assessment = assess(book, state, null, at_ms);
    const last = state.decisions.at(-1);
    const stands = last === undefined ? null : standing(book, state, last, at_ms);
    const again = last === undefined ? null : await recomputed(ledger.events, last.id);
    const sound = ledger.faults.length === 0 && again?.matches !== false;
    if (options["json"] === true) {
      io.out(
        JSON.stringify(
          {
            assessment,
            decision: last ?? null,
            standing: stands,
            recomputed: again,
            ledgerFaults: ledger.faults,
          },
          null,
          2,
        ),
      );
      return sound ? exitOf(assessment) : EXIT.faults;
    }
    for (const fault of ledger.faults) io.out(`The ledger: ${faultLine(fault)}`);
    io.out(
      `${assessment.aircraft}, ${book.aircraft.type}, book revision ${assessment.book.revision}, at ${assessment.at}`,
    );
    io.out(`${assessment.headline}.`);
    const { counts } = assessment;
    io.out(`${counts.stop} stop, ${counts.caution} caution, ${counts.open} open, ${counts.clear} clear\n`);
    for (const verdict of assessment.verdicts)
      if (options["all"] === true || verdict.status !== "clear") printVerdict(given, verdict);
    if (last !== undefined && stands !== null) {
      io.out(
        `\nLast decision: ${last.answer === "go" ? "go" : "not going yet"}, ${last.author.name}, ${last.recordedAt}. ${stands.stands ? "It stands." : `It has lapsed: ${stands.because}`}`,
      );
      if (again !== null) io.out(again.says);
    }
    io.out(`\n${book.notice}\n${CAUTION}`);
    return sound ? exitOf(assessment) : EXIT.faults;
  },
};
