import type { FlightKind } from "../relief.ts";
import type { Citations } from "../ruling.ts";

export const REQUIRED_CITATIONS: Citations = [
  {
    title: "Regulation (EU) 965/2012, NCO.IDE.A.115, A.120, A.125 and A.190",
    edition: "consolidated text",
    status: "from memory",
    note: "The items are told by the names of the other pack's list, so that a book says each once.",
  },
];

const BY_DAY = [
  "magnetic-direction-indicator",
  "clock-hms",
  "altimeter",
  "airspeed-indicator",
  "safety-belts",
  "shoulder-harness-front-seats",
  "fuel-quantity-each-tank",
] as const;

const BY_NIGHT = [
  "anticollision-lights",
  "position-lights",
  "landing-light",
  "instrument-lights",
  "rate-of-turn-indicator",
  "slip-skid-indicator",
  "attitude-indicator",
  "vertical-speed-indicator",
  "heading-gyro",
  "electrical-source",
] as const;

const BY_INSTRUMENTS = [
  "two-way-radio-and-navigation",
  "sensitive-altimeter",
  "rate-of-turn-indicator",
  "slip-skid-indicator",
  "attitude-indicator",
  "vertical-speed-indicator",
  "heading-gyro",
  "outside-air-temperature",
  "pitot-heat",
  "alternate-static",
  "electrical-source",
] as const;

/** What Part-NCO asks an aeroplane for on a kind of flight. */
export function requiredEquipment(kind: FlightKind): readonly string[] {
  return [
    ...new Set([
      ...BY_DAY,
      ...(kind.endsWith("night") ? BY_NIGHT : []),
      ...(kind.startsWith("ifr") ? BY_INSTRUMENTS : []),
      "elt",
    ]),
  ];
}
