import type { Book } from "@witnessmark/book";
import { civilNights, toSI } from "@witnessmark/engine";
import { expect, it } from "vitest";
import { nightOfFlight } from "./night-of-flight.ts";

const MINUTE_ms = 60_000;
const ON_THE_EQUATOR = { latitude_deg: 0, longitude_deg: 0 };
const fields = ["ZZAA", "ZZBB"].map((code) => ({ code, ...ON_THE_EQUATOR })) as unknown as NonNullable<
  Book["fields"]
>; // no more of a field is read
const from_ms = Date.UTC(2026, 2, 20, 12);
const [night] = civilNights(
  { latitude_rad: toSI(ON_THE_EQUATOR.latitude_deg, "deg"), longitude_rad: 0 },
  { from_ms, to_ms: from_ms + 12 * 60 * MINUTE_ms },
);
const dusk_ms = night?.from_ms ?? Number.NaN;

/** Off blocks so long before dusk, with 48 min in the air. */
const isByNight = (before_min: number) =>
  nightOfFlight(
    { fields },
    { from: "ZZAA", to: "ZZBB", offBlocks: new Date(dusk_ms - before_min * MINUTE_ms).toISOString() },
    48 * 60,
  );

// common practice: ten minutes to taxi, as for every other time of the flight
it("counts to the landing, which is the taxi and the time in the air after off blocks", () => {
  expect(isByNight(60)).toBe(false);
  expect(isByNight(55)).toBe(true);
});

it("is not known while no time is said", () => {
  const flight = { from: "ZZAA", to: "ZZBB", offBlocks: new Date(from_ms).toISOString() };
  expect(nightOfFlight({ fields }, flight, undefined)).toBeUndefined();
});
