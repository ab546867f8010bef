import { emptyState } from "@witnessmark/ledger";
import { describe, expect, it } from "vitest";
import { assess } from "../assess.ts";
import { clinicPlan } from "../testing/clinic-load.ts";
import { demoBook } from "../testing/demo-book.ts";
import { demoFlight } from "../testing/demo-flight.ts";
import { plain } from "../testing/plain.ts";
import { leavingAt } from "./leaving-at.ts";

const book = await demoBook();
const nothingWalked = emptyState("ZZ-SKR");
/** The day of the demo's flight; the sun sets there before five in November. */
const at = (hour: number) => Date.UTC(2026, 10, 12, hour);
const flight = (hour: number) => ({
  ...demoFlight,
  offBlocks: `2026-11-12T${String(hour).padStart(2, "0")}:00:00+00:00`,
  plan: { ...clinicPlan, rulePack: "us-part-91" },
});
const told = (planned: ReturnType<typeof flight>, now_ms: number) =>
  assess(book, nothingWalked, planned, now_ms).verdicts.map(({ id, status, says }) => [
    id,
    status,
    plain(says),
  ]);

describe("a flight whose time is past", () => {
  it("leaves now, on the clock of its own place; one still to come leaves as planned", () => {
    const planned = { ...flight(14), offBlocks: "2026-11-12T15:00:00+01:00" };
    expect(leavingAt(planned, at(13))).toBe(planned);
    expect(leavingAt(planned, at(19)).offBlocks).toBe("2026-11-12T20:00:00.000+01:00");
    expect(leavingAt(null, at(19))).toBeNull();
  });

  it("is told in everything what one is told that is planned for now: night asks for its reserve", () => {
    const [late, now] = [told(flight(14), at(19)), told(flight(19), at(19))];
    const reserve = (all: typeof late) => all.find(([id]) => id === "fuel:required");
    expect(reserve(late)).toEqual(reserve(now));
    // 14 CFR 91.151(a): 30 minutes by day, 45 by night
    expect(reserve(told(flight(14), at(13)))).not.toEqual(reserve(late));
    expect(late).toEqual(now);
  });
});
