import type { RateLimit } from "./limits.ts";

/** Most clients remembered; beyond it, those that have their whole allowance again are forgotten. */
const REMEMBERED = 10_000;

/** An allowance per client that fills up again with time (a token bucket). In memory: each process counts for itself. */
export class RateLimiter {
  readonly #limit: RateLimit;
  readonly #clients = new Map<string, { left: number; at_ms: number }>();

  constructor(limit: RateLimit) {
    this.#limit = limit;
  }

  /** How many clients are remembered. */
  get size(): number {
    return this.#clients.size;
  }

  /**
   * Takes one request from a client's allowance.
   *
   * @returns 0 when it may go on, otherwise the whole seconds to wait
   */
  take(client: string, now_ms: number): number {
    const { burst, perSecond } = this.#limit;
    const known = this.#clients.get(client);
    if (known === undefined && this.#clients.size >= REMEMBERED) this.#forget(now_ms);
    const before = known ?? { left: burst, at_ms: now_ms };
    const left = Math.min(burst, before.left + (Math.max(0, now_ms - before.at_ms) / 1_000) * perSecond);
    // A hair less than one is one: it is what rounding leaves of a client that keeps exactly to the rate.
    const allowed = left >= 1 - 1e-9;
    this.#clients.set(client, { left: allowed ? Math.max(0, left - 1) : left, at_ms: now_ms });
    return allowed ? 0 : Math.max(1, Math.ceil((1 - left) / perSecond));
  }

  #forget(now_ms: number): void {
    const { burst, perSecond } = this.#limit;
    for (const [client, { left, at_ms }] of this.#clients) {
      if (left + ((now_ms - at_ms) / 1_000) * perSecond >= burst) this.#clients.delete(client);
    }
    // All of them busy: start over rather than grow without end.
    if (this.#clients.size >= REMEMBERED) this.#clients.clear();
  }
}
