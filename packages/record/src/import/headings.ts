import { type UnitId, unitFromText } from "@witnessmark/engine";
import type { Matched } from "./answer.ts";

/** A unit as people write it, in capitals too. */
export const unitOf = (text: string): UnitId | undefined =>
  unitFromText(text) ?? unitFromText(text.toLowerCase());

const IN_BRACKETS = /[([]\s*([^)\]]+?)\s*[)\]]\s*$/;
const LAST_PART = /(?:,\s*|\bin\s+|[_\s])([^\s,_]+)$/;

/** The unit that a heading names: `Pressure (bar)`, `Value, psi`, `value_bar`. */
export function unitInHeading(heading: string): UnitId | undefined {
  const named = IN_BRACKETS.exec(heading)?.[1] ?? LAST_PART.exec(heading)?.[1];
  return named === undefined ? undefined : unitOf(named);
}

/** A heading without its unit, as words in lower case. */
function plainHeading(heading: string): string {
  const named = unitInHeading(heading);
  const bare = heading.replace(IN_BRACKETS, "");
  return (named === undefined ? bare : bare.replace(LAST_PART, ""))
    .toLowerCase()
    .replace(/[_\s-]+/g, " ")
    .trim();
}

/** What each column is, by its heading; each thing at most once, the better word first. */
export function proposeColumns<R extends string>(
  headings: readonly string[],
  words: readonly { readonly role: R; readonly names: readonly string[] }[],
): Matched<R> {
  const columns: (R | "")[] = headings.map(() => "");
  const full = headings.map((heading) =>
    heading
      .toLowerCase()
      .replace(/[_\s-]+/g, " ")
      .trim(),
  );
  const plain = headings.map(plainHeading);
  for (const { role, names } of words) {
    for (const name of names) {
      const at = columns.findIndex(
        (taken, place) => taken === "" && (full[place] === name || plain[place] === name),
      );
      if (at < 0) continue;
      columns[at] = role;
      break;
    }
  }
  return columns;
}

export const columnOf = <R extends string>(columns: Matched<R>, role: R): number => columns.indexOf(role);
