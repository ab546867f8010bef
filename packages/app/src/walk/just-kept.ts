import { useSyncExternalStore } from "react";

/** What the strip over the drawing says: of what, what was said, and when it was kept. */
export interface Said {
  readonly name?: string;
  readonly words: string;
  readonly at_ms: number;
}

let held: Said | null = null;
const listeners = new Set<() => void>();
const get = () => held;
const subscribe = (listener: () => void) => {
  listeners.add(listener);
  return () => listeners.delete(listener);
};

/**
 * What the storage has committed a moment ago, before the rest of the screen has been worked out from it. It stands by
 * itself so that to show it costs one line of the page and nothing else.
 */
export const justKept = {
  use: () => useSyncExternalStore(subscribe, get),
  set(said: Said | null): void {
    held = said;
    for (const listener of [...listeners]) listener();
  },
};

export const tellKept = (name: string, words: string): void =>
  justKept.set({ name, words, at_ms: Date.now() });
