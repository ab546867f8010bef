import { toSI } from "@witnessmark/engine";
import {
  holdsWhen,
  type ReliefAircraft,
  type ReliefInput,
  type ReliefRuling,
  type RuledStep,
  rulingOf,
} from "../relief.ts";
import type { Citations } from "../ruling.ts";
import { LOCATOR_CITATIONS, locatorRemoved } from "./locator-removed.ts";
import { listMayHold } from "./minimum-list.ts";

export const RELIEF_CITATIONS: Citations = [
  {
    title: "14 CFR 91.213: inoperative instruments and equipment",
    edition: "eCFR issue 2026-08-24",
    url: "https://www.ecfr.gov/on/2026-08-24/title-14/section-91.213",
    status: "published",
  },
  {
    title: "14 CFR 91.405(c): a deferred item is dealt with at the next required inspection",
    edition: "2021 consolidation",
    status: "published",
  },
];

/** Small aircraft: 12,500 lb or less. @source 14 CFR 1.1 */
const SMALL_kg = toSI(12_500, "lb");

/** Which of the ways of 91.213 applies, and every step of it. */
export function relief(input: ReliefInput): ReliefRuling {
  if (input.said.permit === true) return byPermit();
  if (input.item.locator === true && input.said.action === "removed") {
    return rulingOf("91.207(f)(10)", locatorRemoved(input.said), LOCATOR_CITATIONS, ["pilot", "mechanic"]);
  }
  return input.aircraft.ownList === true ? byList(input) : byParagraphD(input);
}

/** A special flight permit is a way of its own, within the limits written on it. */
const byPermit = (): ReliefRuling =>
  rulingOf(
    "91.213(e)",
    [
      {
        rule: "91.213(e)",
        words: "A special flight permit was issued under 21.197 and 21.199; its limits are kept",
        holds: true,
        asks: "permit",
      },
    ],
    RELIEF_CITATIONS,
    [],
  );

function byList({ aircraft, item, said }: ReliefInput): ReliefRuling {
  const steps: readonly RuledStep[] = [
    {
      rule: "91.213(a)",
      words: "The approved minimum equipment list has it; what it does not list must work",
      holds: holdsWhen(item.inOwnList, true),
    },
    ...listMayHold(item),
    {
      rule: "91.213(a)(2)",
      words: "The letter of authorization is aboard",
      holds: holdsWhen(aircraft.letterAboard, true),
    },
    {
      rule: "91.213(a)(4)",
      words: "A record of what does not work is at hand for the pilot",
      holds: holdsWhen(said.recordAtHand, true),
      asks: "recordAtHand",
    },
    {
      rule: "91.213(a)(5)",
      words: "The flight is made under every condition and limit of the list and the letter",
      holds: holdsWhen(said.provisosMet, true),
      asks: "provisosMet",
    },
  ];
  return rulingOf("91.213(a)", steps, RELIEF_CITATIONS, ["pilot", "mechanic"]);
}

/** No turbine aeroplane has paragraph (d); with a master list for the type only small aircraft have it. */
function eligibility({ engine, masterList, maxTakeOff_kg }: ReliefAircraft): RuledStep {
  const rule = masterList === false ? "91.213(d)(1)(i)" : "91.213(d)(1)(ii)";
  const words =
    "The aircraft may use paragraph (d): no turbine engine; small, 12,500 lb at most, where a master list exists";
  const small = maxTakeOff_kg === undefined ? undefined : maxTakeOff_kg <= SMALL_kg + 1e-6;
  const holds = (): boolean | "unknown" => {
    if (engine === undefined) return "unknown";
    if (engine === "turboprop") return false;
    if (masterList === false || small === true) return true;
    return masterList === undefined || small === undefined ? "unknown" : false;
  };
  return { rule, words, holds: holds() };
}

function dispositionStep({ said }: ReliefInput): RuledStep {
  const { action, placard, recorded, deactivationIsMaintenance } = said;
  if (action === undefined || action === "none") {
    return {
      rule: "91.213(d)(3)",
      words: "It was removed, or deactivated and placarded",
      holds: action === undefined ? "unknown" : false,
      asks: "action",
    };
  }
  const placarded = holdsWhen(placard, true);
  if (action === "removed") {
    const written = holdsWhen(recorded, true);
    return {
      rule: "91.213(d)(3)(i)",
      words: "Removed, its cockpit control placarded, and the work recorded under 43.9",
      holds: both(placarded, written),
      asks: placarded === true ? "recorded" : "placard",
    };
  }
  const maintenance =
    deactivationIsMaintenance === false
      ? true
      : deactivationIsMaintenance === undefined
        ? "unknown"
        : holdsWhen(recorded, true);
  return {
    rule: "91.213(d)(3)(ii)",
    words: 'Deactivated and placarded "Inoperative"; recorded under part 43 where that is maintenance',
    holds: both(placarded, maintenance),
    asks:
      placarded !== true
        ? "placard"
        : deactivationIsMaintenance === undefined
          ? "deactivationIsMaintenance"
          : "recorded",
  };
}

const both = (one: boolean | "unknown", other: boolean | "unknown"): boolean | "unknown" =>
  one === false || other === false ? false : one === true && other === true ? true : "unknown";

function byParagraphD(input: ReliefInput): ReliefRuling {
  const { aircraft, item, said } = input;
  const { noHazardBy } = said;
  const steps: readonly RuledStep[] = [
    eligibility(aircraft),
    {
      rule: "91.213(d)(2)(i)",
      words: "It is no part of the certified equipment of the type for visual flight by day",
      holds: holdsWhen(item.typeEquipment, false),
    },
    {
      rule: "91.213(d)(2)(ii)",
      words: "Neither the equipment list nor the kinds-of-operations list asks for it on this flight",
      holds: holdsWhen(item.listed, false),
    },
    {
      rule: "91.213(d)(2)(iii)",
      words: "Neither 91.205 nor another rule of part 91 asks for it on this kind of flight",
      holds: holdsWhen(item.ruleRequires, false),
    },
    {
      rule: "91.213(d)(2)(iv)",
      words: "No airworthiness directive asks for it",
      holds: holdsWhen(item.directive, false),
    },
    dispositionStep(input),
    {
      rule: "91.213(d)(4)",
      words: "A rated pilot or a certificated mechanic has determined that it is no hazard",
      holds: noHazardBy === undefined ? "unknown" : noHazardBy === "pilot" || noHazardBy === "mechanic",
      asks: "noHazardBy",
    },
  ];
  return rulingOf("91.213(d)", steps, RELIEF_CITATIONS, ["pilot", "mechanic"]);
}
