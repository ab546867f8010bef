import { type RefObject, useEffect, useRef } from "react";

/** Below this a screen scrolls as a whole, and a new card's heading must come into view. */
const LOW_px = 560;

/** Puts the focus on a card's heading when the card changes, so that a screen reader begins there. */
export function useHeadingFocus(): RefObject<HTMLHeadingElement | null> {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    // once it is painted: to focus sooner would lay the page out twice
    const frame = requestAnimationFrame(() =>
      heading.current?.focus({ preventScroll: window.innerHeight >= LOW_px }),
    );
    return () => cancelAnimationFrame(frame);
  }, []);
  return heading;
}
