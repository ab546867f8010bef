import type { QuantitySource } from "../registry/quantity.ts";

export const STANDARD_ATMOSPHERE: QuantitySource = {
  title: "ISO 2533, Standard Atmosphere; ICAO Doc 7488, Manual of the ICAO Standard Atmosphere",
  edition: "1975; 3rd edition, 1993",
  locator: "defining constants and equations, layers to 20 km",
  status: "published",
};
