import type { WalkKind } from "@witnessmark/book";

export const WALK_NAMES: Readonly<Record<WalkKind, string>> = {
  "first-of-day": "First walk of the day",
  turnaround: "Turnaround walk",
  "after-flight": "After-flight walk",
};
