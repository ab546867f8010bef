import type { Flight } from "@witnessmark/assess";
import { describe, expect, it } from "vitest";
import { withSaid } from "./flight-said.ts";

const OFF = "2026-11-12T09:10:00+00:00";
const departure = { code: "ZZTW", runway: "06", metar: { text: "METAR ZZTW", receivedAt: OFF } } as const;
const destination = { code: "ZZQN", runway: "29", taf: { text: "TAF ZZQN", receivedAt: OFF } } as const;
const alternate = { code: "ZZPK", runway: "14" } as const;
const route = {
  distance: { value: 112, unit: "NM" },
  time: { value: 48, unit: "min" },
  level: { value: 9000, unit: "ft" },
} as const;
const load = { items: [], fuel: [] } as const;
const flight: Flight = {
  id: "01934f0a-7a00-7000-8000-000000000001",
  from: "ZZTW",
  to: "ZZQN",
  offBlocks: OFF,
  plan: { rulePack: "us-part-91", flightRules: "VFR", load, route, departure, destination, alternate },
};

describe("a flight that is named anew", () => {
  it("keeps all that was planned when it leaves later", () => {
    const later = { from: "ZZTW", to: "ZZQN", offBlocks: "2026-11-12T11:00:00+00:00" };
    expect(withSaid(flight, later)).toEqual({ ...flight, ...later });
  });

  it("takes the fields along, with their reports, when it goes the other way; the route is as long", () => {
    const { plan } = withSaid(flight, { from: "ZZQN", to: "ZZTW", offBlocks: OFF });
    expect(plan).toEqual({ ...flight.plan, departure: destination, destination: departure });
  });

  it("says nothing of a field that nobody planned for, nor of a way between two others", () => {
    const { plan } = withSaid(flight, { from: "ZZTW", to: "ZZXX", offBlocks: OFF });
    expect(plan).toEqual({
      rulePack: "us-part-91",
      flightRules: "VFR",
      load,
      departure,
      alternate,
    });
  });

  it("lands at what was its alternate, as that was planned", () => {
    expect(withSaid(flight, { from: "ZZTW", to: "ZZPK", offBlocks: OFF }).plan?.destination).toEqual(
      alternate,
    );
  });

  it("is only named where nothing was planned", () => {
    const { plan: _none, ...named } = flight;
    expect(withSaid(named, { from: "ZZQN", to: "ZZTW", offBlocks: OFF })).toEqual({
      ...named,
      from: "ZZQN",
      to: "ZZTW",
    });
  });
});
