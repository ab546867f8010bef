import type { Decision, Status } from "@witnessmark/ledger";
import { ended } from "../ended.ts";
import { grouped } from "../grouped.ts";
import { decisionTitle } from "../sheet.ts";
import type { RecordDecision } from "./aircraft-record.ts";
import { momentWords } from "./day-words.ts";
import { type Names, personWords, verdictName } from "./names.ts";

const ORDER: readonly Status[] = ["stop", "caution", "open"];

function reasonWords({ verdict, words, basis }: Decision["reasons"][number], names: Names): string {
  const said = `${verdictName(verdict, names)}: ${words}`;
  return basis === undefined ? said : `${ended(said)} Basis: ${basis}`;
}

/** Decisions in the order in which they were signed. */
export const decisionsOf = (decisions: readonly Decision[], names: Names): readonly RecordDecision[] =>
  decisions.map((decision) => ({
    id: decision.id,
    at: decision.recordedAt,
    by: personWords(decision.author),
    entry: decision.event,
    signed: decision.signed,
    title: decisionTitle(decision),
    status: ORDER.find((status) => decision.counts[status] > 0) ?? "clear",
    flight:
      decision.flight === null
        ? "No flight named"
        : `${decision.flight.from} to ${decision.flight.to}, off blocks ${momentWords(decision.flight.offBlocks)}`,
    counts: decision.counts,
    reasons: [
      ...(decision.words === undefined ? [] : [decision.words]),
      ...decision.reasons.map((reason) => reasonWords(reason, names)),
    ],
    hash: grouped(decision.hash),
  }));
