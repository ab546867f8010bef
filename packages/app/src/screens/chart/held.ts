import type { ChartWork } from "./chart-work.ts";
import type { PaperPicture } from "./picture-file.ts";

/** What is being made of a paper: kept while the page is open, so that a step back loses nothing. */
export interface HeldWork {
  readonly picture?: PaperPicture;
  readonly work?: ChartWork;
  /** What can be undone of the tracing, oldest first. */
  readonly past?: readonly ChartWork[];
  readonly pasted?: string;
}

/** One paper at a time: a picture is large, and a phone has little room. */
let held: { readonly key: string; readonly of: HeldWork } | null = null;

/** @param key for which page of which book */
export const heldFor = (key: string): HeldWork => (held?.key === key ? held.of : {});

/** Keeps what was done last; a picture that is let go of gives its memory back. */
export function hold(key: string, change: HeldWork): void {
  const before = held;
  const next = { ...(before?.key === key ? before.of : {}), ...change };
  held = { key, of: next };
  const old = before?.of.picture;
  if (old !== undefined && old !== next.picture) URL.revokeObjectURL(old.address);
}

/** It was taken, and now belongs to the item that it was made into: coming back, one can go on with it. */
export function heldAlsoAs(key: string, taken: string): void {
  if (held?.key === key) held = { key: taken, of: held.of };
}

/** Lets go of all of it: it is begun again. */
export function letGo(key: string): void {
  if (held?.key !== key) return;
  if (held.of.picture !== undefined) URL.revokeObjectURL(held.of.picture.address);
  held = null;
}
