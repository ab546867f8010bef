import { defineQuantity } from "../registry/define-quantity.ts";
import { refuseDerived } from "../registry/refuse-derived.ts";
import { CROSSWIND_LIMIT_mPerS, RUNWAY_HEADING_rad, WIND_FROM_rad, WIND_SPEED_mPerS } from "./inputs.ts";

const TRIGONOMETRY = {
  title: "Crosswind component solved for the wind; European question bank, performance",
  edition: "2020",
  locator: "question 16",
  status: "published",
} as const;

/** Beyond this no wind of the earth's surface is meant; the wind then blows along the runway. */
const STRONGEST_mPerS = 1000;

export const windAtCrosswindLimit = defineQuantity({
  id: "wind-at-crosswind-limit",
  title: "Strongest wind from a direction that keeps within a crosswind limit",
  inputs: [RUNWAY_HEADING_rad, WIND_FROM_rad, CROSSWIND_LIMIT_mPerS],
  output: { name: "maxWind_mPerS", unit: "mPerS" },
  formula: "limit / |sin(wind − runway)|",
  sources: [TRIGONOMETRY],
  notes: ["Refused where the wind blows along the runway: no wind reaches the limit."],
  compute: ({ runwayHeading_rad, windFrom_rad, crosswindLimit_mPerS }) => {
    const share_1 = Math.abs(Math.sin(windFrom_rad - runwayHeading_rad));
    const wind_mPerS = share_1 === 0 ? Number.POSITIVE_INFINITY : crosswindLimit_mPerS / share_1;
    refuseDerived("wind-at-crosswind-limit", "maxWind_mPerS", wind_mPerS, "mPerS", [0, STRONGEST_mPerS]);
    return wind_mPerS;
  },
});

export const angleAtCrosswindLimit = defineQuantity({
  id: "angle-at-crosswind-limit",
  title: "Angle off the runway at which a wind reaches a crosswind limit",
  inputs: [WIND_SPEED_mPerS, CROSSWIND_LIMIT_mPerS],
  output: { name: "maxAngleOffRunway_rad", unit: "rad" },
  formula: "arcsin(limit / speed)",
  sources: [
    {
      title: "UK flight-computer lesson, exam-style question",
      locator: "wind angle for a crosswind limit",
      status: "published",
    },
  ],
  notes: [
    "Round it down: a whole degree more is beyond the limit.",
    "Refused where the wind is weaker than the limit: then no angle reaches it.",
  ],
  compute: ({ windSpeed_mPerS, crosswindLimit_mPerS }) => {
    const share_1 = windSpeed_mPerS === 0 ? 2 : crosswindLimit_mPerS / windSpeed_mPerS;
    refuseDerived("angle-at-crosswind-limit", "limitShareOfWind_1", share_1, "1", [0, 1]);
    return Math.asin(share_1);
  },
});

export const demonstratedCrosswind = defineQuantity({
  id: "demonstrated-crosswind",
  title: "Crosswind that certification of a light aeroplane had to demonstrate at least",
  inputs: [
    {
      name: "stallSpeedLanding_mPerS",
      unit: "mPerS",
      range: [10, 80],
      meaning: "stalling speed in the landing configuration (VS0)",
    },
  ],
  output: { name: "demonstratedCrosswind_mPerS", unit: "mPerS" },
  formula: "0.2 VS0",
  sources: [
    {
      title: "14 CFR 23.233(a), text before 2017; FAA-H-8083-25 chapter 11; FAA-H-8083-3",
      locator: "ground handling in a 90° crosswind",
      status: "published",
    },
  ],
  crossCheckOnly: true,
  notes: ["What was shown, not a limit unless the manual says so; the manual's own figure comes first."],
  compute: ({ stallSpeedLanding_mPerS }) => 0.2 * stallSpeedLanding_mPerS,
});

export const countedWind = defineQuantity({
  id: "counted-wind",
  title: "Wind along the runway that a distance may count on",
  inputs: [
    {
      name: "wind_mPerS",
      unit: "mPerS",
      range: [-120, 120],
      meaning: "wind along the runway; headwind above zero, tailwind below",
    },
    {
      name: "headwindCredit_1",
      unit: "1",
      range: [0, 1],
      meaning: "share of a headwind that may be counted; 0.5 by the European rule",
    },
    {
      name: "tailwindCharge_1",
      unit: "1",
      range: [1, 3],
      meaning: "share of a tailwind that must be counted; 1.5 by the European rule",
    },
  ],
  output: { name: "countedWind_mPerS", unit: "mPerS" },
  formula: "credit × headwind, or charge × tailwind",
  sources: [
    {
      title: "CAT.POL.A.330 Landing, dry runways (and CAT.POL.A.305)",
      edition: "UK Reg. 965/2012",
      locator: "(c)(2)",
      url: "https://regulatorylibrary.caa.co.uk/965-2012/Content/Regs/08370_CAT.POL.A.330.htm",
      status: "published",
    },
  ],
  notes: ["Not to be applied where the manual's chart already does; then both shares are 1."],
  compute: ({ wind_mPerS, headwindCredit_1, tailwindCharge_1 }) =>
    wind_mPerS * (wind_mPerS > 0 ? headwindCredit_1 : tailwindCharge_1),
});

export const gustAdditive = defineQuantity({
  id: "gust-additive",
  title: "What a gust adds to the approach speed",
  inputs: [
    WIND_SPEED_mPerS,
    { ...WIND_SPEED_mPerS, name: "gust_mPerS", meaning: "gust of the wind, at least its steady speed" },
  ],
  output: { name: "additive_mPerS", unit: "mPerS" },
  formula: "half of (gust − steady wind)",
  sources: [{ title: "Half the gust factor, as taught", status: "common practice" }],
  crossCheckOnly: true,
  notes: ["The flight manual's own advice comes first."],
  compute: ({ windSpeed_mPerS, gust_mPerS }) => {
    refuseDerived("gust-additive", "gustFactor_mPerS", gust_mPerS - windSpeed_mPerS, "mPerS", [0, 120]);
    return (gust_mPerS - windSpeed_mPerS) / 2;
  },
});
