import { InputError } from "../input-error.ts";
import { defineQuantity } from "../registry/define-quantity.ts";
import { valueText } from "../registry/range-text.ts";
import { refuseDerived } from "../registry/refuse-derived.ts";
import { WMO_8 } from "./sources.ts";

const ZERO_CELSIUS_K = 273.15;

/** Where the WMO forms hold: over water −45 to 60 °C, over ice −65 to 0 °C. */
export const WATER_RANGE_K = [228.15, 333.15] as const;
const ICE_RANGE_K = [208.15, 273.15] as const;

/** 611.2 Pa exp(b t / (c + t)), t in °C. */
const magnus_Pa = (temperature_K: number, b: number, c: number): number => {
  const t = temperature_K - ZERO_CELSIUS_K;
  return 611.2 * Math.exp((b * t) / (c + t));
};
const inverseMagnus_K = (pressure_Pa: number, b: number, c: number): number => {
  const y = Math.log(pressure_Pa / 611.2);
  return ZERO_CELSIUS_K + (c * y) / (b - y);
};

export const overWater_Pa = (temperature_K: number): number => magnus_Pa(temperature_K, 17.62, 243.12);
const overIce_Pa = (temperature_K: number): number => magnus_Pa(temperature_K, 22.46, 272.62);
const dewPointOf_K = (pressure_Pa: number): number => inverseMagnus_K(pressure_Pa, 17.62, 243.12);
const frostPointOf_K = (pressure_Pa: number): number => inverseMagnus_K(pressure_Pa, 22.46, 272.62);

/** Refuses a dew point above the temperature: the air would hold more than it can. */
export function refuseSupersaturation(quantity: string, dewPoint_K: number, temperature_K: number): void {
  if (dewPoint_K <= temperature_K) return;
  throw new InputError("out-of-range", "dewPoint_K", {
    quantity,
    value: dewPoint_K,
    expected: `at most the temperature, ${valueText(temperature_K, "K")}`,
    received: valueText(dewPoint_K, "K"),
    remedy: "check that the two were not taken for each other",
  });
}

export const DEW_POINT_K = {
  name: "dewPoint_K",
  unit: "K",
  range: WATER_RANGE_K,
  meaning: "dew point, over water at every temperature, as weather reports give it",
} as const;

const AIR_TEMPERATURE_K = {
  name: "temperature_K",
  unit: "K",
  range: WATER_RANGE_K,
  meaning: "temperature of the air",
} as const;

export const vapourPressureWater = defineQuantity({
  id: "vapour-pressure-water",
  title: "Saturation vapour pressure over water",
  inputs: [AIR_TEMPERATURE_K],
  output: { name: "vapourPressure_Pa", unit: "Pa" },
  formula: "e = 6.112 exp(17.62 t / (243.12 + t)) hPa, t in °C",
  sources: [WMO_8],
  compute: ({ temperature_K }) => overWater_Pa(temperature_K),
});

export const vapourPressureIce = defineQuantity({
  id: "vapour-pressure-ice",
  title: "Saturation vapour pressure over ice",
  inputs: [{ name: "temperature_K", unit: "K", range: ICE_RANGE_K, meaning: "temperature of the ice" }],
  output: { name: "vapourPressure_Pa", unit: "Pa" },
  formula: "e = 6.112 exp(22.46 t / (272.62 + t)) hPa, t in °C",
  sources: [WMO_8],
  compute: ({ temperature_K }) => overIce_Pa(temperature_K),
});

export const dewPoint = defineQuantity({
  id: "dew-point",
  title: "Dew point from temperature and relative humidity",
  inputs: [
    AIR_TEMPERATURE_K,
    { name: "relativeHumidity_1", unit: "1", range: [0.001, 1], meaning: "relative humidity, over water" },
  ],
  output: { name: "dewPoint_K", unit: "K" },
  formula: "e = RH e_w(t); td = 243.12 ln(e / 6.112) / (17.62 − ln(e / 6.112)) °C",
  sources: [WMO_8],
  compute: ({ temperature_K, relativeHumidity_1 }) => {
    const dewPoint_K = Math.min(
      temperature_K,
      dewPointOf_K(relativeHumidity_1 * overWater_Pa(temperature_K)),
    );
    refuseDerived("dew-point", "dewPoint_K", dewPoint_K, "K", WATER_RANGE_K);
    return dewPoint_K;
  },
});

export const frostPoint = defineQuantity({
  id: "frost-point",
  title: "Frost point from dew point",
  inputs: [{ ...DEW_POINT_K, range: [WATER_RANGE_K[0], ZERO_CELSIUS_K] }],
  output: { name: "frostPoint_K", unit: "K" },
  formula: "e = e_w(td); tf = 272.62 ln(e / 6.112) / (22.46 − ln(e / 6.112)) °C",
  sources: [WMO_8],
  notes: ["Frost can form on a surface at the frost point, which is warmer than the dew point."],
  compute: ({ dewPoint_K }) => frostPointOf_K(overWater_Pa(dewPoint_K)),
});

export const relativeHumidity = defineQuantity({
  id: "relative-humidity",
  title: "Relative humidity from temperature and dew point",
  inputs: [AIR_TEMPERATURE_K, DEW_POINT_K],
  output: { name: "relativeHumidity_1", unit: "1" },
  formula: "RH = e_w(td) / e_w(t)",
  sources: [WMO_8],
  notes: ["Whole degrees in a weather report are worth about 3 % of humidity either way."],
  compute: ({ temperature_K, dewPoint_K }) => {
    refuseSupersaturation("relative-humidity", dewPoint_K, temperature_K);
    return overWater_Pa(dewPoint_K) / overWater_Pa(temperature_K);
  },
});

export const enhancementFactor = defineQuantity({
  id: "enhancement-factor",
  title: "Enhancement factor of the vapour pressure in moist air",
  inputs: [{ name: "pressure_Pa", unit: "Pa", range: [20_000, 110_000], meaning: "pressure of the air" }],
  output: { name: "enhancementFactor_1", unit: "1" },
  formula: "f = 1.0016 + 3.15e-6 p − 0.074 / p, p in hPa",
  sources: [{ ...WMO_8, status: "from memory" }],
  crossCheckOnly: true,
  notes: ["Left out of the moist density: worth under 0.01 % of it."],
  compute: ({ pressure_Pa }) => 1.0016 + 3.15e-8 * pressure_Pa - 7.4 / pressure_Pa,
});
