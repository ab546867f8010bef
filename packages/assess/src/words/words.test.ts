import { describe, expect, it } from "vitest";
import { counted, inside, inWords, listed, sentence } from "./count-words.ts";
import { durationText } from "./duration-text.ts";
import { happened, happeningWords } from "./happening-words.ts";
import { clockText, dayText, endOfDay_ms, momentText, offsetOf_min, whenText } from "./local-time.ts";

// Thursday 8 May 2031, 07:41 at UTC+1 (calendar arithmetic checked by hand: 1 January 2031 is a Wednesday)
const NOW_MS = Date.UTC(2031, 4, 8, 6, 41);
const clock = { now_ms: NOW_MS, offset_min: 60 };
const DAY_MS = 86_400_000;

describe("local time", () => {
  it.each([
    ["2031-05-08T07:41:00.000+01:00", 60],
    ["2031-05-08T07:41:00-03:30", -210],
    ["2031-05-08T07:41:00+0530", 330],
    ["2031-05-08T07:41:00Z", 0],
    ["2031-05-08T07:41:00", 0],
    ["2031-05-08", 0],
    ["nonsense", 0],
  ])("the offset of %s is %d min", (text, offset) => {
    expect(offsetOf_min(text)).toBe(offset);
  });

  it("is told by the hour and minute of the place", () => {
    expect(clockText(NOW_MS, clock)).toBe("07:41");
    expect(clockText(NOW_MS, { now_ms: NOW_MS, offset_min: -210 })).toBe("03:11");
  });

  it.each([
    [0, "07:41"],
    [-1, "Wednesday 07:41"],
    [1, "Friday 07:41"],
    [-4, "Sunday 07:41"],
    [-6, "Friday 07:41"],
    [-7, "1 May 07:41"],
    [-365, "8 May 2030 07:41"],
  ])("%d days from now is %s", (days, text) => {
    expect(momentText(NOW_MS + days * DAY_MS, clock)).toBe(text);
  });

  it("has its prepositions", () => {
    expect(whenText(NOW_MS, clock)).toBe("at 07:41");
    expect(whenText(NOW_MS - DAY_MS, clock)).toBe("on Wednesday at 07:41");
    expect(whenText(NOW_MS - 30 * DAY_MS, clock)).toBe("on 8 Apr at 07:41");
  });

  it("counts days by the place's own midnight", () => {
    const beforeMidnight_ms = Date.UTC(2031, 4, 8, 22, 59);
    expect(dayText(beforeMidnight_ms, clock)).toBe("Thursday");
    expect(dayText(beforeMidnight_ms + 60_000, clock)).toBe("Friday");
    expect(endOfDay_ms(NOW_MS, clock)).toBe(Date.UTC(2031, 4, 8, 23) - 1);
    expect(endOfDay_ms(beforeMidnight_ms + 60_000, clock)).toBe(Date.UTC(2031, 4, 9, 23) - 1);
  });
});

describe("time spans", () => {
  it.each([
    [0.9, "0 s"],
    [59.9, "59 s"],
    [60, "1 min"],
    [3599, "59 min"],
    [3600, "1 h"],
    [5400, "1 h 30 min"],
    [86_400, "24 h"],
    [172_800, "2 d"],
    [604_800, "7 d"],
    [176_400, "49 h"],
  ])("%d s is %s", (span, text) => {
    expect(durationText(span).replaceAll("\u00A0", " ")).toBe(text);
  });
});

describe("counts and lists", () => {
  it("are words up to twelve, figures above", () => {
    expect([0, 1, 12, 13].map(inWords)).toEqual(["no", "one", "twelve", "13"]);
    expect([counted(1, "check"), counted(2, "check"), counted(2, "entry", "entries")]).toEqual([
      "1 check",
      "2 checks",
      "2 entries",
    ]);
  });

  it("join their words", () => {
    expect(listed([])).toBe("");
    expect(listed(["nose"])).toBe("nose");
    expect(listed(["nose", "tail", "wing"])).toBe("nose, tail and wing");
  });

  it("begin a sentence, or stand inside one, but leave an abbreviation alone", () => {
    expect(sentence("five checks")).toBe("Five checks");
    expect(inside("Left wing")).toBe("left wing");
    expect(inside("GPS antenna")).toBe("GPS antenna");
  });
});

describe("happenings", () => {
  it("are told as what was done to the aircraft", () => {
    expect(happened("fuelled")).toBe("Fuelled");
    expect(happeningWords("unattended")).toBe("left unattended");
    expect(happened("maintenance")).toBe("Worked on");
  });
});
