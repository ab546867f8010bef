import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { faultSentence, readBook } from "@witnessmark/book";
import { type Author, newId } from "@witnessmark/ledger";
import type { OperatorStore } from "@witnessmark/store";
import { sift } from "../sift.ts";
import { demoHistory } from "./demo-history.ts";

export interface SeedOptions {
  readonly own: OperatorStore;
  readonly operator: string;
  /** Where the books of the demo are, as YAML. */
  readonly books: string;
  /** Milliseconds since 1970 UTC. */
  readonly now_ms: number;
  /** Local time minus UTC, minutes, east positive. */
  readonly zone_min: number;
  /** Two years of flying, or the last walk and flight alone. */
  readonly past: "short" | "long";
}

/**
 * Puts the demo aircraft into an empty store, each whole or not at all. Does nothing when there is an aircraft already.
 *
 * @returns the registrations that were added
 * @throws {Error} when a book of the demo has faults; the demo is part of the program, so that is a fault of it
 */
export async function seedDemo(options: SeedOptions): Promise<readonly string[]> {
  const { own, operator, books, now_ms, zone_min, past } = options;
  if (!existsSync(books) || (await own.heads()).length > 0) return [];
  const device = newId();
  const author: Author = { id: newId(), name: "Demo", role: "owner" };
  const added: string[] = [];
  for (const file of readdirSync(books)
    .filter((name) => name.endsWith(".yaml"))
    .sort()) {
    const text = readFileSync(join(books, file), "utf8");
    const result = await readBook(text, file);
    if (!result.ok) throw new Error(`The demo's book ${file} has faults. ${faultSentence(result.faults[0])}`);
    const { registration } = result.book.aircraft;
    const events = await demoHistory(result.book, text, { operator, device, author, now_ms, zone_min, past });
    const arrivals = await Promise.all(events.map((event) => sift(event, operator, registration)));
    const refused = arrivals.find((arrival) => arrival.kind === "unsound");
    if (refused !== undefined)
      throw new Error(`The demo's history of ${registration} does not hold: ${refused.reason}`);
    await own.append(registration, arrivals, now_ms);
    added.push(registration);
  }
  return added;
}
