import type { LedgerEvent } from "@witnessmark/ledger";
import { type Client, NoAnswer, PAGE_EVENTS, Refused } from "../client.ts";
import { AIRCRAFT, TestDevice } from "./test-device.ts";

/**
 * A phone that keeps to the rules of the protocol: it keeps every event of its aircraft, sends its own until each is
 * answered, and starts again from zero when it finds another epoch, a head behind its place, or another history.
 */
export class TestPhone {
  readonly device: TestDevice;
  readonly #aircraft: string;
  /** Everything it holds, by id. */
  readonly ledger = new Map<string, LedgerEvent>();
  /** Ids of its own events that the server has acknowledged, with the number that it gave. */
  readonly acknowledged = new Map<string, number>();
  #toSend: LedgerEvent[] = [];
  #after = 0;
  #afterId: string | undefined;
  #epoch: string | null = null;

  constructor(aircraft = AIRCRAFT) {
    this.#aircraft = aircraft;
    this.device = new TestDevice(aircraft);
  }

  async record(count: number): Promise<void> {
    const made = await this.device.make(count);
    for (const event of made) this.ledger.set(event.id, event);
    this.#toSend.push(...made);
  }

  /** Sends what waits, in batches. @throws {NoAnswer} when the server goes away; what was not answered stays */
  async push(client: Client, batch = PAGE_EVENTS): Promise<void> {
    while (this.#toSend.length > 0) {
      const sent = this.#toSend.slice(0, batch);
      const { results } = await client.push(this.#aircraft, sent);
      for (const result of results) {
        if (!("ledgerSeq" in result)) throw new Error(`Expected ${result.id} to be kept: ${result.reason}`);
        this.acknowledged.set(result.id, result.ledgerSeq);
      }
      this.#toSend = this.#toSend.slice(sent.length);
    }
  }

  async pull(client: Client): Promise<void> {
    for (;;) {
      const page = await this.#page(client);
      if (page === null || (this.#epoch !== null && page.epoch !== this.#epoch) || this.#after > page.head) {
        await this.#startAgain(client);
        continue;
      }
      this.#epoch = page.epoch;
      for (const { ledgerSeq, event } of page.events) {
        if (ledgerSeq !== this.#after + 1)
          throw new Error(`Expected number ${this.#after + 1}, found ${ledgerSeq}.`);
        this.ledger.set(event.id, event);
        this.#after = ledgerSeq;
        this.#afterId = event.id;
      }
      if (this.#after === page.head) return;
    }
  }

  async exchange(client: Client): Promise<void> {
    await this.push(client);
    await this.pull(client);
  }

  async #page(client: Client) {
    try {
      return await client.pull(this.#aircraft, {
        after: this.#after,
        ...(this.#afterId === undefined ? {} : { afterId: this.#afterId }),
      });
    } catch (error) {
      if (error instanceof Refused && error.code === "another-history") return null;
      throw error;
    }
  }

  /** Whatever this phone holds and the server lacks is sent again, other devices' events too. */
  async #startAgain(client: Client): Promise<void> {
    this.#after = 0;
    this.#afterId = undefined;
    this.#epoch = null;
    const { devices } = await client.devices(this.#aircraft);
    const waiting = new Set(this.#toSend.map(({ id }) => id));
    const lacking = [...this.ledger.values()]
      .filter(({ id, device, deviceSeq }) => !waiting.has(id) && deviceSeq > (devices[device] ?? 0))
      .sort((a, b) => a.deviceSeq - b.deviceSeq);
    this.#toSend = [...lacking, ...this.#toSend];
    await this.push(client);
  }
}

/** Whether an error only says that the server went away. */
export const isGone = (error: unknown): boolean => error instanceof NoAnswer;
