import type { FlightPlan, Report } from "@witnessmark/ledger";
import type { Flight } from "../assessment.ts";

/** Thursday 12 November 2026, 08:20 UTC: the invented morning on which the demo's flight is planned. */
export const DEMO_NOW_ms = Date.UTC(2026, 10, 12, 8, 20);

const report = (text: string): Report => ({ text, receivedAt: "2026-11-12T08:05:00.000Z" });
const person = (id: string, station: string, what: string, value: number) =>
  ({ id, station, what, mass: { value, unit: "kg" }, known: "stated" }) as const;

const plan: FlightPlan = {
  rulePack: "eu-part-nco",
  flightRules: "VFR",
  load: {
    items: [
      person("pilot", "seat-1", "Pilot", 84),
      person("surgeon", "seat-2", "Surgeon", 76),
      person("nurse", "seat-3", "Nurse", 68),
      person("technician", "seat-4", "Technician", 91),
      { ...person("lamp", "seat-6", "Slit lamp case", 34), known: "weighed" },
      { ...person("kit", "aft-bay", "Clinic kit", 68), known: "weighed" },
    ],
    fuel: [
      { tank: "left-tank", volume: { value: 212, unit: "L" } },
      { tank: "right-tank", volume: { value: 212, unit: "L" } },
    ],
  },
  route: {
    distance: { value: 152, unit: "NM" },
    time: { value: 48, unit: "min" },
    level: { value: 15_000, unit: "ft" },
    alternateTime: { value: 22, unit: "min" },
  },
  departure: {
    code: "ZZTW",
    runway: "24",
    condition: "dry",
    metar: report("METAR ZZTW 120750Z 25008KT 9999 SCT030 04/01 Q1008"),
    taf: report("TAF ZZTW 120500Z 1206/1306 25010KT 9999 SCT030"),
  },
  destination: {
    code: "ZZQN",
    runway: "29",
    condition: "wet",
    metar: report("METAR ZZQN 120750Z 24014G22KT 9999 -RA BKN022 05/03 Q1008"),
    taf: report("TAF ZZQN 120500Z 1206/1306 24014G22KT 9999 BKN022"),
  },
  alternate: {
    code: "ZZPK",
    runway: "33",
    condition: "dry",
    metar: report("METAR ZZPK 120750Z 30012KT 9999 SCT035 03/M01 Q1009"),
    taf: report("TAF ZZPK 120500Z 1206/1306 30012KT 9999 SCT035"),
  },
};

/** The island flight of the demo's turboprop, within its limits on the ground and in the air. */
export const demoFlight: Flight = {
  id: "01900000-0000-7000-8000-0000000000f1",
  from: "ZZTW",
  to: "ZZQN",
  offBlocks: "2026-11-12T09:10:00.000+00:00",
  plan,
};
