import { defineQuantity } from "../registry/define-quantity.ts";
import type { QuantitySource } from "../registry/quantity.ts";
import { gaugePressureAtTemperature } from "./gauge-pressure.ts";
import { AMBIENT_PRESSURE_Pa, IDEAL_GAS, SOLID_TEMPERATURE_RANGE_K, TYRE_RANGE_Pa } from "./inputs.ts";
import { tyreAction } from "./tyre-action.ts";

const TYRE_CARE: QuantitySource = {
  title: "Goodyear, Aircraft Tire Care and Maintenance",
  edition: "10/04",
  locator: "preventive maintenance, cold pressure setting",
  status: "published",
};

const RETENTION: QuantitySource = {
  title: "Bridgestone, Aircraft Tires: Care and Maintenance (citing FAA AC 20-97B)",
  locator: "Tables 1 and 2",
  status: "published",
};

const SERVICE_PRESSURE_Pa = {
  name: "servicePressure_Pa",
  unit: "Pa",
  range: [5e4, 3e6],
  meaning: "loaded service pressure, gauge, cold, at its own temperature",
} as const;

const READ_AGAINST_SERVICE = [
  { name: "gaugePressure_Pa", unit: "Pa", range: TYRE_RANGE_Pa, meaning: "pressure that the gauge shows" },
  {
    name: "temperature_K",
    unit: "K",
    range: SOLID_TEMPERATURE_RANGE_K,
    meaning: "temperature of the tyre when read",
  },
  SERVICE_PRESSURE_Pa,
  {
    name: "serviceTemperature_K",
    unit: "K",
    range: SOLID_TEMPERATURE_RANGE_K,
    meaning: "temperature for which the service pressure is stated",
  },
  AMBIENT_PRESSURE_Pa,
] as const;

interface ReadAgainstService {
  readonly gaugePressure_Pa: number;
  readonly temperature_K: number;
  readonly servicePressure_Pa: number;
  readonly serviceTemperature_K: number;
  readonly ambientPressure_Pa: number;
}

const share_1 = (given: ReadAgainstService): number =>
  given.gaugePressure_Pa /
  gaugePressureAtTemperature.compute({
    gaugePressure_Pa: given.servicePressure_Pa,
    temperature_K: given.serviceTemperature_K,
    newTemperature_K: given.temperature_K,
    ambientPressure_Pa: given.ambientPressure_Pa,
  });

/** What a tyre has of its service pressure, both at the temperature of the reading. Feeds `tyreAction` as percent. */
export const tyreShareOfService = defineQuantity({
  id: "tyre-share-of-service",
  title: "Share of its service pressure that a tyre has, at the temperature of the reading",
  inputs: READ_AGAINST_SERVICE,
  output: { name: "share_1", unit: "1" },
  formula: "p / ((ps + pa) T / Ts − pa)",
  sources: [TYRE_CARE, IDEAL_GAS],
  notes: [
    "A tyre reads high for two to three hours after landing; a low one is not passed on a warm reading.",
  ],
  compute: share_1,
});

export const tyreLoss = defineQuantity({
  id: "tyre-loss",
  title: "Loss of a tyre against its service pressure, at the temperature of the reading",
  inputs: READ_AGAINST_SERVICE,
  output: { name: "loss_1", unit: "1" },
  formula: "1 − p / ((ps + pa) T / Ts − pa), at least 0",
  sources: [TYRE_CARE, IDEAL_GAS],
  compute: (given) => Math.max(0, 1 - share_1(given)),
});

export const tyreActionBand = defineQuantity({
  id: "tyre-action-band",
  title: "Lower edge of the band of the tyre action table that a tyre is in",
  inputs: [
    {
      name: "share_1",
      unit: "1",
      range: [0, 2],
      meaning: "what the tyre has of its service pressure, temperature allowed for",
    },
  ],
  output: { name: "bandFrom_1", unit: "1" },
  formula: "over 105 %, 100 to 105, 95 to under 100, 90 to under 95, 80 to under 90, under 80",
  sources: [{ ...TYRE_CARE, edition: "10/04 and later", locator: "cold service pressure action table" }],
  notes: ["Only the row from 100 to 105 % was read in print; the others are from memory."],
  compute: ({ share_1: share }) => tyreAction(share * 100).from_percent / 100,
});

export const tyreLoadedPressure = defineQuantity({
  id: "tyre-loaded-pressure",
  title: "Loaded service pressure from the unloaded one",
  inputs: [
    {
      name: "unloadedPressure_Pa",
      unit: "Pa",
      range: SERVICE_PRESSURE_Pa.range,
      meaning: "service pressure with the wheel off the ground, gauge",
    },
  ],
  output: { name: "loadedPressure_Pa", unit: "Pa" },
  formula: "1.04 × unloaded",
  sources: [TYRE_CARE],
  notes: ["Find out which of the two the flight manual gives before comparing."],
  compute: ({ unloadedPressure_Pa }) => 1.04 * unloadedPressure_Pa,
});

export const tyreHighestPressure = defineQuantity({
  id: "tyre-highest-pressure",
  title: "Highest cold pressure of a tyre in service",
  inputs: [SERVICE_PRESSURE_Pa],
  output: { name: "highestPressure_Pa", unit: "Pa" },
  formula: "1.05 × service pressure; the lowest is the service pressure itself",
  sources: [TYRE_CARE],
  compute: ({ servicePressure_Pa }) => 1.05 * servicePressure_Pa,
});

const DAY_S = 86_400;

export const tyreRetentionLimit = defineQuantity({
  id: "tyre-retention-limit",
  title: "Loss that a mounted tyre may show in a pressure-retention check",
  inputs: [
    {
      name: "elapsed_s",
      unit: "s",
      range: [DAY_S / 2, DAY_S],
      meaning: "time between the two readings, after at least 12 hours to settle",
    },
  ],
  output: { name: "limit_1", unit: "1" },
  formula: "5 % in 24 h; 2.5 % in anything shorter, from 12 h",
  sources: [RETENTION],
  notes: ["The guidance names 12 h and 24 h; between them the stricter figure is taken."],
  compute: ({ elapsed_s }) => (elapsed_s >= DAY_S ? 0.05 : 0.025),
});
