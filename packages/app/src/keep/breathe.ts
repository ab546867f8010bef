/** Work that nobody waits for holds the page for no longer than this at a time; a slow phone's four times as much. */
const AT_MOST_ms = 3;

/**
 * For long work in small steps: awaited after each step, it lets the page answer a finger as soon as the steps have
 * taken their share of time.
 */
export function breather(): () => Promise<void> {
  let since_ms = performance.now();
  return async () => {
    if (performance.now() - since_ms < AT_MOST_ms) return;
    await turn();
    since_ms = performance.now();
  };
}

/** Ends this task; what else waits for the page has its turn, painting included. */
export function turn(): Promise<void> {
  return new Promise((done) => setTimeout(done, 0));
}
