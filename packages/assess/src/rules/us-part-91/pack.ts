import { ADVISORY_FACTORS } from "../advisory-factors.ts";
import type { RulePack } from "../rule-pack.ts";
import { alternateNeeded, alternateUsable } from "./alternate.ts";
import { takeOffWithDeposits } from "./deposits.ts";
import { finalReserveTime } from "./fuel.ts";
import { visualAtField, visualMinima } from "./minima.ts";
import { oxygen } from "./oxygen.ts";
import { relief } from "./relief.ts";
import { requiredEquipment } from "./required-equipment.ts";

/** 14 CFR Part 91, a private flight of an aeroplane. */
export const usPart91: RulePack = {
  id: "us-part-91",
  title: "United States, 14 CFR Part 91",
  nights: {
    fuel: "civil-twilight-us",
    "visual-minima": "civil-twilight-us",
    lights: "sunset-to-sunrise",
    "passenger-recency": "hour-after-sunset",
  },
  arrivalWindow: { before_s: 3600, after_s: 3600 },
  finalReserveTime,
  alternateNeeded,
  alternateUsable,
  oxygen,
  visualMinima,
  visualAtField,
  takeOffWithDeposits,
  relief,
  requiredEquipment,
  distanceFactor: () => ({
    known: true,
    compulsory: false,
    citations: [
      {
        title: "14 CFR 91.103: preflight action",
        locator: "(b)",
        edition: "current text",
        status: "from memory",
        note: "It asks to know take-off and landing distances, and names no factor.",
      },
    ],
    text: "Part 91 asks for no factor on the distances of a private flight.",
    steps: ADVISORY_FACTORS.map(
      ({ title, factor_1 }) => `Advised by others: ${title}, × ${factor_1.toFixed(2)}.`,
    ),
  }),
};
