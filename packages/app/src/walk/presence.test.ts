import { expect, it } from "vitest";
import { AWAY_AFTER_ms, awaySince } from "./presence.ts";

const seen = { registration: "ZZ-SKR", walk: "w", at_ms: 1_000_000 };

it("a break counts when it is longer than three minutes, and not before", () => {
  expect(AWAY_AFTER_ms).toBe(180_000);
  expect(awaySince(seen, seen.at_ms + 180_000)).toBeNull();
  expect(awaySince(seen, seen.at_ms + 180_001)).toBe(seen);
  expect(awaySince(null, seen.at_ms)).toBeNull();
});
