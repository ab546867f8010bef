import type { LedgerFault } from "@witnessmark/ledger";

/** A ledger's fault as one sentence for a person, with the line of the file where there is one. */
export function faultLine({ line, says }: LedgerFault): string {
  const sentence = says.endsWith(".") ? says : `${says}.`;
  return line === undefined || says.includes(`line ${line}`) ? sentence : `line ${line}: ${sentence}`;
}
