import { type Author, type ChainEnd, type LedgerEvent, makeEvents, newId } from "@witnessmark/ledger";

export const OPERATOR = "own";
export const AIRCRAFT = "ZZ-SKR";
const AUTHOR: Author = { id: newId(), name: "A. Pilot", role: "pilot" };
const START_MS = Date.UTC(2031, 4, 6, 7, 8, 9);

/** A device that makes real, sealed events of one aircraft, one after the other. */
export class TestDevice {
  readonly id = newId();
  readonly #operator: string;
  readonly #aircraft: string;
  #last: ChainEnd | null = null;
  #clock: string | null = null;

  constructor(aircraft = AIRCRAFT, operator = OPERATOR) {
    this.#aircraft = aircraft;
    this.#operator = operator;
  }

  /** The next `count` events; the very first introduces the device. */
  async make(count: number): Promise<readonly LedgerEvent[]> {
    const first = this.#last === null;
    const walk = newId();
    const made = await makeEvents(
      {
        operator: this.#operator,
        aircraft: this.#aircraft,
        device: this.id,
        author: AUTHOR,
        last: this.#last,
        clock: this.#clock,
        now_ms: START_MS + (this.#last?.deviceSeq ?? 0) * 1_000,
        zone_min: 120,
        newId,
        key: null,
      },
      Array.from({ length: count }, (_, index) =>
        first && index === 0
          ? { type: "device.introduced", body: { label: "Test", key: { kind: "none", why: "a test" } } }
          : {
              type: "check.answered",
              body: { walk, check: `check-${index}`, answer: "as-it-should-be" },
            },
      ),
    );
    this.#last = made.last;
    this.#clock = made.clock;
    return made.events;
  }
}
