/** How long a question may take, and how to call it off. */
export interface Patience {
  /** From the moment it is asked; 10 seconds where it is left out. */
  readonly limit_s?: number;
  /** Looked at between solves. */
  readonly signal?: AbortSignal;
  /** Looked at within solves too: a flag that another thread can set. */
  readonly cancelled?: () => boolean;
}

export type StopReason = "time" | "cancelled";

/** Leaves the work where it stands; caught where the question was asked. */
export class Stopped extends Error {
  readonly reason: StopReason;

  constructor(reason: StopReason) {
    super(`stopped: ${reason}`);
    this.reason = reason;
  }
}

/** One question's patience, running. */
export interface Watch {
  /** Seconds left; above zero. @throws {Stopped} there are none, or it was called off */
  readonly left_s: () => number;
  readonly cancelled: () => boolean;
  /** Lets a message through, now and then. @throws {Stopped} */
  readonly breathe: () => Promise<void>;
}

const USUAL_LIMIT_s = 10;
const BREATH_ms = 50;

export function watch({ limit_s = USUAL_LIMIT_s, signal, cancelled }: Patience): Watch {
  const end_ms = performance.now() + limit_s * 1000;
  let breath_ms = performance.now();
  const off = (): boolean => signal?.aborted === true || cancelled?.() === true;
  const left_s = (): number => {
    if (off()) throw new Stopped("cancelled");
    const left = (end_ms - performance.now()) / 1000;
    if (left <= 0) throw new Stopped("time");
    return left;
  };
  return {
    left_s,
    cancelled: off,
    breathe: async () => {
      left_s();
      if (performance.now() - breath_ms < BREATH_ms) return;
      await new Promise((resolve) => {
        setTimeout(resolve, 0);
      });
      breath_ms = performance.now();
      left_s();
    },
  };
}
