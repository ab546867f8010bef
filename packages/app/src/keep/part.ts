/**
 * A part of the program that is fetched when it is first asked for, and asked for once: to ask the loader each time
 * would cost a tap several milliseconds on a slow phone. One that did not come is fetched again at the next call.
 */
export function part<T>(load: () => Promise<T>): () => Promise<T> {
  let found: Promise<T> | null = null;
  return () => {
    if (found === null) {
      const asked = load();
      found = asked;
      asked.catch(() => {
        if (found === asked) found = null;
      });
    }
    return found;
  };
}
