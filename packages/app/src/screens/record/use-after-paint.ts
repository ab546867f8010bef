import { startTransition, useEffect, useState } from "react";
import { painted } from "../../frame/painted.ts";

/**
 * Whether the first frame of this component has been painted. What that frame does not show is made after it, so that
 * nobody waits for it.
 *
 * @param atOnce what is below is wanted in the first frame too
 */
export function useAfterPaint(atOnce: boolean): boolean {
  const [isAfter, setAfter] = useState(atOnce);
  useEffect(() => {
    if (isAfter) return;
    let left = false;
    void painted().then(() => {
      if (!left) startTransition(() => setAfter(true));
    });
    return () => {
      left = true;
    };
  }, [isAfter]);
  return isAfter || atOnce;
}
