import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { DRIFT_BOUND_MS, hlcTime_ms, isHlc, merge, tick } from "./hlc.ts";

const MAY_4_MS = Date.UTC(2031, 4, 4);
const HOUR_MS = 3_600_000;

describe("hybrid logical clock", () => {
  it("is 15 figures of milliseconds, a hyphen and 5 of counter", () => {
    expect(tick(null, MAY_4_MS)).toBe("001935619200000-00000");
    expect(hlcTime_ms("001935619200000-00000")).toBe(MAY_4_MS);
  });

  it("counts on while the wall clock stands still or goes back", () => {
    const first = tick(null, MAY_4_MS);
    expect(tick(first, MAY_4_MS)).toBe("001935619200000-00001");
    expect(tick(first, MAY_4_MS - HOUR_MS)).toBe("001935619200000-00001");
    expect(tick(first, MAY_4_MS + 1)).toBe("001935619200001-00000");
  });

  it("goes on to the next millisecond when the counter is full", () => {
    expect(tick("001935619200000-99999", MAY_4_MS)).toBe("001935619200001-00000");
  });

  it("never makes two stamps that sort otherwise than they were made, whatever the wall clock does", () => {
    const wall_ms = fc.oneof(
      fc.integer({ min: -1e13, max: 1e15 }),
      fc.constantFrom(Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 8.64e15),
    );
    fc.assert(
      fc.property(fc.array(wall_ms, { minLength: 2, maxLength: 30 }), (walls) => {
        let clock: string | null = null;
        for (const wall of walls) {
          const next = tick(clock, wall);
          expect(isHlc(next)).toBe(true);
          if (clock !== null) expect(next > clock).toBe(true);
          clock = next;
        }
      }),
    );
  });

  it("follows a stamp up to the bound ahead of its own wall time, and not one millisecond further", () => {
    const own = tick(null, MAY_4_MS);
    const atBound = tick(null, MAY_4_MS + DRIFT_BOUND_MS);
    const beyond = tick(null, MAY_4_MS + DRIFT_BOUND_MS + 1);
    expect(merge(own, atBound, MAY_4_MS)).toEqual({ clock: atBound, merged: true, ahead_ms: DRIFT_BOUND_MS });
    expect(merge(own, beyond, MAY_4_MS)).toEqual({ clock: own, merged: false, ahead_ms: DRIFT_BOUND_MS + 1 });
  });

  it("never passes own wall time plus the bound by merging, and what it makes next sorts after what it followed", () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: -12 * HOUR_MS, max: 12 * HOUR_MS }), { maxLength: 20 }),
        fc.integer({ min: 0, max: HOUR_MS }),
        (offsets, bound_ms) => {
          let clock: string | null = null;
          for (const offset of offsets) {
            const remote = tick(null, MAY_4_MS + offset);
            const merged = merge(clock, remote, MAY_4_MS, bound_ms);
            clock = merged.clock;
            if (clock !== null) expect(hlcTime_ms(clock)).toBeLessThanOrEqual(MAY_4_MS + bound_ms);
            expect(merged.merged).toBe(offset <= bound_ms);
            if (merged.merged) expect(tick(clock, MAY_4_MS) > remote).toBe(true);
          }
        },
      ),
    );
  });

  it("names what is no stamp and what is no time", () => {
    expect(() => hlcTime_ms("12:00")).toThrow(
      'hlc: expected 15 figures of milliseconds, a hyphen, 5 figures of counter, received "12:00"',
    );
    expect(() => tick(null, Number.NaN)).toThrow(
      "wall_ms: expected milliseconds since 1970 UTC, received NaN",
    );
  });
});
