import { Client, type ClientConfig } from "pg";
import type { AircraftHead } from "../store.ts";

const CHANNEL = "witnessmark_head";
const RECONNECT_AFTER_MS = 2_000;

export interface Announcement extends AircraftHead {
  readonly operator: string;
}

/** Throws away what is no announcement: anyone with access to the database can send one. */
export function readAnnouncement(payload: string): Announcement | null {
  try {
    const value: unknown = JSON.parse(payload);
    if (!Array.isArray(value)) return null;
    const [operator, aircraft, head]: readonly unknown[] = value;
    return typeof operator === "string" && typeof aircraft === "string" && typeof head === "number"
      ? { operator, aircraft, head }
      : null;
  } catch {
    return null;
  }
}

/** The statement that tells every process, for after the commit: within it, announcing would make pushes queue up. */
export function announceStatement({ operator, aircraft, head }: Announcement) {
  return { text: "select pg_notify($1, $2)", values: [CHANNEL, JSON.stringify([operator, aircraft, head])] };
}

/** One connection that listens for as long as somebody wants to know, and comes back when it is lost. */
export class Announcements {
  readonly #config: ClientConfig;
  readonly #onAnnouncement: (announcement: Announcement) => void;
  readonly #onGap: () => void;
  readonly #onProblem: (problem: unknown) => void;
  #client: Client | null = null;
  #again: NodeJS.Timeout | null = null;
  #wanted = false;

  /** @param onGap called once listening, after which nothing is missed: what came before must be looked up */
  constructor(
    config: ClientConfig,
    onAnnouncement: (announcement: Announcement) => void,
    onGap: () => void,
    onProblem: (problem: unknown) => void,
  ) {
    this.#config = config;
    this.#onAnnouncement = onAnnouncement;
    this.#onGap = onGap;
    this.#onProblem = onProblem;
  }

  async setWanted(wanted: boolean): Promise<void> {
    if (wanted === this.#wanted) return;
    this.#wanted = wanted;
    if (wanted) {
      await this.#listen();
      return;
    }
    if (this.#again !== null) clearTimeout(this.#again);
    this.#again = null;
    const client = this.#client;
    this.#client = null;
    await client?.end();
  }

  async #listen(): Promise<void> {
    const client = new Client(this.#config);
    this.#client = client;
    client.on("notification", ({ payload }) => {
      const announcement = readAnnouncement(payload ?? "");
      if (announcement !== null) this.#onAnnouncement(announcement);
    });
    client.on("error", (error) => this.#lost(client, error));
    client.on("end", () => this.#lost(client, null));
    try {
      await client.connect();
      await client.query(`listen ${CHANNEL}`);
      this.#onGap();
    } catch (error) {
      this.#lost(client, error);
    }
  }

  #lost(client: Client, problem: unknown): void {
    if (client !== this.#client) return;
    this.#client = null;
    if (problem !== null) this.#onProblem(problem);
    client.end().catch(this.#onProblem);
    if (!this.#wanted) return;
    this.#again = setTimeout(() => void this.#listen(), RECONNECT_AFTER_MS);
    this.#again.unref();
  }
}
