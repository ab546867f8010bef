import type { BookFault } from "../book.ts";

/** The fault as one line for a person: where, what was expected, what was found, what to do. */
export function faultSentence(fault: BookFault): string {
  const where = [
    fault.file,
    ...(fault.line > 0 ? [`line ${fault.line}`, `column ${fault.column}`] : []),
    ...(fault.path === "" ? [] : [fault.path]),
  ].join(", ");
  const remedy = fault.remedy === undefined ? "" : `; ${fault.remedy}`;
  return `${where}: expected ${fault.expected}, found ${fault.found}${remedy}`;
}
