import { isStation, isTime, isType } from "./header.ts";
import type { Token } from "./tokens.ts";

export interface Pasted {
  /** What stands before the first report and belongs to none. */
  readonly before: readonly string[];
  readonly reports: readonly (readonly string[])[];
}

const isFlag = (token: string): boolean => /^(?:COR|AMD|AUTO|NIL|CC[A-Z])$/u.test(token);

/** Whether a report begins here, in the middle of a text. */
function begins(tokens: readonly Token[], at: number, current: readonly string[]): boolean {
  const [token, next] = [tokens[at]?.text ?? "", tokens[at + 1]?.text ?? ""];
  const hasTime = current.some((one) => /^\d+Z$/u.test(one));
  if (isType(token)) {
    if (current.length > 0 && current.every((one) => one === token)) return false; // TAF TAF KXXX
    if (token === "SPECI" && current.at(-1) === "NO") return false;
    let after = at + 1;
    while (isFlag(tokens[after]?.text ?? "")) after += 1;
    return (
      (tokens[at]?.opens ?? false) ||
      isStation(tokens[after]?.text ?? "") ||
      isTime(tokens[after]?.text ?? "")
    );
  }
  return hasTime && isStation(token) && isTime(next);
}

/** Cuts a pasted text into reports: at a word of type, and at a station with a time behind it. */
export function splitReports(tokens: readonly Token[]): Pasted {
  const first = tokens.findIndex(
    ({ text }, at) => isType(text) || (isStation(text) && isTime(tokens[at + 1]?.text ?? "")),
  );
  const start = Math.max(first, 0);
  const reports: string[][] = [];
  let current: string[] = [];
  for (let at = start; at < tokens.length; at += 1) {
    const text = tokens[at]?.text ?? "";
    if (current.length > 0 && begins(tokens, at, current)) {
      reports.push(current);
      current = [];
    }
    current.push(text);
  }
  if (current.length > 0) reports.push(current);
  return { before: tokens.slice(0, start).map(({ text }) => text), reports };
}
