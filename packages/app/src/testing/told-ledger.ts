import { readFile } from "node:fs/promises";
import { type Book, readBook } from "@witnessmark/book";
import {
  type AircraftState,
  type Author,
  type KnownEvent,
  makeEvents,
  newId,
  Projection,
} from "@witnessmark/ledger";
import type { Draft } from "../keep/contract.ts";

/** A demo book, read from its file. */
export async function demoBook(name: string): Promise<Book> {
  const address = new URL(`../../../../books/${name}.yaml`, import.meta.url);
  const result = await readBook(await readFile(address, "utf8"), `${name}.yaml`);
  if (!result.ok) throw new Error(`${name}: expected a book that reads, found ${result.faults[0].expected}`);
  return result.book;
}

export const person = (name: string): Author => ({ id: newId(), name, role: "pilot" });

/** A ledger that is told entry by entry, as phones tell it: a device for each person, a second between entries. */
export class ToldLedger {
  readonly #projection: Projection;
  readonly #devices = new Map<
    string,
    { id: string; last: { deviceSeq: number; hash: string } | null; clock: string | null }
  >();
  readonly #aircraft: string;
  now_ms: number;

  constructor(aircraft: string, from_ms: number) {
    this.#aircraft = aircraft;
    this.#projection = new Projection(aircraft);
    this.now_ms = from_ms;
  }

  get state(): AircraftState {
    return this.#projection.state;
  }

  async tell(author: Author, ...drafts: readonly Draft[]): Promise<readonly KnownEvent[]> {
    const device = this.#devices.get(author.id) ?? { id: newId(), last: null, clock: null };
    this.now_ms += 1000;
    const made = await makeEvents(
      {
        operator: "isles",
        aircraft: this.#aircraft,
        device: device.id,
        author,
        last: device.last,
        clock: device.clock,
        now_ms: this.now_ms,
        zone_min: 0,
        newId,
        key: null,
      },
      drafts,
    );
    this.#devices.set(author.id, { id: device.id, last: made.last, clock: made.clock });
    this.#projection.add(made.events);
    return made.events;
  }
}
