import { JASC_CHAPTERS, JASC_CODES } from "./jasc-table.ts";

const WIRING = "97";

/** What a four-figure code of the JASC table names; `undefined` when the table here does not have it. */
export function jascTitle(code: string): string | undefined {
  if (Object.hasOwn(JASC_CODES, code)) return JASC_CODES[code];
  const chapter = jascChapter(code);
  if (chapter === undefined || !/^\d{4}$/.test(code)) return undefined;
  // In every chapter 00 is the system as a whole and 97 its wiring (the latter from memory).
  if (code.endsWith("00")) return chapter;
  return code.endsWith(WIRING) ? `${chapter}: wiring` : undefined;
}

/** The system that the first two figures of a code name. */
export function jascChapter(code: string): string | undefined {
  const chapter = code.slice(0, 2);
  return Object.hasOwn(JASC_CHAPTERS, chapter) ? JASC_CHAPTERS[chapter] : undefined;
}
