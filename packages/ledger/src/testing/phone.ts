import type { Author, KnownEvent } from "../event.ts";
import { merge, tick } from "../hlc.ts";
import { SCHEMA_VERSION } from "../known.ts";
import { type EventDraft, sealEvent, type UnsealedEvent } from "../make-event.ts";
import { type DeviceKey, newDeviceKey } from "../signature.ts";
import { wallTime } from "../wall-time.ts";
import type { Random } from "./random.ts";

/** A phone of a generated history. It makes events without their seals; `sealAll` puts those on afterwards. */
export class Phone {
  readonly device: string;
  readonly made: UnsealedEvent[] = [];
  #clock: string | null = null;
  #wrong_ms: number;
  readonly #random: Random;
  readonly #about: {
    readonly operator: string;
    readonly aircraft: string;
    readonly author: Author;
    /** This phone's clock minus the true time, until it is set. */
    readonly wrong_ms: number;
    readonly zone_min: number;
  };

  constructor(random: Random, start_ms: number, about: Phone["about"]) {
    this.#random = random;
    this.#about = about;
    this.#wrong_ms = about.wrong_ms;
    this.device = random.uuidv7(start_ms);
  }

  get about() {
    return this.#about;
  }

  /** Makes an event at this true time. */
  make(true_ms: number, draft: EventDraft): UnsealedEvent {
    const { operator, aircraft, author, zone_min } = this.#about;
    const wall_ms = true_ms + this.#wrong_ms;
    this.#clock = tick(this.#clock, wall_ms);
    const event: UnsealedEvent = {
      id: this.#random.uuidv7(true_ms),
      operator,
      aircraft,
      device: this.device,
      deviceSeq: this.made.length + 1,
      author,
      hlc: this.#clock,
      recordedAt: wallTime(wall_ms, zone_min),
      schemaVersion: SCHEMA_VERSION,
      previousHash: null,
      ...draft,
    };
    this.made.push(event);
    return event;
  }

  /** Sees another phone's event at this true time. Whether its clock follows that event's. */
  see(true_ms: number, event: { readonly hlc: string }): boolean {
    const { clock, merged } = merge(this.#clock, event.hlc, true_ms + this.#wrong_ms);
    this.#clock = clock;
    return merged;
  }

  /** Its clock is set, right or wrong. */
  setClock(wrong_ms: number): void {
    this.#wrong_ms = wrong_ms;
  }
}

/**
 * How far a history is sealed. `none`: placeholders in place of hashes, for benches that check none. `hashed`: chained
 * and hashed. `signed`: decisions and closings signed too, each phone with a new key.
 */
export type Seal = "none" | "hashed" | "signed";

const NO_KEY: DeviceKey = {
  privateKey: null,
  key: { kind: "none", why: "a generated history keeps no key" },
};

export const keyFor = (seal: Seal): Promise<DeviceKey> =>
  seal === "signed" ? newDeviceKey() : Promise.resolve(NO_KEY);

/** Seals one phone's events in their order. */
export async function sealAll(
  phone: Phone,
  seal: Seal,
  key: CryptoKey | null,
): Promise<readonly KnownEvent[]> {
  const sealed: KnownEvent[] = [];
  let previousHash: string | null = null;
  for (const event of phone.made) {
    const chained: UnsealedEvent = { ...event, previousHash };
    const done: KnownEvent =
      seal === "none" ? placeholderSeal(chained) : await sealEvent(chained, seal === "signed" ? key : null);
    sealed.push(done);
    previousHash = done.hash;
  }
  return sealed;
}

/** An event with a hash that is unique and nothing else. */
export const placeholderSeal = (event: UnsealedEvent): KnownEvent =>
  ({
    ...event,
    hash: event.device.replaceAll("-", "") + event.deviceSeq.toString(16).padStart(32, "0"),
  }) as KnownEvent; // the parts of one member of the union, put back together
