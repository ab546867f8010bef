import { defineQuantity } from "../registry/define-quantity.ts";
import type { QuantitySource } from "../registry/quantity.ts";
import { fromSI, toSI } from "../units/convert.ts";
import { WATER_RANGE_K } from "./humidity.ts";

/** Other authors' forms of the saturation vapour pressure, for comparing with; the program uses WMO-No. 8. */
const form = (
  id: string,
  title: string,
  formula: string,
  source: QuantitySource,
  compute_Pa: (temperature_K: number) => number,
  range: readonly [number, number] = WATER_RANGE_K,
) =>
  defineQuantity({
    id,
    title,
    inputs: [{ name: "temperature_K", unit: "K", range, meaning: "temperature of the water or ice" }],
    output: { name: "vapourPressure_Pa", unit: "Pa" },
    formula,
    sources: [source],
    crossCheckOnly: true,
    compute: ({ temperature_K }) => compute_Pa(temperature_K),
  });

export const vapourPressureNws = form(
  "vapour-pressure-nws",
  "Saturation vapour pressure over water, US weather service form",
  "e = 6.11 × 10^(7.5 t / (237.3 + t)) hPa, t in °C",
  { title: "US National Weather Service, vapour pressure formula sheet", status: "published" },
  (temperature_K) => {
    const t = fromSI(temperature_K, "degC");
    return toSI(6.11 * 10 ** ((7.5 * t) / (237.3 + t)), "hPa");
  },
);

export const vapourPressureBolton = form(
  "vapour-pressure-bolton",
  "Saturation vapour pressure over water, Bolton",
  "e = 6.112 exp(17.67 t / (t + 243.5)) hPa, t in °C",
  {
    title: "Bolton, The computation of equivalent potential temperature",
    edition: "1980",
    status: "published",
  },
  (temperature_K) => {
    const t = fromSI(temperature_K, "degC");
    return toSI(6.112 * Math.exp((17.67 * t) / (t + 243.5)), "hPa");
  },
);

export const vapourPressureBuck = form(
  "vapour-pressure-buck",
  "Saturation vapour pressure over water, Buck",
  "e = 6.1121 exp(17.502 t / (240.97 + t)) hPa, t in °C",
  {
    title: "Buck, New equations for computing vapor pressure and enhancement factor",
    edition: "1981",
    status: "from memory",
  },
  (temperature_K) => {
    const t = fromSI(temperature_K, "degC");
    return toSI(6.1121 * Math.exp((17.502 * t) / (240.97 + t)), "hPa");
  },
);

export const vapourPressureSonntag = form(
  "vapour-pressure-sonntag",
  "Saturation vapour pressure over water, Sonntag",
  "ln e = −6096.9385 / T + 16.635794 − 2.711193e-2 T + 1.673952e-5 T² + 2.433502 ln T, e in hPa, T in K",
  {
    title: "Sonntag, Important new values of the physical constants of 1986",
    edition: "1990",
    status: "from memory",
  },
  (T) =>
    toSI(
      Math.exp(-6096.9385 / T + 16.635794 - 2.711193e-2 * T + 1.673952e-5 * T * T + 2.433502 * Math.log(T)),
      "hPa",
    ),
);

const MURPHY_KOOP: QuantitySource = {
  title:
    "Murphy and Koop, Review of the vapour pressures of ice and supercooled water for atmospheric applications",
  edition: "Q. J. R. Meteorol. Soc. 131, 2005",
  locator: "equations 7 (ice) and 10 (water)",
  status: "published",
};

export const vapourPressureMurphyKoopWater = form(
  "vapour-pressure-murphy-koop-water",
  "Saturation vapour pressure over water, supercooled too, Murphy and Koop",
  "ln e = 54.842763 − 6763.22 / T − 4.21 ln T + 3.67e-4 T + tanh(0.0415 (T − 218.8)) (53.878 − 1331.22 / T − 9.44523 ln T + 0.014025 T), e in Pa, T in K",
  MURPHY_KOOP,
  (T) =>
    Math.exp(
      54.842763 -
        6763.22 / T -
        4.21 * Math.log(T) +
        0.000367 * T +
        Math.tanh(0.0415 * (T - 218.8)) * (53.878 - 1331.22 / T - 9.44523 * Math.log(T) + 0.014025 * T),
    ),
  [123.15, 332],
);

export const vapourPressureMurphyKoopIce = form(
  "vapour-pressure-murphy-koop-ice",
  "Saturation vapour pressure over ice, Murphy and Koop",
  "ln e = 9.550426 − 5723.265 / T + 3.53068 ln T − 0.00728332 T, e in Pa, T in K",
  MURPHY_KOOP,
  (T) => Math.exp(9.550426 - 5723.265 / T + 3.53068 * Math.log(T) - 0.00728332 * T),
  [110, 273.16],
);
