import { useState } from "react";

/** The same object as long as what matters of it is the same. */
export function useSettled<T>(value: T, same: (was: T, now: T) => boolean): T {
  const [held, hold] = useState(value);
  if (held === value || same(held, value)) return held;
  hold(value);
  return value;
}
