import type { LedgerEvent } from "../event.ts";
import { hashOfEvent } from "../hash.ts";
import { isKnownEvent } from "../known.ts";
import { importPublicKey, mustBeSigned, verify } from "../signature.ts";

/** How far one device's chain is known to hold. */
interface Chain {
  next: number;
  hash: string | null;
  /** `undefined` before it has introduced itself, `null` when it could keep no key. */
  key: CryptoKey | null | undefined;
  /** Came before their turn. */
  readonly early: Map<number, LedgerEvent>;
}

/**
 * Whether every hash, chain and signature of a ledger holds, for a ledger that is too long to be held in memory. Each
 * event is looked at as it passes; only one that comes before its turn is held until that.
 *
 * It gives no reasons: where it says no, `verifyLedger` says what is wrong. It never says yes where that finds a fault.
 */
export class SoundStream {
  readonly #chains = new Map<string, Chain>();
  readonly #ids = new Set<string>();
  #about: { readonly aircraft: string; readonly operator: string } | null = null;
  #isSound = true;

  /** Takes the next events, in the order in which they come. */
  async see(events: readonly LedgerEvent[]): Promise<void> {
    if (!this.#isSound) return;
    const hashes = await Promise.all(events.map(hashOrNothing));
    for (const [at, event] of events.entries()) {
      if (!this.#isSound) return;
      this.#about ??= event;
      const isOfIt = event.aircraft === this.#about.aircraft && event.operator === this.#about.operator;
      if (hashes[at] !== event.hash || !isOfIt || this.#ids.has(event.id)) this.#isSound = false;
      this.#ids.add(event.id);
      await this.#follow(event);
    }
  }

  /** Whether everything seen is sound, and nothing is missing before it. */
  isSound(): boolean {
    return this.#isSound && [...this.#chains.values()].every(({ early }) => early.size === 0);
  }

  /** How many devices wrote it. */
  get devices(): number {
    return this.#chains.size;
  }

  async #follow(event: LedgerEvent): Promise<void> {
    const chain = this.#chains.get(event.device) ?? { next: 1, hash: null, key: undefined, early: new Map() };
    this.#chains.set(event.device, chain);
    if (event.deviceSeq < chain.next || chain.early.has(event.deviceSeq)) {
      this.#isSound = false;
      return;
    }
    chain.early.set(event.deviceSeq, event);
    for (let next = chain.early.get(chain.next); next !== undefined; next = chain.early.get(chain.next)) {
      chain.early.delete(chain.next);
      if (next.previousHash !== chain.hash || !(await isSignedAsItShould(next, chain))) this.#isSound = false;
      chain.hash = next.hash;
      chain.next += 1;
    }
  }
}

async function hashOrNothing(event: LedgerEvent): Promise<string | null> {
  try {
    return await hashOfEvent(event);
  } catch {
    return null; // it has no hash: that it is not sound is told by `isSound`
  }
}

async function isSignedAsItShould(event: LedgerEvent, chain: Chain): Promise<boolean> {
  if (event.type === "device.introduced" && isKnownEvent(event)) chain.key = await keyOf(event);
  if (chain.key === undefined) return false; // its first event introduces a device
  const { signature, type } = event;
  if (signature === undefined) return chain.key === null || !mustBeSigned(type);
  return chain.key !== null && (await verify(chain.key, event.hash, signature));
}

async function keyOf(event: LedgerEvent): Promise<CryptoKey | null> {
  if (!isKnownEvent(event) || event.type !== "device.introduced" || event.body.key.kind === "none")
    return null;
  try {
    return await importPublicKey(event.body.key.publicKey);
  } catch {
    return null; // a key that is none judges nothing: what it signed is then not sound
  }
}
