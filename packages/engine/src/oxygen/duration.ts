import { defineQuantity } from "../registry/define-quantity.ts";
import type { QuantitySource } from "../registry/quantity.ts";
import { refuseDerived } from "../registry/refuse-derived.ts";
import { toSI } from "../units/convert.ts";
import { FLOW_RANGE_m3PerS, PERSONS_count, TIME_s } from "./inputs.ts";

const ARITHMETIC: QuantitySource = {
  title: "US Army TM 55-1510-221-10 and TM 1-1510-224-10, operator's manuals of a twin turboprop",
  locator: "table 2-5, paragraph 2-61, and the examples of oxygen duration",
  status: "published",
};

const MEAN_OF_STEPS: QuantitySource = {
  title: "US Army TM 1-1510-225-10, operator's manual of a twin turboprop",
  locator: "table 2-5: average the flows of every thousand feet, not of the two ends",
  status: "published",
};

const USABLE_GAS_m3 = {
  name: "usableGas_m3",
  unit: "m3",
  range: [0, 100],
  meaning: "free oxygen that can be used, in the same state as the flow",
} as const;

export const oxygenDuration = defineQuantity({
  id: "oxygen-duration",
  title: "How long the usable oxygen lasts",
  inputs: [
    USABLE_GAS_m3,
    {
      name: "totalFlow_m3PerS",
      unit: "m3PerS",
      range: FLOW_RANGE_m3PerS,
      meaning: "flow of all outlets together",
    },
  ],
  output: { name: "duration_s", unit: "s" },
  formula: "V / q",
  sources: [ARITHMETIC],
  notes: ["Round down. Litres of contents and of flow must be of the same state (both NTPD, or both STPD)."],
  compute: ({ usableGas_m3, totalFlow_m3PerS }) => {
    refuseDerived("oxygen-duration", "totalFlow_m3PerS", totalFlow_m3PerS, "m3PerS", [
      1e-9,
      FLOW_RANGE_m3PerS[1],
    ]);
    return usableGas_m3 / totalFlow_m3PerS;
  },
});

export const oxygenTotalFlow = defineQuantity({
  id: "oxygen-total-flow",
  title: "Oxygen flow of all outlets in use",
  inputs: [
    {
      name: "flows_m3PerS",
      unit: "m3PerS",
      range: FLOW_RANGE_m3PerS,
      meaning: "flow of each outlet in use",
      many: true,
    },
  ],
  output: { name: "totalFlow_m3PerS", unit: "m3PerS" },
  formula: "q1 + q2 + …",
  sources: [ARITHMETIC],
  compute: ({ flows_m3PerS }) => flows_m3PerS.reduce((sum, flow) => sum + flow, 0),
});

export const oxygenMeanFlow = defineQuantity({
  id: "oxygen-mean-flow",
  title: "Mean oxygen flow of a steady climb or descent",
  inputs: [
    {
      name: "flows_m3PerS",
      unit: "m3PerS",
      range: FLOW_RANGE_m3PerS,
      meaning: "flow at every thousand feet, both ends included",
      many: true,
    },
  ],
  output: { name: "meanFlow_m3PerS", unit: "m3PerS" },
  formula: "(q1 + q2 + … + qn) / n",
  sources: [MEAN_OF_STEPS],
  notes: ["The two ends alone mislead where a mask changes its setting on the way."],
  compute: ({ flows_m3PerS }) => flows_m3PerS.reduce((sum, flow) => sum + flow, 0) / flows_m3PerS.length,
});

export const oxygenSupply = defineQuantity({
  id: "oxygen-supply",
  title: "Free oxygen that persons use in a time",
  inputs: [
    PERSONS_count,
    { name: "flow_m3PerS", unit: "m3PerS", range: FLOW_RANGE_m3PerS, meaning: "flow for one person" },
    TIME_s,
  ],
  output: { name: "supply_m3", unit: "m3" },
  formula: "n q t",
  sources: [ARITHMETIC],
  notes: ["Round up. In the state of the flow (NTPD or STPD)."],
  compute: ({ persons_count, flow_m3PerS, time_s }) => persons_count * flow_m3PerS * time_s,
});

export const oxygenPartCapacity = defineQuantity({
  id: "oxygen-part-capacity",
  title: "Usable oxygen of a system that is part full",
  inputs: [
    { ...USABLE_GAS_m3, name: "fullUsableGas_m3", meaning: "usable oxygen of the full system" },
    {
      name: "share_1",
      unit: "1",
      range: [0, 1.2],
      meaning: "share of the usable oxygen that is there; a share of contents, not of pressure",
    },
  ],
  output: { name: "usableGas_m3", unit: "m3" },
  formula: "V share",
  sources: [ARITHMETIC],
  notes: ["Two printed manuals forgot this step in their own examples."],
  compute: ({ fullUsableGas_m3, share_1 }) => fullUsableGas_m3 * share_1,
});

export const firstAidOxygen = defineQuantity({
  id: "first-aid-oxygen",
  title: "First-aid oxygen for passengers after a descent",
  inputs: [{ ...PERSONS_count, meaning: "persons who may need first-aid oxygen" }, TIME_s],
  output: { name: "supplyStpd_m3", unit: "m3" },
  formula: "n × 3 L/min × t",
  sources: [
    {
      title: "14 CFR 23.1443 (before 2017)",
      edition: "CFR of 2014",
      locator: "(d): average flow of 3 L/min for each person, dispensed at not less than 2 to 4 L/min",
      status: "published",
    },
  ],
  notes: ["Litres at 0 °C and 760 mmHg, dry (STPD). A certification rule, no duty of a private flight."],
  compute: ({ persons_count, time_s }) => persons_count * toSI(3, "LPerMin") * time_s,
});

export const descentRateNeeded = defineQuantity({
  id: "descent-rate-needed",
  title: "Mean rate of descent to be at an altitude in time",
  inputs: [
    { name: "start_m", unit: "m", range: [0, 20_000], meaning: "altitude at which cabin pressure is lost" },
    { name: "target_m", unit: "m", range: [0, 20_000], meaning: "altitude to be reached" },
    { name: "available_s", unit: "s", range: [1, 3600], meaning: "time from the loss to the target" },
    {
      name: "recognition_s",
      unit: "s",
      range: [0, 600],
      meaning: "time lost before the descent begins: 17 s in the European guidance",
    },
  ],
  output: { name: "descentRate_mPerS", unit: "mPerS" },
  formula: "(start − target) / (available − recognition), at least 0",
  sources: [
    {
      title: "NCO.IDE.A.150(b)(2) with AMC1 CAT.IDE.A.235(e)",
      edition: "UK regulatory library",
      locator: "to 13,000 ft within 4 minutes; 17 s to recognise and react",
      url: "https://regulatorylibrary.caa.co.uk/965-2012/Content/AMC%20GM%202/AMC1%20CAT%20IDE%20A%20235%20e%20Supplemental.htm",
      status: "published",
    },
  ],
  compute: ({ start_m, target_m, available_s, recognition_s }) => {
    refuseDerived("descent-rate-needed", "descending_s", available_s - recognition_s, "s", [1, 3600]);
    return Math.max(0, (start_m - target_m) / (available_s - recognition_s));
  },
});
