import { readFile } from "node:fs/promises";
import { readBook } from "@witnessmark/book";
import { generateHistory, type HistoryOptions } from "@witnessmark/ledger";
import { checkLike } from "./check-like.ts";
import { pushAll } from "./past-readings.ts";

const BOOK = new URL("../../books/zz-skr.yaml", import.meta.url);
const DAY_ms = 86_400_000;
const YEAR_ms = 365.25 * DAY_ms;

/** Years of the demo's first aircraft, up to yesterday, under a registration of their own. */
export async function longPast(
  registration: string,
  given: Pick<HistoryOptions, "years" | "flightsPerYear"> & { readonly operator: string },
): ReturnType<typeof generateHistory> {
  const text = (await readFile(BOOK, "utf8")).replace(/^(\s*registration:).*$/m, `$1 ${registration}`);
  const read = await readBook(text, "zz-skr.yaml");
  if (!read.ok) throw new Error(`long past: expected a book without faults, found ${read.faults.length}`);
  const { book } = read;
  return generateHistory({
    ...given,
    seed: 20_310_101,
    aircraft: registration,
    checks: book.checks.map((check) => checkLike(book, check)),
    groundGear: book.groundGear.map(({ id, count, stowedIn: [where = "cabin"] }) => ({
      item: id,
      count,
      stowedIn: where,
    })),
    book: { sha256: book.sha256, revision: book.revision, type: book.aircraft.type, text },
    start_ms: Date.now() - given.years * YEAR_ms - DAY_ms,
  });
}

/** As many entries as make a ledger long: a phone that is new to it leaves some at the server. @returns how many */
export async function pushLongPast(url: string, registration: string): Promise<number> {
  const about = (await (await fetch(`${url}/api/about`)).json()) as { readonly operator: string };
  const history = await longPast(registration, { years: 1, flightsPerYear: 150, operator: about.operator });
  await pushAll(url, registration, history);
  return history.length;
}
