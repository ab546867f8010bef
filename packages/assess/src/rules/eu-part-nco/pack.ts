import { ADVISORY_FACTORS } from "../advisory-factors.ts";
import type { RulePack } from "../rule-pack.ts";
import { alternateNeeded, alternateUsable } from "./alternate.ts";
import { takeOffWithDeposits } from "./deposits.ts";
import { finalReserveTime } from "./fuel.ts";
import { visualAtField, visualMinima } from "./minima.ts";
import { oxygen } from "./oxygen.ts";
import { release } from "./release.ts";
import { relief } from "./relief.ts";
import { requiredEquipment } from "./required-equipment.ts";

/** Regulation (EU) No 965/2012, Part-NCO, with the European rules of the air. */
export const euPartNco: RulePack = {
  id: "eu-part-nco",
  title: "European Union, Part-NCO and SERA",
  nights: {
    fuel: "civil-twilight-europe",
    "visual-minima": "civil-twilight-europe",
    lights: "civil-twilight-europe",
    "passenger-recency": "civil-twilight-europe",
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
  release,
  requiredEquipment,
  distanceFactor: () => ({
    known: true,
    compulsory: false,
    citations: [
      {
        title: "NCO.POL.110: performance, general",
        edition: "Regulation (EU) No 965/2012, consolidated",
        status: "from memory",
        note: "It asks for adequate performance, and names no factor.",
      },
    ],
    text: "Part-NCO asks for no factor on the distances of a private flight.",
    steps: ADVISORY_FACTORS.map(
      ({ title, factor_1 }) => `Advised by others: ${title}, × ${factor_1.toFixed(2)}.`,
    ),
  }),
};
