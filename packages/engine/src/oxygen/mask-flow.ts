import { SEA_LEVEL_PA } from "../air/standard-atmosphere-model.ts";
import { BODY_K, NTPD_K, STPD_K } from "../gas/reference-states.ts";
import { defineQuantity } from "../registry/define-quantity.ts";
import { refuseDerived } from "../registry/refuse-derived.ts";
import { toSI } from "../units/convert.ts";
import {
  AIR_OXYGEN_1,
  CABIN_PRESSURE_Pa,
  dryPressure_Pa,
  LEAST_FLOW_RULE,
  MINUTE_VOLUME_m3PerS,
  PERSONS_count,
} from "./inputs.ts";

export const maskFlowPureOxygen = defineQuantity({
  id: "mask-flow-pure-oxygen",
  title: "Oxygen flow of one demand mask on 100 %",
  inputs: [MINUTE_VOLUME_m3PerS, CABIN_PRESSURE_Pa],
  output: { name: "flowNtpd_m3PerS", unit: "m3PerS" },
  formula: "V (pa − 47 mmHg) / 760 mmHg × 294.261 K / 310.15 K",
  sources: [
    {
      title: "US Army TM 1-1510-225-10, operator's manual of a twin turboprop",
      locator: "table 2-5: met within 0.1 L/min from 10,000 to 33,000 ft with 20 L/min breathed",
      status: "published",
    },
  ],
  notes: [
    "Free litres at 70 °F and 760 mmHg, dry (NTPD).",
    "It falls as the cabin climbs: a bottle on 100 % lasts longer high up.",
    "What a diluter mask takes on its normal setting cannot be derived; it is in the equipment's table.",
  ],
  compute: ({ minuteVolume_m3PerS, ambientPressure_Pa }) =>
    ((minuteVolume_m3PerS * dryPressure_Pa("mask-flow-pure-oxygen", ambientPressure_Pa)) / SEA_LEVEL_PA) *
    (NTPD_K / BODY_K),
});

export const leastAddedOxygenFlow = defineQuantity({
  id: "least-added-oxygen-flow",
  title: "Least oxygen that a perfect mask must add to hold a pressure in the windpipe",
  inputs: [
    {
      name: "targetPressure_Pa",
      unit: "Pa",
      range: [toSI(50, "mmHg"), toSI(160, "mmHg")],
      meaning: "mean oxygen pressure to be held in the windpipe",
    },
    MINUTE_VOLUME_m3PerS,
    CABIN_PRESSURE_Pa,
  ],
  output: { name: "flowStpd_m3PerS", unit: "m3PerS" },
  formula:
    "V s (pa − 47 mmHg) / 760 mmHg × 273.15 / 310.15, s = (F − 0.2095) / (1 − 0.2095), F = target / (pa − 47 mmHg); at least 0",
  sources: [LEAST_FLOW_RULE],
  crossCheckOnly: true,
  notes: [
    "Litres at 0 °C and 760 mmHg, dry (STPD).",
    "A lower bound. Real masks need more; the flow to plan with is the equipment's.",
  ],
  compute: ({ targetPressure_Pa, minuteVolume_m3PerS, ambientPressure_Pa }) => {
    const dry_Pa = dryPressure_Pa("least-added-oxygen-flow", ambientPressure_Pa);
    const fraction_1 = targetPressure_Pa / dry_Pa;
    // Above 1 even pure oxygen does not hold the target without pressure breathing.
    refuseDerived("least-added-oxygen-flow", "oxygenFraction_1", fraction_1, "1", [0, 1]);
    const added_1 = Math.max(0, (fraction_1 - AIR_OXYGEN_1) / (1 - AIR_OXYGEN_1));
    return ((minuteVolume_m3PerS * added_1 * dry_Pa) / SEA_LEVEL_PA) * (STPD_K / BODY_K);
  },
});

export const oxygenFlowRule = defineQuantity({
  id: "oxygen-flow-rule",
  title: "Rule of thumb for the flow of plain cannulas",
  inputs: [
    {
      name: "cabinAltitude_m",
      unit: "m",
      range: [0, toSI(25_000, "ft")],
      meaning: "pressure altitude of the cabin",
    },
    PERSONS_count,
  ],
  output: { name: "totalFlow_m3PerS", unit: "m3PerS" },
  formula: "1 L/min for each person and each 10,000 ft",
  sources: [{ title: "Trade rule of thumb for plain cannulas", status: "common practice" }],
  crossCheckOnly: true,
  notes: ["No authoritative page is known. Plan with the equipment's own table."],
  compute: ({ cabinAltitude_m, persons_count }) =>
    toSI(1, "LPerMin") * persons_count * (cabinAltitude_m / toSI(10_000, "ft")),
});
