/**
 * How long a condition may take on a slow machine before a test says that it does not come. Nothing waits this long
 * for its own sake.
 */
export const PATIENCE_ms = 60_000;

const ASK_EVERY_ms = 15;

/**
 * Asks until the answer holds.
 *
 * @param what what was waited for, for the error that names it
 * @returns the answer that held
 */
export async function until<T>(
  what: string,
  ask: () => T | Promise<T>,
  holds: (answer: T) => boolean,
  patience_ms = PATIENCE_ms,
): Promise<T> {
  const from_ms = performance.now();
  for (;;) {
    const answer = await ask();
    if (holds(answer)) return answer;
    if (performance.now() - from_ms > patience_ms) {
      throw new Error(`Waited ${patience_ms} ms for ${what}; the last answer was ${JSON.stringify(answer)}`);
    }
    await new Promise((done) => setTimeout(done, ASK_EVERY_ms));
  }
}
