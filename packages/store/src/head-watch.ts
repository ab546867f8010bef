import type { AircraftHead } from "./store.ts";

type Listener = (change: AircraftHead) => void;

/**
 * Who wants to know of new events of one operator, and what they were told last. A number is told once, however many
 * ways it is learnt.
 */
export class HeadWatch {
  readonly #readHeads: () => Promise<readonly AircraftHead[]>;
  readonly #listeners = new Set<Listener>();
  readonly #told = new Map<string, number>();

  constructor(readHeads: () => Promise<readonly AircraftHead[]>) {
    this.#readHeads = readHeads;
  }

  get isWatched(): boolean {
    return this.#listeners.size > 0;
  }

  /** @returns call it to stop */
  add(listener: Listener): () => void {
    // One entry per call, so that a function given twice is told twice and stopped one at a time.
    const entry: Listener = (change) => listener(change);
    this.#listeners.add(entry);
    return () => {
      this.#listeners.delete(entry);
      if (!this.isWatched) this.#told.clear();
    };
  }

  tell(change: AircraftHead): void {
    if (!this.isWatched || this.#told.get(change.aircraft) === change.head) return;
    this.#told.set(change.aircraft, change.head);
    for (const listener of [...this.#listeners]) listener(change);
  }

  /** Reads every head and tells what is new: heals whatever a lost signal left out. */
  async refresh(): Promise<void> {
    if (!this.isWatched) return;
    for (const change of await this.#readHeads()) this.tell(change);
  }
}
