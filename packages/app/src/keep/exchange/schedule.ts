import type { Outcome, Scope } from "./exchange.ts";

const FIRST_WAIT_MS = 1_000;
const LONGEST_WAIT_MS = 5 * 60_000;
/** Between exchanges when all is well: the live stream brings news sooner. */
const REST_MS = 60_000;

/** Decides when exchanges happen: one at a time, what comes meanwhile together in the next. */
export interface Schedule {
  /** Exchanges soon. Resolves when an exchange that began after this call has ended. */
  want(scope: Scope): Promise<void>;
  stop(): void;
}

/**
 * @param round one exchange
 * @param random 0 up to 1; spreads the tries of phones that lost the same server
 */
export function makeSchedule(
  round: (scope: Scope) => Promise<Outcome>,
  random: () => number = Math.random,
  automatic = true,
): Schedule {
  let wanted: { all: boolean; readonly aircraft: Set<string>; readonly waiting: (() => void)[] } | null =
    null;
  let running = false;
  let stopped = false;
  let failures = 0;
  let timer: ReturnType<typeof setTimeout> | undefined;

  async function run(): Promise<void> {
    running = true;
    clearTimeout(timer);
    while (wanted && !stopped) {
      const { all, aircraft, waiting } = wanted;
      wanted = null;
      // Broken off at the first that does not get through: the rest would not either.
      const scopes: Scope[] = all ? ["all"] : [...aircraft].map((name) => ({ aircraft: name }));
      for (const scope of scopes) {
        const outcome = await round(scope);
        failures = outcome.reached ? 0 : failures + 1;
        if (!outcome.reached) break;
      }
      for (const done of waiting) done();
    }
    running = false;
    if (!stopped && automatic) timer = setTimeout(() => void want("all"), restTime_ms());
  }

  function restTime_ms(): number {
    const wait_ms = failures === 0 ? REST_MS : Math.min(LONGEST_WAIT_MS, FIRST_WAIT_MS * 2 ** (failures - 1));
    return wait_ms * (0.5 + random() / 2);
  }

  function want(scope: Scope): Promise<void> {
    const { promise, resolve } = Promise.withResolvers<void>();
    wanted ??= { all: false, aircraft: new Set(), waiting: [] };
    wanted.waiting.push(resolve);
    if (scope === "all") wanted.all = true;
    else wanted.aircraft.add(scope.aircraft);
    if (!running && !stopped) void run();
    if (stopped) resolve();
    return promise;
  }

  return {
    want,
    stop() {
      stopped = true;
      clearTimeout(timer);
      for (const done of wanted?.waiting ?? []) done();
      wanted = null;
    },
  };
}
