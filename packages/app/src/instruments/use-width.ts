import { type RefCallback, useCallback, useState } from "react";

/** An element's size in whole CSS pixels; zeros until known. */
export interface Size {
  readonly width_px: number;
  readonly height_px: number;
}

const NOTHING: Size = { width_px: 0, height_px: 0 };

/** The size last seen of each kind of place: a new one of its kind begins with it, and so is drawn at once. */
const lastSeen = new Map<string, Size>();

/**
 * The size of an element, kept up to date.
 *
 * @param kind what stands there, when the next of its kind will be as large: its first drawing then needs no second
 */
export function useSize<E extends Element>(kind?: string): readonly [RefCallback<E>, Size] {
  const [size, setSize] = useState(() => (kind === undefined ? undefined : lastSeen.get(kind)) ?? NOTHING);
  const ref = useCallback(
    (element: E | null) => {
      if (element === null) return;
      // the observer tells the first size too, after layout and before paint: nothing is measured twice
      const observer = new ResizeObserver(([entry]) => {
        if (entry === undefined) return;
        const next: Size = {
          width_px: Math.floor(entry.contentRect.width),
          height_px: Math.floor(entry.contentRect.height),
        };
        if (kind !== undefined) lastSeen.set(kind, next);
        setSize((was) => (was.width_px === next.width_px && was.height_px === next.height_px ? was : next));
      });
      observer.observe(element);
      return () => observer.disconnect();
    },
    [kind],
  );
  return [ref, size];
}

/** The width of an element in CSS pixels, kept up to date; 0 until it is known. */
export function useWidth<E extends Element>(kind?: string): readonly [RefCallback<E>, number] {
  const [ref, size] = useSize<E>(kind);
  return [ref, size.width_px];
}
