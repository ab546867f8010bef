import { type RefCallback, useCallback, useState } from "react";

/** The width of an element in CSS pixels, kept up to date; 0 until it is known. */
export function useWidth<E extends Element>(): readonly [RefCallback<E>, number] {
  const [width_px, setWidth] = useState(0);
  const ref = useCallback((element: E | null) => {
    if (element === null) return;
    const observer = new ResizeObserver(([entry]) => {
      if (entry !== undefined) setWidth(Math.floor(entry.contentRect.width));
    });
    observer.observe(element);
    setWidth(Math.floor(element.getBoundingClientRect().width));
    return () => observer.disconnect();
  }, []);
  return [ref, width_px];
}

/** Width and height of an element in CSS pixels, kept up to date; zeros until known. */
export function useSize<E extends Element>(): readonly [
  RefCallback<E>,
  { readonly width_px: number; readonly height_px: number },
] {
  const [size, setSize] = useState({ width_px: 0, height_px: 0 });
  const ref = useCallback((element: E | null) => {
    if (element === null) return;
    const take = (box: { width: number; height: number }) =>
      setSize((was) => {
        const next = { width_px: Math.floor(box.width), height_px: Math.floor(box.height) };
        return was.width_px === next.width_px && was.height_px === next.height_px ? was : next;
      });
    const observer = new ResizeObserver(([entry]) => {
      if (entry !== undefined) take(entry.contentRect);
    });
    observer.observe(element);
    take(element.getBoundingClientRect());
    return () => observer.disconnect();
  }, []);
  return [ref, size];
}
