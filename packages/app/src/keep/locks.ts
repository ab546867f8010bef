/** One at a time, by name: within this page, and across tabs where the browser can. */
export interface Locks {
  /** Waits for its turn, then runs. Nothing relies on the turn alone: a write also checks that nothing has moved. */
  hold<T>(name: string, work: () => Promise<T>): Promise<T>;
  /** Within this page only: at once, where asking the browser would cost a person time. */
  inPage<T>(name: string, work: () => Promise<T>): Promise<T>;
}

/** A tab that the phone has frozen while it had its turn must not hold up the one in the hand. */
const PATIENCE_MS = 3_000;

/** @param manager `navigator.locks`; `undefined` where there is none (a page by plain HTTP) */
export function makeLocks(
  manager: LockManager | undefined,
  prefix: string,
  patience_ms = PATIENCE_MS,
): Locks {
  const turns = new Map<string, Promise<unknown>>();

  /** In order of asking, within this page. */
  function inTurn<T>(name: string, work: () => Promise<T>): Promise<T> {
    const before = turns.get(name) ?? Promise.resolve();
    const mine = before.then(work, work);
    // Whoever asks next waits for the end of this one, not for its success.
    const settled = mine.then(
      () => {},
      () => {},
    );
    turns.set(name, settled);
    return mine;
  }

  async function acrossTabs<T>(manager: LockManager, name: string, work: () => Promise<T>): Promise<T> {
    const patience = new AbortController();
    const timer = setTimeout(() => patience.abort(), patience_ms);
    try {
      return await manager.request(`${prefix}:${name}`, { signal: patience.signal }, () => {
        clearTimeout(timer);
        return work();
      });
    } catch (error) {
      if (!patience.signal.aborted) throw error;
      return await work();
    } finally {
      clearTimeout(timer);
    }
  }

  return {
    inPage: inTurn,
    hold: (name, work) => inTurn(name, () => (manager ? acrossTabs(manager, name, work) : work())),
  };
}
