// Plain lists, apart from the schema: who only lists them need not load it.

/** How a check is made. */
export const METHODS = ["look", "touch", "move", "measure", "count", "drain", "listen"] as const;

export const WALK_KINDS = ["first-of-day", "turnaround", "after-flight"] as const;

/** What can happen to an aircraft that makes earlier looks untrue. */
export const HAPPENING_KINDS = [
  "fuelled",
  "unattended",
  "rain",
  "frost",
  "maintenance",
  "flown",
  "towed",
  "loaded",
] as const;
