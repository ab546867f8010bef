import { isList } from "./differences.ts";
import type { Plain } from "./edit-text.ts";
import { valueAt } from "./plain-of.ts";

/** What a book does not have, and what stays open for want of it. */
export interface MissingPart {
  /** The page on which it is put in. */
  readonly section: string;
  /** "Without a landing table the runway stays open." */
  readonly says: string;
}

/** What a book lacks for which verdicts. A book can be walked and issued without any of it. */
export function missingFor(plain: Plain): readonly MissingPart[] {
  const missing: MissingPart[] = [];
  const unless = (there: boolean, section: string, says: string) => {
    if (!there) missing.push({ section, says });
  };
  const has = (...path: readonly string[]) => {
    const value = valueAt(plain, path);
    return isList(value) ? value.length > 0 : value !== undefined && value !== null;
  };
  // what has no engine burns nothing, and is taken up by others
  const isGlider = valueAt(plain, ["aircraft", "engine"]) === "none";
  const tables = valueAt(plain, ["performance", "tables"]);
  const gives = (quantity: string) =>
    isList(tables) && tables.some((table) => valueAt(table, ["quantity"]) === quantity);
  unless(has("gauges"), "gauges", "Without gauges no check asks for a reading, and no limit is held.");
  unless(has("loading"), "loading", "Without empty mass and limits, mass and balance stay open.");
  if (!isGlider) {
    unless(has("loading", "tanks"), "tanks", "Without tanks the fuel on board stays open.");
    unless(has("fuel"), "fuel", "Without what it burns, the fuel for a flight stays open.");
    unless(gives("take-off-over-50ft"), "tables", "Without a take-off table the runway stays open.");
  }
  unless(gives("landing-over-50ft"), "tables", "Without a landing table the runway stays open.");
  if (!isGlider) unless(gives("climb-gradient"), "tables", "Without a climb table the climb stays open.");
  unless(has("performance"), "performance", "Without a crosswind figure the wind stays open.");
  unless(has("cabin"), "cabin", "Unless it says that the cabin is not pressurised, oxygen stays open.");
  unless(has("iceProtection"), "ice-protection", "Without its ice protection, flight in icing stays open.");
  unless(
    has("equipment"),
    "equipment",
    "Without equipment no discrepancy is held against what a flight needs.",
  );
  unless(has("timedItems"), "timed-items", "Without timed items nothing is known to run out.");
  unless(has("fields"), "fields", "Without fields each runway is typed in for each flight.");
  return missing;
}
