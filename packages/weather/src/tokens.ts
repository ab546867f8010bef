/** One run of characters of the pasted text. */
export interface Token {
  /** In capitals, with plain signs. */
  readonly text: string;
  /** Whether it is the first of its line, or follows a closing "=". */
  readonly opens: boolean;
}

/** Signs that word processors and web pages put in place of plain ones. */
const PLAIN: readonly (readonly [RegExp, string])[] = [
  [/[\u2010-\u2015\u2212\uFE63\uFF0D]/gu, "-"],
  [/[\u2044\u2215\uFF0F]/gu, "/"],
  [/\uFF0B/gu, "+"],
  [/[\u200B-\u200D\u2060\uFEFF\u00AD]/gu, ""],
];

/**
 * Cuts a pasted text into tokens. Nothing of it is dropped but white space, invisible characters and the "=" that
 * closes a report. Lower case, tabs, line breaks and non-breaking spaces are as good as capitals and spaces.
 */
export function tokenise(text: string): readonly Token[] {
  let plain = text;
  for (const [from, to] of PLAIN) plain = plain.replace(from, to);
  const tokens: Token[] = [];
  for (const line of plain.toUpperCase().split(/[\r\n\u2028\u2029\u0085]+/u)) {
    let opens = true;
    for (const run of line.split(/\s+/u)) {
      for (const part of run.split(/(=+)/u)) {
        if (part === "") continue;
        if (part.startsWith("=")) {
          opens = true;
          continue;
        }
        tokens.push({ text: part, opens });
        opens = false;
      }
    }
  }
  return tokens;
}
