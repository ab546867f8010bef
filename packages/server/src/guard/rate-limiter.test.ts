import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { RateLimiter } from "./rate-limiter.ts";

describe("RateLimiter", () => {
  it("never lets more through than the burst and the rate allow, and never stops who keeps to the rate", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 20 }),
        fc.integer({ min: 1, max: 50 }),
        fc.array(fc.integer({ min: 0, max: 2_000 }), { maxLength: 200 }),
        (burst, perSecond, gaps_ms) => {
          const limiter = new RateLimiter({ burst, perSecond });
          let now_ms = 0;
          let through = 0;
          for (const gap_ms of gaps_ms) {
            now_ms += gap_ms;
            if (limiter.take("a", now_ms) === 0) through += 1;
          }
          expect(through).toBeLessThanOrEqual(burst + (now_ms / 1_000) * perSecond + 1e-6);
          const steady = new RateLimiter({ burst, perSecond });
          const step_ms = 1_000 / perSecond;
          for (let turn = 0; turn < 100; turn += 1) expect(steady.take("a", turn * step_ms)).toBe(0);
        },
      ),
    );
  });

  it("names a wait after which it lets through", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 5 }),
        fc.double({ min: 0.01, max: 100, noNaN: true }),
        (burst, perSecond) => {
          const limiter = new RateLimiter({ burst, perSecond });
          let wait_s = 0;
          for (let turn = 0; turn <= burst; turn += 1) wait_s = limiter.take("a", 0);
          expect(wait_s).toBeGreaterThanOrEqual(1);
          expect(limiter.take("a", wait_s * 1_000 + 1)).toBe(0);
        },
      ),
    );
  });

  it("keeps clients apart, and is not upset by a clock that goes back", () => {
    const limiter = new RateLimiter({ burst: 1, perSecond: 1 });
    expect(limiter.take("a", 5_000)).toBe(0);
    expect(limiter.take("b", 5_000)).toBe(0);
    expect(limiter.take("a", 0)).toBe(1);
  });

  it("does not grow without end", () => {
    const limiter = new RateLimiter({ burst: 1, perSecond: 1 });
    for (let client = 0; client < 50_000; client += 1) limiter.take(String(client), 0);
    expect(limiter.size).toBeLessThanOrEqual(10_000);
  });
});
