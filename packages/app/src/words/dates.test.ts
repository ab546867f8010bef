import fc from "fast-check";
import { expect, it } from "vitest";
import {
  dayOfDate,
  fieldTime,
  isoWithOffset,
  lasting,
  momentOfField,
  momentShort,
  whenShort,
} from "./dates.ts";

const at = (text: string) => new Date(text).getTime();

it("tells a moment by its distance: the time today, the day before by name, else the day", () => {
  const now = at("2026-11-12T07:42:00");
  expect(whenShort(at("2026-11-12T07:24:00"), now)).toBe("07:24");
  expect(whenShort(at("2026-11-11T18:10:00"), now)).toBe("yesterday 18:10");
  expect(whenShort(at("2026-11-09T08:05:00"), now)).toBe("Mon 9 Nov");
});

it("tells a moment with its time, once", () => {
  const now = at("2026-11-12T07:42:00");
  expect(momentShort(at("2026-11-12T07:24:00"), now)).toBe("07:24");
  expect(momentShort(at("2026-11-11T18:10:00"), now)).toBe("yesterday 18:10");
  expect(momentShort(at("2026-11-13T06:00:00"), now)).toBe("Fri 13 Nov 06:00");
  expect(momentShort(at("2026-11-09T08:05:00"), now)).toBe("Mon 9 Nov 08:05");
});

it("writes the local time with an offset that gives the same moment back, to the second", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: at("2000-01-01T00:00:00Z"), max: at("2099-12-31T00:00:00Z") }),
      (moment) => {
        const second = Math.floor(moment / 1000) * 1000;
        expect(Date.parse(isoWithOffset(second))).toBe(second);
      },
    ),
  );
});

it("gives a field the minute, and takes nothing half typed for a moment", () => {
  const moment = at("2026-11-12T09:10:00");
  expect(momentOfField(fieldTime(moment))).toBe(moment);
  expect(momentOfField("2026-11-")).toBeNull();
  expect(momentOfField("2026-13-40T09:10")).toBeNull();
});

it("says how long something lasts in minutes, then hours", () => {
  expect([lasting(20_000), lasting(33 * 60_000), lasting(120 * 60_000), lasting(130 * 60_000)]).toEqual([
    "1 min",
    "33 min",
    "2 h",
    "2 h 10 min",
  ]);
});

it("tells a day that is kept as a date by its name, in whatever zone it is read", () => {
  expect(dayOfDate("2028-05-31")).toBe("31 May 2028");
  expect(dayOfDate("2028-02-29")).toBe("29 February 2028");
});
