import type { Status } from "@witnessmark/ledger";

/** As much of a reading's verdict as the strip over the answers says. */
interface Judged {
  readonly status: Status;
  readonly says: string;
  readonly margin?: { readonly value: number; readonly text: string };
  readonly missing?: readonly string[];
}

/** "Inside by 0.03 bar: too close to call", "0.12 bar under: pump it up to 5.20 bar". */
export function stripText(verdict: Judged): string {
  const { status, says, margin } = verdict;
  if (status === "open" || margin === undefined) return says;
  if (margin.value < 0) {
    const action = says.includes(": ") ? says.slice(says.indexOf(": ")) : "";
    return `${margin.text}${action}`;
  }
  return status === "clear" ? `Inside by ${margin.text}` : `Inside by ${margin.text}: too close to call`;
}
