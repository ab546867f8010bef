import type { EquipmentOf, FlightKind } from "../relief.ts";
import type { Citations } from "../ruling.ts";

export const REQUIRED_CITATIONS: Citations = [
  {
    title: "14 CFR 91.205: powered aircraft with standard category airworthiness certificates",
    locator: "(b) to (d)",
    edition: "eCFR issue 2026-08-24",
    url: "https://www.ecfr.gov/on/2026-08-24/title-14/section-91.205",
    status: "published",
  },
];

/** Shoulder harness: front seats of small aeroplanes made after 18 July 1978, all seats after 12 December 1986. */
const FRONT_HARNESS_AFTER = "1978-07-18";
const ALL_HARNESS_AFTER = "1986-12-12";

const asked = (when: boolean | undefined, ...items: readonly string[]): readonly string[] =>
  when === false ? [] : items;

function harness(manufacturedOn: string | undefined): readonly string[] {
  if (manufacturedOn === undefined || manufacturedOn > ALL_HARNESS_AFTER)
    return ["shoulder-harness-all-seats"];
  return manufacturedOn > FRONT_HARNESS_AFTER ? ["shoulder-harness-front-seats"] : [];
}

const byDay = (of: EquipmentOf): readonly string[] => [
  "airspeed-indicator",
  "altimeter",
  "magnetic-direction-indicator",
  "tachometer-each-engine",
  ...asked(of.oilPressureSystem, "oil-pressure-each-engine"),
  of.cooling === "liquid" ? "coolant-temperature-each-engine" : "oil-temperature-each-engine",
  ...asked(of.altitudeEngine, "manifold-pressure-each-engine"),
  "fuel-quantity-each-tank",
  ...asked(of.retractable, "gear-position-indicator"),
  ...asked(of.certifiedAfter1996, "anticollision-lights"),
  ...asked(of.forHireOverWater, "flotation-gear", "pyrotechnic-signal"),
  "safety-belts",
  ...harness(of.manufacturedOn),
  ...asked(of.locatorRequired, "elt"),
];

const byNight = (of: EquipmentOf): readonly string[] => [
  "position-lights",
  ...asked(of.certifiedAfter1996 === true ? false : undefined, "anticollision-lights"),
  ...asked(of.forHire, "landing-light"),
  "electrical-source",
  ...asked(of.usesFuses, "spare-fuses"),
];

const BY_INSTRUMENTS = [
  "two-way-radio-and-navigation",
  "rate-of-turn-indicator",
  "slip-skid-indicator",
  "sensitive-altimeter",
  "clock-hms",
  "generator-or-alternator",
  "attitude-indicator",
  "heading-gyro",
] as const;

/** What 91.205 asks for on a kind of flight, in the order of the rule. */
export function requiredEquipment(kind: FlightKind, of: EquipmentOf): readonly string[] {
  return [
    ...byDay(of),
    ...(kind.endsWith("night") ? byNight(of) : []),
    ...(kind.startsWith("ifr") ? BY_INSTRUMENTS : []),
  ];
}
