import { createContext, createElement, type ReactNode, useContext, useSyncExternalStore } from "react";
import type { Keep, KeepSnapshot } from "./contract.ts";

const KeepContext = createContext<Keep | null>(null);

/** Gives everything below it the page's keeper, made once by `startKeep` or `openKeep`. */
export function KeepProvider({ keep, children }: { readonly keep: Keep; readonly children?: ReactNode }) {
  return createElement(KeepContext.Provider, { value: keep }, children);
}

/** The page's keeper. @throws {Error} outside a `KeepProvider` */
export function useKeep(): Keep {
  const keep = useContext(KeepContext);
  if (keep === null) throw new Error("useKeep: expected a KeepProvider above this component, found none");
  return keep;
}

/** What the keeper holds now; renders again when it changes. */
export function useKeepSnapshot(): KeepSnapshot {
  const keep = useKeep();
  return useSyncExternalStore(keep.subscribe, keep.snapshot, keep.snapshot);
}
