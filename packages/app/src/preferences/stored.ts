import { useSyncExternalStore } from "react";

/**
 * A small value that belongs to this screen and to no aircraft: a choice, a draft, where one was. It is kept in
 * `localStorage`, so it survives a killed app; when that is not to be had it lives as long as the page.
 */
export interface Stored<T> {
  get(): T;
  set(value: T): void;
  subscribe(listener: () => void): () => void;
  use(): T;
}

const PREFIX = "witnessmark.";

/** @param read turns whatever was found (perhaps from an older version) into a value, or the default */
export function stored<T>(name: string, read: (found: unknown) => T): Stored<T> {
  const listeners = new Set<() => void>();
  let value = read(load(PREFIX + name));
  const tell = () => {
    for (const listener of listeners) listener();
  };
  if (typeof window !== "undefined") {
    window.addEventListener("storage", (event) => {
      if (event.key !== PREFIX + name) return;
      value = read(load(PREFIX + name));
      tell();
    });
  }
  const get = () => value;
  const subscribe = (listener: () => void) => {
    listeners.add(listener);
    return () => listeners.delete(listener);
  };
  return {
    get,
    set(next) {
      value = next;
      save(PREFIX + name, next);
      tell();
    },
    subscribe,
    use: () => useSyncExternalStore(subscribe, get),
  };
}

function load(key: string): unknown {
  try {
    const text = window.localStorage.getItem(key);
    return text === null ? undefined : JSON.parse(text);
  } catch {
    // private modes refuse storage, and an older version may have left other text: the default holds
    return undefined;
  }
}

function save(key: string, value: unknown): void {
  try {
    window.localStorage.setItem(key, JSON.stringify(value));
  } catch {
    // full or refused: the value still holds for this page, and nothing of the ledger is in it
  }
}

export const isRecord = (found: unknown): found is Readonly<Record<string, unknown>> =>
  typeof found === "object" && found !== null && !Array.isArray(found);
