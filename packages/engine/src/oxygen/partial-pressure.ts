import { SEA_LEVEL_PA } from "../air/standard-atmosphere-model.ts";
import { WATER_AT_BODY_PA } from "../gas/reference-states.ts";
import { defineQuantity } from "../registry/define-quantity.ts";
import { refuseDerived } from "../registry/refuse-derived.ts";
import { toSI } from "../units/convert.ts";
import { CABIN_PRESSURE_Pa, dryPressure_Pa, OXYGEN_FRACTION_1, TRACHEAL_EQUATION } from "./inputs.ts";

export const ambientOxygenPressure = defineQuantity({
  id: "ambient-oxygen-pressure",
  title: "Oxygen partial pressure of the air in the cabin",
  inputs: [OXYGEN_FRACTION_1, CABIN_PRESSURE_Pa],
  output: { name: "oxygenPressure_Pa", unit: "Pa" },
  formula: "F pa",
  sources: [
    {
      title:
        "Archives of Disease in Childhood, review: atmospheric and partial pressures of oxygen at altitude",
      locator: "table 1",
      status: "published",
    },
  ],
  compute: ({ oxygenFraction_1, ambientPressure_Pa }) => oxygenFraction_1 * ambientPressure_Pa,
});

export const trachealOxygenPressure = defineQuantity({
  id: "tracheal-oxygen-pressure",
  title: "Oxygen partial pressure in the windpipe",
  inputs: [OXYGEN_FRACTION_1, CABIN_PRESSURE_Pa],
  output: { name: "oxygenPressure_Pa", unit: "Pa" },
  formula: "F (pa − 47 mmHg)",
  sources: [TRACHEAL_EQUATION],
  notes: ["For explanation. It says nothing of one person's fitness on one day."],
  compute: ({ oxygenFraction_1, ambientPressure_Pa }) =>
    oxygenFraction_1 * dryPressure_Pa("tracheal-oxygen-pressure", ambientPressure_Pa),
});

export const alveolarOxygenPressure = defineQuantity({
  id: "alveolar-oxygen-pressure",
  title: "Oxygen partial pressure in the lung",
  inputs: [
    OXYGEN_FRACTION_1,
    CABIN_PRESSURE_Pa,
    {
      name: "carbonDioxidePressure_Pa",
      unit: "Pa",
      range: [toSI(15, "mmHg"), toSI(60, "mmHg")],
      meaning: "carbon dioxide pressure in the blood; 40 mmHg at sea level, lower with altitude",
    },
    {
      name: "respiratoryQuotient_1",
      unit: "1",
      range: [0.7, 1.1],
      meaning: "carbon dioxide given off by oxygen taken up; 0.8 at rest",
    },
  ],
  output: { name: "oxygenPressure_Pa", unit: "Pa" },
  formula: "F (pa − 47 mmHg) − pCO2 (F + (1 − F) / R)",
  sources: [
    {
      title: "Alveolar gas equation, reference summary",
      locator: "full form and table of sample values",
      status: "published",
    },
  ],
  notes: ["The short form without the bracket is about 2 mmHg low on air. For explanation only."],
  compute: ({ oxygenFraction_1, ambientPressure_Pa, carbonDioxidePressure_Pa, respiratoryQuotient_1 }) => {
    const tracheal_Pa = oxygenFraction_1 * dryPressure_Pa("alveolar-oxygen-pressure", ambientPressure_Pa);
    const taken_Pa =
      carbonDioxidePressure_Pa * (oxygenFraction_1 + (1 - oxygenFraction_1) / respiratoryQuotient_1);
    refuseDerived("alveolar-oxygen-pressure", "oxygenPressure_Pa", tracheal_Pa - taken_Pa, "Pa", [
      0,
      CABIN_PRESSURE_Pa.range[1],
    ]);
    return tracheal_Pa - taken_Pa;
  },
});

export const seaLevelOxygenEquivalent = defineQuantity({
  id: "sea-level-oxygen-equivalent",
  title: "Share of oxygen at sea level that the air of a cabin is worth",
  inputs: [OXYGEN_FRACTION_1, CABIN_PRESSURE_Pa],
  output: { name: "equivalentFraction_1", unit: "1" },
  formula: "F (pa − 47 mmHg) / (760 mmHg − 47 mmHg)",
  sources: [
    {
      title: "Aviation medicine, chapter abstract (Taylor & Francis)",
      locator: "abstract",
      status: "published",
    },
  ],
  notes: ["Both pressures less the water vapour; without that the figure is about half a percent too high."],
  compute: ({ oxygenFraction_1, ambientPressure_Pa }) =>
    (oxygenFraction_1 * dryPressure_Pa("sea-level-oxygen-equivalent", ambientPressure_Pa)) /
    (SEA_LEVEL_PA - WATER_AT_BODY_PA),
});
