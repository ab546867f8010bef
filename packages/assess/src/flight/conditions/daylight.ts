import {
  arePositionLightsRequired,
  type CalendarDate,
  type EarthPlace,
  isCivilNight,
  type SunDay,
  sunDay,
  toSI,
  utcOffsetAt_s,
} from "@witnessmark/engine";
import type { Status } from "@witnessmark/ledger";
import type { FlightField } from "../field-of.ts";
import { remembered } from "../remembered.ts";
import { derived, type Figure } from "./figure.ts";
import type { FieldTime } from "./times.ts";

/** Daylight at a field when it is used. */
export interface DaylightFigures {
  readonly at_ms: number;
  /** Between sunset and the end of civil twilight, and the like in the morning, is neither. */
  readonly light: "day" | "twilight" | "night";
  /** Of the day of the place on which it is used; absent where the sun does not pass. */
  readonly sunrise_ms?: number;
  readonly sunset_ms?: number;
  readonly civilDawn_ms?: number;
  readonly civilDusk_ms?: number;
  /** Until sunset; below zero from sunset on, or as much as it is before sunrise. Absent where the sun stays up or down. */
  readonly left_s?: number;
  readonly lights: boolean;
  readonly status: Status;
  /** The latest off blocks at which it is still day there; absent unless it is day as planned. */
  readonly latestOffBlocks_ms?: number;
}

/** The date that the clock of a place shows. */
function dateAt(at_ms: number, zone: string): CalendarDate {
  const local = new Date(at_ms + utcOffsetAt_s({ zone }, at_ms) * 1000);
  return { year: local.getUTCFullYear(), month: local.getUTCMonth() + 1, day: local.getUTCDate() };
}

const passing_ms = (passage: SunDay["sunset"]): number | undefined =>
  passage.kind === "at" ? passage.at_ms : undefined;

/** Day is day; without lights twilight is a caution and night a stop; with lights neither is. */
function statusOf(light: DaylightFigures["light"], lights: boolean): Status {
  if (light === "day" || lights) return "clear";
  return light === "twilight" ? "caution" : "stop";
}

function left_s(
  at_ms: number,
  sunrise_ms: number | undefined,
  sunset_ms: number | undefined,
): number | undefined {
  if (sunrise_ms !== undefined && at_ms < sunrise_ms) return (at_ms - sunrise_ms) / 1000;
  return sunset_ms === undefined ? undefined : (sunset_ms - at_ms) / 1000;
}

const placeOf = ({ latitude_deg, longitude_deg }: FlightField): EarthPlace => ({
  latitude_rad: toSI(latitude_deg, "deg"),
  longitude_rad: toSI(longitude_deg, "deg"),
});

/** Local midnights fall on quarters of an hour of universal time. */
const QUARTER_MS = 900_000;
/** Of each field by quarter of an hour: a timeline asks for the same day again and again. It changes no answer. */
const days = new WeakMap<FlightField, Map<number, SunDay>>();

function dayAt(field: FlightField, at_ms: number): SunDay {
  const quarter = Math.floor(at_ms / QUARTER_MS);
  const ofField = days.get(field) ?? new Map<number, SunDay>();
  days.set(field, ofField);
  const known = ofField.get(quarter);
  if (known !== undefined) return known;
  const made = sunDay(placeOf(field), dateAt(quarter * QUARTER_MS, field.zone), { zone: field.zone });
  ofField.set(quarter, made);
  return made;
}

function daylightAt(field: FlightField, time: FieldTime): DaylightFigures {
  const place = placeOf(field);
  const at_ms = time.planned_ms;
  const day = dayAt(field, at_ms);
  const light = isCivilNight(place, at_ms)
    ? "night"
    : arePositionLightsRequired(place, at_ms)
      ? "twilight"
      : "day";
  const [sunrise_ms, sunset_ms] = [passing_ms(day.sunrise), passing_ms(day.sunset)];
  const [civilDawn_ms, civilDusk_ms] = [passing_ms(day.civilDawn), passing_ms(day.civilDusk)];
  const left = left_s(at_ms, sunrise_ms, sunset_ms);
  const isDayUntilSunset = light === "day" && sunset_ms !== undefined && sunset_ms >= at_ms;
  return {
    at_ms,
    light,
    ...(sunrise_ms === undefined ? {} : { sunrise_ms }),
    ...(sunset_ms === undefined ? {} : { sunset_ms }),
    ...(civilDawn_ms === undefined ? {} : { civilDawn_ms }),
    ...(civilDusk_ms === undefined ? {} : { civilDusk_ms }),
    ...(left === undefined ? {} : { left_s: left }),
    lights: field.lights,
    status: statusOf(light, field.lights),
    ...(isDayUntilSunset ? { latestOffBlocks_ms: sunset_ms - time.afterOffBlocks_ms } : {}),
  };
}

const rememberedDaylight = remembered<DaylightFigures>();

/** Whether it is day at a field when it is used, how long still, and whether there are lights. */
export const daylightFigures = (field: FlightField, time: Figure<FieldTime>): Figure<DaylightFigures> =>
  derived(time, `the daylight at ${field.code}`, (at) =>
    rememberedDaylight(field, [at.planned_ms, at.afterOffBlocks_ms], () => daylightAt(field, at)),
  );
