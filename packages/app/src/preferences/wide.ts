import { useSyncExternalStore } from "react";

const query = () => window.matchMedia("(min-width: 900px)");
const subscribe = (onChange: () => void) => {
  const list = query();
  list.addEventListener("change", onChange);
  return () => list.removeEventListener("change", onChange);
};

/** Whether two panes fit side by side. */
export const useWide = (): boolean => useSyncExternalStore(subscribe, () => query().matches);
