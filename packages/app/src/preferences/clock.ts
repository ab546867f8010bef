import { useSyncExternalStore } from "react";

const listeners = new Set<() => void>();
let minute = Math.floor(Date.now() / 60_000);
let timer: ReturnType<typeof setTimeout> | undefined;

/** Wakes just after the next full minute. */
function wind(): void {
  timer = setTimeout(
    () => {
      tick();
      wind();
    },
    60_000 - (Date.now() % 60_000) + 20,
  );
}

function tick(): void {
  const now = Math.floor(Date.now() / 60_000);
  if (now === minute) return;
  minute = now;
  for (const listener of listeners) listener();
}

const subscribe = (listener: () => void) => {
  if (listeners.size === 0) {
    tick();
    wind();
    document.addEventListener("visibilitychange", tick);
  }
  listeners.add(listener);
  return () => {
    listeners.delete(listener);
    if (listeners.size > 0) return;
    clearTimeout(timer);
    document.removeEventListener("visibilitychange", tick);
  };
};

/** The minute it is, since 1970; renders again when it changes. Times on the screens are to the minute. */
export const useMinute = (): number => useSyncExternalStore(subscribe, () => minute);
