import { defineQuantity } from "../registry/define-quantity.ts";
import { STANDARD_ATMOSPHERE } from "./sources.ts";
import { HEIGHT_RANGE_m, pressureAt_Pa } from "./standard-atmosphere-model.ts";

export const standardPressure = defineQuantity({
  id: "standard-pressure",
  title: "Pressure of the standard atmosphere",
  inputs: [
    {
      name: "geopotentialAltitude_m",
      unit: "m",
      range: HEIGHT_RANGE_m,
      meaning: "geopotential altitude; a pressure altitude is one",
    },
  ],
  output: { name: "pressure_Pa", unit: "Pa" },
  formula: "to 11 km: p0 (1 − 0.0065 H / T0)^(g / (0.0065 R)); above: p11 exp(−g (H − 11 000) / (R T11))",
  sources: [STANDARD_ATMOSPHERE],
  compute: ({ geopotentialAltitude_m }) => pressureAt_Pa(geopotentialAltitude_m),
});
