import { describe, expect, it } from "vitest";
import { clockText, clockWithUtc, dateText, offset_min } from "./local-time.ts";

describe("times on the sheet are the pilot's own", () => {
  it.each([
    { iso: "2026-11-12T09:05:12+01:00", east_min: 60 },
    { iso: "2026-11-12T09:05:12-03:30", east_min: -210 },
    { iso: "2026-11-12T09:05:12Z", east_min: 0 },
    { iso: "2026-11-12T09:05:12.123+05:45", east_min: 345 },
    { iso: "yesterday", east_min: 0 },
  ])("$iso is $east_min minutes east", ({ iso, east_min }) => {
    expect(offset_min(iso)).toBe(east_min);
  });

  it("says local time, with UTC beside it where they differ", () => {
    const at_ms = Date.parse("2026-11-12T08:05:12Z");
    expect(clockText(at_ms, 60)).toBe("09:05");
    expect(clockText(at_ms, 60, true)).toBe("09:05:12");
    expect(clockWithUtc(at_ms, 60)).toBe("09:05, 08:05 UTC");
    expect(clockWithUtc(at_ms, 0)).toBe("08:05 UTC");
  });

  it("names the local day, which may not be the UTC day", () => {
    // 12 November 2026 is a Thursday (calendar)
    expect(dateText(Date.parse("2026-11-11T23:30:00Z"), 60)).toBe("Thursday 12 November 2026");
    expect(dateText(Date.parse("2026-11-11T23:30:00Z"), 0)).toBe("Wednesday 11 November 2026");
  });
});
