import { sunset } from "@witnessmark/engine";
import { clockText } from "../../words/local-time.ts";
import type { DaylightFigures } from "./daylight.ts";
import { marginOfTime } from "./texts.ts";
import { type Draft, type FieldContext, NOT_KNOWN, openSays, type Told, told, withMissing } from "./told.ts";

const SOURCES = [
  { title: "US Naval Observatory, definitions of rise, set and twilight", locator: "sunset, civil twilight" },
  { title: "Witnessmark's own rule", locator: "without lights twilight is a caution and night a stop" },
];

function sunText(
  { at_ms, sunrise_ms, sunset_ms }: DaylightFigures,
  clock: (at_ms: number) => string,
): string {
  if (sunrise_ms !== undefined && (at_ms < sunrise_ms || sunset_ms === undefined))
    return `Sunrise ${clock(sunrise_ms)}`;
  return sunset_ms === undefined ? "No sunset on this day" : `Sunset ${clock(sunset_ms)}`;
}

/** Whether it is day at the field when it is used. */
export function lightVerdict(field: FieldContext): Told {
  const { figures } = field;
  const { role, planned, daylight } = figures;
  const { value, missing } = daylight;
  const id = `light:${role}`;
  const base = { topic: "light" as const, title: `Daylight at ${planned.code}`, sources: SOURCES };
  if (value === undefined || missing.length > 0)
    return told(field, { ...base, id, says: openSays(missing), margin: NOT_KNOWN }, "open", missing);
  const write = () => ({ ...base, ...dayWords(field, value) });
  return told(field, { id, write }, withMissing(value.status, missing));
}

function dayWords(
  { context, figures }: FieldContext,
  value: DaylightFigures,
): Omit<Draft, "id" | "topic" | "title" | "sources"> {
  const { role, planned } = figures;
  const clock = (at_ms: number): string => clockText(at_ms, context.clock);
  const what = role === "departure" ? "Take-off" : "Landing";
  const lights = value.lights ? `lights at ${planned.code}` : `no lights at ${planned.code}`;
  const isBeforeSunrise = value.sunrise_ms !== undefined && value.at_ms < value.sunrise_ms;
  const inWhat = { day: "", twilight: " in the twilight", night: " by night" }[value.light];
  const says = `${sunText(value, clock)}, ${value.light === "day" ? "" : `${what.toLowerCase()}${inWhat} at ${clock(value.at_ms)}, `}${lights}`;
  return {
    says,
    ...(value.left_s === undefined
      ? {}
      : { margin: marginOfTime(value.left_s, isBeforeSunrise ? "too early" : "too late") }),
    lines: [
      { label: what, value: clock(value.at_ms) },
      ...(value.sunrise_ms === undefined ? [] : [{ label: "Sunrise", value: clock(value.sunrise_ms) }]),
      ...(value.sunset_ms === undefined ? [] : [{ label: "Sunset", value: clock(value.sunset_ms) }]),
      ...(value.civilDusk_ms === undefined
        ? []
        : [{ label: "End of civil twilight", value: clock(value.civilDusk_ms) }]),
      { label: "Lights", value: value.lights ? "there are" : "none" },
    ],
    formula: sunset,
    because: [`${what}${inWhat}, and there are no lights`],
    wayOut: [isBeforeSunrise ? "Go later" : "Go earlier", "A field with lights"],
    until:
      value.lights || value.latestOffBlocks_ms === undefined
        ? undefined
        : {
            at_ms: value.latestOffBlocks_ms,
            because: `later off blocks, ${what.toLowerCase()} at ${planned.code} is after sunset`,
          },
  };
}
