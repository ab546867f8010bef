import { SEA_LEVEL_PA } from "../air/standard-atmosphere-model.ts";
import { defineQuantity } from "../registry/define-quantity.ts";
import { refuseDerived } from "../registry/refuse-derived.ts";
import { toSI } from "../units/convert.ts";
import { AMBIENT_PRESSURE_Pa } from "./inputs.ts";

const REFERENCE_STATES = {
  title: "14 CFR 25.1439(b)(5), 25.1443 and 23.1443(e) (2014): reference states of oxygen volumes",
  status: "published",
} as const;

export const NTPD_K = toSI(70, "degF");
export const STPD_K = 273.15;
export const BODY_K = 310.15;
export const WATER_AT_BODY_PA = toSI(47, "mmHg");

export const ntpdToStpd = defineQuantity({
  id: "ntpd-to-stpd",
  title: "Volume of free oxygen at 70 °F as volume at 0 °C, both dry at 760 mmHg",
  inputs: [
    { name: "volumeNtpd_m3", unit: "m3", range: [0, 100], meaning: "volume at 70 °F and 760 mmHg, dry" },
  ],
  output: { name: "volumeStpd_m3", unit: "m3" },
  formula: "V 273.15 K / 294.261 K",
  sources: [REFERENCE_STATES],
  compute: ({ volumeNtpd_m3 }) => (volumeNtpd_m3 * STPD_K) / NTPD_K,
});

export const btpsToStpd = defineQuantity({
  id: "btps-to-stpd",
  title: "Breathed volume at body temperature, saturated, as dry volume at 0 °C and 760 mmHg",
  inputs: [
    {
      name: "volumeBtps_m3",
      unit: "m3",
      range: [0, 100],
      meaning: "volume at 37 °C and ambient pressure, saturated",
    },
    AMBIENT_PRESSURE_Pa,
  ],
  output: { name: "volumeStpd_m3", unit: "m3" },
  formula: "V (pa − 47 mmHg) / 760 mmHg × 273.15 / 310.15",
  sources: [REFERENCE_STATES],
  compute: ({ volumeBtps_m3, ambientPressure_Pa }) => {
    const dry_Pa = ambientPressure_Pa - WATER_AT_BODY_PA;
    refuseDerived("btps-to-stpd", "dryPressure_Pa", dry_Pa, "Pa", [0, AMBIENT_PRESSURE_Pa.range[1]]);
    return ((volumeBtps_m3 * dry_Pa) / SEA_LEVEL_PA) * (STPD_K / BODY_K);
  },
});
