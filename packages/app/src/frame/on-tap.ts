import type { MouseEvent, PointerEvent } from "react";

/** Held longer than this, a finger asks for something else than a tap, as browsers have it. */
const LONGEST_ms = 500;

/** Where the finger that is on the glass came down: at most one, the first. */
let down: { readonly pointer: number; readonly on: EventTarget | null; readonly at_ms: number } | null = null;
/** A finger has acted; the click that the browser would make of it must not act again, on whatever is there by then. */
let isSpent = false;

if (typeof document !== "undefined") {
  const first = { capture: true };
  document.addEventListener(
    "pointerdown",
    ({ pointerId, target, timeStamp, isPrimary, pointerType }) => {
      isSpent = false;
      down =
        isPrimary && pointerType === "touch" ? { pointer: pointerId, on: target, at_ms: timeStamp } : null;
    },
    first,
  );
  // it became a scroll, or the system took it
  document.addEventListener(
    "pointercancel",
    () => {
      down = null;
    },
    first,
  );
  // nothing is made of this touch any more: no mouse, no click
  document.addEventListener("touchend", (event) => isSpent && event.preventDefault(), {
    ...first,
    passive: false,
  });
  document.addEventListener(
    "click",
    (event) => {
      if (!isSpent || event.detail === 0) return; // 0: from a keyboard or a screen reader
      event.preventDefault();
      event.stopImmediatePropagation();
    },
    first,
  );
  document.addEventListener(
    "keydown",
    () => {
      isSpent = false;
    },
    first,
  );
}

/**
 * For a button that keeps something: acts when the finger leaves the glass. A browser makes mouse events and a click
 * of it only after that, which takes a slow phone some frames. Everything else (mouse, keyboard, screen reader) clicks.
 */
export function onTap(act: () => void): {
  readonly onPointerUp: (event: PointerEvent<HTMLButtonElement>) => void;
  readonly onClick: (event: MouseEvent<HTMLButtonElement>) => void;
} {
  return {
    onPointerUp(event) {
      const button = event.currentTarget;
      const began = down;
      down = null;
      if (began === null || began.pointer !== event.pointerId || !(began.on instanceof Node)) return;
      if (!button.contains(began.on) || button.disabled || event.timeStamp - began.at_ms > LONGEST_ms) return;
      // a finger that has slid off has thought better of it
      const box = button.getBoundingClientRect();
      const isOn =
        event.clientX >= box.left &&
        event.clientX < box.right &&
        event.clientY >= box.top &&
        event.clientY < box.bottom;
      if (!isOn) return;
      isSpent = true;
      act();
    },
    onClick: () => act(),
  };
}
