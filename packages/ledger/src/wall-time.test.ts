import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { wallTime } from "./wall-time.ts";

describe("wall time", () => {
  it.each([
    { zone_min: 0, expected: "2031-05-04T07:07:00.250+00:00" },
    { zone_min: 120, expected: "2031-05-04T09:07:00.250+02:00" },
    { zone_min: -210, expected: "2031-05-04T03:37:00.250-03:30" },
    { zone_min: 845, expected: "2031-05-04T21:12:00.250+14:05" },
  ])("shows what a clock at $zone_min min from UTC shows", ({ zone_min, expected }) => {
    expect(wallTime(Date.UTC(2031, 4, 4, 7, 7, 0, 250), zone_min)).toBe(expected);
  });

  it("reads back to the same moment", () => {
    const time_ms = fc.integer({ min: 86_400_000, max: Date.UTC(9999, 11, 30) });
    fc.assert(
      fc.property(time_ms, fc.integer({ min: -840, max: 840 }), (time, zone) => {
        expect(Date.parse(wallTime(time, zone))).toBe(time);
      }),
    );
  });

  it("refuses years that have no four figures", () => {
    expect(() => wallTime(Date.UTC(10_000, 0, 1), 0)).toThrow(/expected a year from 0 to 9999/);
  });
});
