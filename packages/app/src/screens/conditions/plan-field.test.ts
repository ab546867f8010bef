import { emptyState, type PlannedPlace } from "@witnessmark/ledger";
import { describe, expect, it } from "vitest";
import {
  fieldAt,
  meantField,
  planOf,
  wholeRoute,
  withField,
  withKnownReports,
  withOwn,
  withPlaces,
  withPlan,
  withTyped,
  withVariableWind,
} from "./plan-field.ts";

const state = emptyState("ZZ-SKR");
const flight = { id: "f", from: "ZZTW", to: "ZZQN", offBlocks: "2026-11-12T09:10:00+00:00" };
const NOON = "2026-11-12T12:00:00+00:00";
const LATER = "2026-11-12T12:40:00+00:00";

describe("what is planned of a field", () => {
  it("the title follows the field that is chosen", () => {
    const next = withField(flight, state, "destination", fieldAt("ZZPK", "33"));
    expect(next.to).toBe("ZZPK");
    expect(next.plan?.destination).toEqual({ code: "ZZPK", runway: "33" });
    expect(withField(next, state, "destination", undefined).plan).not.toHaveProperty("destination");
  });

  it("what was said of a field stays with the flight while it goes by that field", () => {
    const place = (code: string) => ({ code }) as PlannedPlace; // only the code is looked at
    const said = [place("ZZST"), place("ZZNW")];
    const there = withField(flight, state, "destination", fieldAt("ZZST"));
    expect(withPlaces(there, state, said).plan?.places).toEqual([place("ZZST")]);
    const elsewhere = withField(withPlaces(there, state, said), state, "destination", fieldAt("ZZPK"));
    expect(withPlaces(elsewhere, state, said).plan).not.toHaveProperty("places");
    expect(withPlaces(flight, state, said)).toBe(flight);
  });

  it("a field that another part of the flight has brings its reports along, and not its runway", () => {
    const metar = { text: "METAR ZZTW", receivedAt: NOON };
    const plan = { ...planOf(flight, state), departure: { code: "ZZTW", runway: "06", metar } };
    expect(withKnownReports(fieldAt("ZZTW"), plan)).toEqual({ code: "ZZTW", metar });
    expect(withKnownReports(fieldAt("ZZQN"), plan)).toEqual({ code: "ZZQN" });
  });

  it("what is typed keeps the time of the first element: nothing looks newer than it is", () => {
    const first = withTyped(fieldAt("ZZQN", "29"), "qnh", { value: 1008, unit: "hPa" }, NOON);
    const second = withTyped(first, "oat", { value: 5, unit: "degC" }, LATER);
    expect(second.typed).toEqual({
      observedAt: NOON,
      qnh: { value: 1008, unit: "hPa" },
      oat: { value: 5, unit: "degC" },
    });
  });

  it("the last element taken away takes the whole with it", () => {
    const typed = withTyped(fieldAt("ZZQN", "29"), "qnh", { value: 1008, unit: "hPa" }, NOON);
    expect(withTyped(typed, "qnh", undefined, NOON)).toEqual(fieldAt("ZZQN", "29"));
  });

  it("a wind of no direction takes the place of one that had, and the other way round", () => {
    const from = withTyped(fieldAt("ZZQN", "29"), "windFrom", { value: 240, unit: "deg" }, NOON);
    const variable = withVariableWind(from, LATER);
    expect(variable.typed).toEqual({ observedAt: NOON, windVariable: true });
    expect(withTyped(variable, "windFrom", { value: 250, unit: "deg" }, LATER).typed).toEqual({
      observedAt: NOON,
      windFrom: { value: 250, unit: "deg" },
    });
    expect(withTyped(variable, "windFrom", undefined, LATER)).toEqual(fieldAt("ZZQN", "29"));
  });

  it("an empty part is no part", () => {
    const plan = planOf(flight, state);
    expect(withOwn(plan, { crosswind: undefined })).toBeUndefined();
    expect(wholeRoute({})).toBeUndefined();
    expect(withPlan(flight, state, { route: undefined }).plan).toEqual(plan);
  });

  it("a route of which a part is missing is none: nothing is taken for nought", () => {
    const [distance, time, level] = [
      { value: 128, unit: "NM" },
      { value: 52, unit: "min" },
      { value: 17_000, unit: "ft" },
    ] as const;
    expect(wholeRoute({ distance, time })).toBeUndefined();
    expect(wholeRoute({ distance, time, level, taxiFuel: undefined })).toEqual({ distance, time, level });
  });

  it("the flight's own words name a field of the book, in any case", () => {
    const field = { code: "ZZQN", name: "Quern" } as never; // only the code is looked at
    expect(meantField({ ...flight, to: " zzqn" }, [field], "destination")).toBe(field);
    expect(meantField(flight, [field], "alternate")).toBeUndefined();
  });
});
