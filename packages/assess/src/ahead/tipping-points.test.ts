import type { Book } from "@witnessmark/book";
import { type AircraftState, emptyState } from "@witnessmark/ledger";
import { beforeAll, describe, expect, it } from "vitest";
import { assess } from "../assess.ts";
import type { Flight } from "../assessment.ts";
import { demoBook } from "../testing/demo-book.ts";
import { DEMO_NOW_ms, demoFlight } from "../testing/demo-flight.ts";
import { allTips, type TippingPoint, type Tips, tippingPoints, tipsOfFlight } from "./tipping-points.ts";

let book: Book;
let state: AircraftState;
let tips: Tips;
let points: readonly TippingPoint[];

beforeAll(async () => {
  book = await demoBook();
  state = emptyState("ZZ-SKR");
  tips = tipsOfFlight(book, state, demoFlight, DEMO_NOW_ms);
  points = tips.points;
});

const pointOf = (variable: string, verdict: string): TippingPoint => {
  const found = points.find((point) => point.variable === variable && point.verdict === verdict);
  if (found === undefined) throw new Error(`expected ${variable} to tip ${verdict}`);
  return found;
};

const statusIn = (flight: Flight, verdict: string) =>
  assess(book, state, flight, DEMO_NOW_ms).verdicts.find(({ id }) => id === verdict)?.status;

describe("where the answer tips over", () => {
  it("is the gust of which 20 kt lie across the runway: 20 / sin(290° − 240°) = 26.1 kt", () => {
    const point = pointOf("gust:destination", "wind:destination:crosswind");
    const edge_kt = 20 / Math.sin((50 * Math.PI) / 180);
    expect(point.now).toBeCloseTo(22, 6);
    expect(point.holds).toBeLessThanOrEqual(edge_kt);
    expect(point.changes).toBeGreaterThan(edge_kt);
    expect(point.changes - point.holds).toBeLessThanOrEqual(0.25);
    expect(point).toMatchObject({ was: "caution", becomes: "stop", better: false, unit: "kt" });
  });

  it("is the mass at which a seat is full: 120 kg by the book", () => {
    const point = pointOf("item:technician", "load:station:seat-4");
    expect(point.holds).toBeLessThanOrEqual(120);
    expect(point.changes).toBeGreaterThan(120);
    expect(point.changes).toBeLessThan(120.5);
  });

  it("is where assess itself answers otherwise, and does not on the near side", () => {
    const { plan } = demoFlight;
    const route = plan?.route;
    if (plan === undefined || route === undefined) throw new Error("expected a route");
    const point = pointOf("time", "fuel:required");
    const inTheAir = (time_min: number): Flight => ({
      ...demoFlight,
      plan: { ...plan, route: { ...route, time: { value: time_min, unit: "min" } } },
    });
    expect(point.becomes).toBe("stop");
    expect(statusIn(inTheAir(point.now), point.verdict)).toBe(point.was);
    expect(statusIn(inTheAir(point.holds), point.verdict)).not.toBe("stop");
    expect(statusIn(inTheAir(point.changes), point.verdict)).toBe("stop");
  });

  it("comes with the likeliest first, each within what is plausible", () => {
    const far = points.map(({ likelihood_1 }) => likelihood_1);
    expect(far).toEqual(far.toSorted((a, b) => a - b));
    for (const { low, high, now, holds, changes } of points) {
      for (const value of [now, holds, changes]) {
        expect(value).toBeGreaterThanOrEqual(low);
        expect(value).toBeLessThanOrEqual(high);
      }
    }
  });

  it("is where a table of the book ends: what is not known there is open, though something warns already", () => {
    // the tables of the demo's turboprop go to 40 °C
    for (const [variable, verdict] of [
      ["oat:departure", "runway:departure:take-off"],
      ["oat:destination", "runway:destination:landing"],
    ] as const) {
      const point = pointOf(variable, verdict);
      expect(point.holds).toBeLessThanOrEqual(40 + 1e-6);
      expect(point.changes).toBeGreaterThan(40);
      expect(point.changes - point.holds).toBeLessThanOrEqual(0.25);
      expect(point).toMatchObject({ was: "clear", becomes: "open", better: false });
    }
  });

  it("names a mass by its place in the words of the book, where nobody said what it is", () => {
    const { plan } = demoFlight;
    const load = plan?.load;
    if (plan === undefined || load === undefined) throw new Error("expected a load");
    const items = load.items.map((item) => (item.station === "aft-bay" ? { ...item, what: "" } : item));
    const unnamed: Flight = { ...demoFlight, plan: { ...plan, load: { ...load, items } } };
    const titles = tippingPoints(book, state, unnamed, DEMO_NOW_ms).map(({ title }) => title);
    expect(titles).toContain("mass, Aft bay");
    expect(titles.join(" ")).not.toContain("aft-bay");
  });

  it("says of each value that tips nothing how far it was looked at: at its ends the answer is what it is", () => {
    const tipping = new Set(points.map(({ variable }) => variable));
    const steady = tips.steady.find(({ variable }) => variable === "qnh:departure");
    if (steady === undefined)
      throw new Error("expected that no altimeter setting at the departure changes anything");
    for (const { variable, low, now, high } of tips.steady) {
      expect(tipping).not.toContain(variable);
      expect(now).toBeGreaterThanOrEqual(low);
      expect(now).toBeLessThanOrEqual(high);
    }
    const { plan } = demoFlight;
    const departure = plan?.departure;
    if (plan === undefined || departure === undefined) throw new Error("expected a departure");
    const saidAt = (value: number): readonly string[] => {
      const typed = { qnh: { value, unit: "hPa" as const }, observedAt: "2026-11-12T08:20:00.000+00:00" };
      const flight: Flight = { ...demoFlight, plan: { ...plan, departure: { ...departure, typed } } };
      const { verdicts } = assess(book, state, flight, DEMO_NOW_ms);
      return verdicts.filter(({ status }) => status === "stop" || status === "open").map(({ id }) => id);
    };
    expect(saidAt(steady.low)).toEqual(saidAt(steady.now));
    expect(saidAt(steady.high)).toEqual(saidAt(steady.now));
  });

  it("is the same when several look for it, each at a share of the values", () => {
    const shares = [0, 1, 2].map((part) =>
      tipsOfFlight(book, state, demoFlight, DEMO_NOW_ms, { part, of: 3 }),
    );
    expect(shares.every((share) => share.points.length < points.length)).toBe(true);
    const { points: found, steady } = allTips(shares);
    expect(found).toEqual(points);
    expect(new Set(steady)).toEqual(new Set(tips.steady));
  });

  it("is nowhere for a flight that is only named", () => {
    const { plan, ...named } = demoFlight;
    expect(plan).toBeDefined();
    expect(tippingPoints(book, state, named, DEMO_NOW_ms)).toEqual([]);
    expect(tippingPoints(book, state, null, DEMO_NOW_ms)).toEqual([]);
  });
});
