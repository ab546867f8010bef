import type { QuantitySource } from "../registry/quantity.ts";

export const STANDARD_ATMOSPHERE: QuantitySource = {
  title: "ISO 2533, Standard Atmosphere; ICAO Doc 7488, Manual of the ICAO Standard Atmosphere",
  edition: "1975; 3rd edition, 1993",
  locator: "defining constants and equations, layers to 20 km",
  status: "published",
};

export const WMO_8: QuantitySource = {
  title: "WMO-No. 8, Guide to Instruments and Methods of Observation",
  edition: "2008, 2014",
  locator: "Annex 4.B",
  status: "published",
};

export const AIM: QuantitySource = {
  title: "FAA Aeronautical Information Manual",
  edition: "2023",
  locator: "chapter 7 section 2",
  status: "published",
};

export const SMITHSONIAN: QuantitySource = {
  title: "Smithsonian Meteorological Tables; the form that the US weather service uses",
  edition: "1951",
  locator: "p. 269",
  status: "published",
};

export const NWS_DENSITY_ALTITUDE: QuantitySource = {
  title: "US National Weather Service, density altitude formula sheet",
  locator: "virtual temperature, then 145 366 (1 − (17.326 P / Tv)^0.235)",
  status: "published",
};

export const RULE_OF_THUMB: QuantitySource = {
  title: "Rule of thumb as taught to pilots",
  status: "common practice",
};
