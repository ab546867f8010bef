import { describe, expect, it } from "vitest";
import type { PlannedFlight } from "../flight.ts";
import { parseEvent } from "../parse-event.ts";
import { plannedFlight } from "../readers.ts";
import { Scene } from "../testing/scene.ts";
import { fold } from "./fold.ts";

const PLANNED: PlannedFlight = {
  from: "ZZTW",
  to: "ZZQN",
  offBlocks: "2031-05-04T09:10:00.000+02:00",
  plan: {
    rulePack: "us-part-91",
    flightRules: "VFR",
    load: {
      items: [
        { id: "1", station: "seat-1", what: "Pilot", mass: { value: 84, unit: "kg" }, known: "stated" },
      ],
      fuel: [{ tank: "left", volume: { value: 170, unit: "L" } }],
    },
    destination: { code: "ZZQN", runway: "29", condition: "wet" },
    own: { crosswind: { value: 15, unit: "kt" }, landingFactor_1: 1.15 },
  },
};

function story() {
  const scene = new Scene();
  const phone = scene.phone("Ada");
  const plan = (flight: string, changed: Partial<PlannedFlight> = {}, by = phone) =>
    scene.say(by, { type: "flight.planned", body: { flight, planned: { ...PLANNED, ...changed } } });
  return { scene, phone, plan, state: () => fold(scene.events) };
}

describe("flights", () => {
  it("are as they were planned last, whoever planned them, and carry their id", () => {
    const { scene, plan, state } = story();
    const flight = scene.id();
    plan(flight);
    plan(flight, { to: "ZZPK" }, scene.phone("Ben"));
    expect(state().flights.size).toBe(1);
    expect(plannedFlight(state())?.planned).toEqual({ ...PLANNED, id: flight, to: "ZZPK" });
  });

  it("that were dropped are planned no more; the one planned before is then the last", () => {
    const { scene, phone, plan, state } = story();
    const [first, second] = [scene.id(), scene.id()];
    plan(first);
    plan(second);
    expect(plannedFlight(state())?.id).toBe(second);
    plan(first);
    expect(plannedFlight(state())?.id).toBe(first);
    scene.say(phone, { type: "flight.dropped", body: { flight: first, why: "Weather" } });
    expect(plannedFlight(state())?.id).toBe(second);
  });

  it("go to a field of which neither runway nor surface is said yet, with the report that is there already", () => {
    const { scene, plan } = story();
    const report = {
      text: "METAR ZZQN 041150Z 24014KT 9999 BKN022 05/03 Q1008",
      receivedAt: PLANNED.offBlocks,
    };
    plan(scene.id(), {
      plan: { rulePack: "us-part-91", flightRules: "VFR", destination: { code: "ZZQN", metar: report } },
    });
    const event = scene.events.at(-1);
    expect(parseEvent(event)).toStrictEqual({ ok: true, event });
  });

  it("of which a part makes no sense are refused, with the place of the fault", () => {
    const { scene, plan } = story();
    plan(scene.id());
    const event = scene.events.at(-1);
    expect(parseEvent(event)).toStrictEqual({ ok: true, event });
    const own = { landingFactor_1: 0.5 };
    const planned = { ...PLANNED, plan: { ...PLANNED.plan, own } };
    const bad = parseEvent({ ...event, body: { flight: scene.id(), planned } });
    expect(bad.ok).toBe(false);
    expect(JSON.stringify(bad)).toContain("landingFactor_1");
    expect(JSON.stringify(bad)).toContain("a number from 1 to 10");
  });
});
