import { useMemo, useSyncExternalStore } from "react";
import { href, type Route, readRoute } from "./route.ts";

const subscribe = (onChange: () => void) => {
  window.addEventListener("hashchange", onChange);
  return () => window.removeEventListener("hashchange", onChange);
};
const hashNow = () => window.location.hash;

/** Where the app is now. */
export function useRoute(): Route {
  const hash = useSyncExternalStore(subscribe, hashNow);
  return useMemo(() => readRoute(hash), [hash]);
}

/** Goes there; `replace` leaves no step for Back, for a move that the person did not ask for. */
export function go(route: Exclude<Route, { at: "unknown" }>, how: "push" | "replace" = "push"): void {
  const target = href(route);
  if (window.location.hash === target) return;
  if (how === "push") window.location.hash = target;
  else {
    window.history.replaceState(null, "", target);
    window.dispatchEvent(new HashChangeEvent("hashchange"));
  }
}
