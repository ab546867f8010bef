import { holdsWhen, type ReliefInput, type ReliefRuling, type RuledStep, rulingOf } from "../relief.ts";
import type { Citations } from "../ruling.ts";

export const RELIEF_CITATIONS: Citations = [
  {
    title: "Regulation (EU) 965/2012, NCO.IDE.A.105: minimum equipment for flight; NCO.GEN.155: the list",
    edition: "as on an authority's regulatory library page",
    url: "https://regulatorylibrary.caa.co.uk/965-2012/Content/Regs/20020_NCOIDEA105_Minimum_equipment_for_flight.htm",
    status: "published",
  },
  {
    title: "Regulation (EU) 1321/2014, ML.A.403 and M.A.403: aircraft defects",
    edition: "as quoted on authority and reference pages",
    status: "published",
  },
];

/** Part-ML covers aeroplanes of 2,730 kg at most; heavier ones are under Part-M. @source ML.1 of Regulation 1321/2014 */
const PART_ML_kg = 2730;

/** Whether what does not work may be flown with: the list or a permit for what is required, deferral for the rest. */
export function relief(input: ReliefInput): ReliefRuling {
  const { item, said } = input;
  if (said.permit === true) {
    return rulingOf(
      "NCO.IDE.A.105(b)",
      [
        {
          rule: "NCO.IDE.A.105(b)",
          words: "A permit to fly was issued; its conditions are kept",
          holds: true,
          asks: "permit",
        },
      ],
      RELIEF_CITATIONS,
      [],
    );
  }
  return isRequired(item) === false ? deferral(input) : byList(input);
}

/** Required for the intended flight by a rule, the type's certification, its lists or a directive. */
function isRequired({
  ruleRequires,
  typeEquipment,
  listed,
  directive,
}: ReliefInput["item"]): boolean | undefined {
  const each = [ruleRequires, typeEquipment, listed, directive];
  return each.includes(true) ? true : each.includes(undefined) ? undefined : false;
}

function byList({ aircraft, item, said }: ReliefInput): ReliefRuling {
  const steps: readonly RuledStep[] = [
    {
      rule: "NCO.IDE.A.105",
      words: "It is not needed for this flight, or a minimum equipment list of the operator has it",
      holds:
        aircraft.ownList === false
          ? isRequired(item) === undefined
            ? "unknown"
            : false
          : aircraft.ownList === undefined
            ? "unknown"
            : holdsWhen(item.inOwnList, true),
    },
    {
      rule: "NCO.IDE.A.105(a)",
      words: "The flight is made as the list allows, every proviso met",
      holds: aircraft.ownList === false ? "unknown" : holdsWhen(said.provisosMet, true),
      asks: "provisosMet",
    },
  ];
  const failsAtOnce = steps[0]?.holds === false;
  return rulingOf(
    failsAtOnce ? "NCO.IDE.A.105" : "NCO.IDE.A.105(a)",
    failsAtOnce ? steps.slice(0, 1) : steps,
    RELIEF_CITATIONS,
    ["pilot"],
  );
}

/** What no rule asks for may be deferred: by the pilot under Part-ML, by certifying staff under Part-M. */
function deferral({ aircraft, item, said }: ReliefInput): ReliefRuling {
  const light =
    aircraft.maxTakeOff_kg === undefined ? undefined : aircraft.maxTakeOff_kg <= PART_ML_kg + 1e-6;
  const rule = light === false ? "M.A.403(b)" : "ML.A.403";
  const { noHazardBy } = said;
  const mayDecide =
    noHazardBy === undefined
      ? ("unknown" as const)
      : noHazardBy === "certifying-staff" || (light === true && noHazardBy === "pilot");
  const steps: readonly RuledStep[] = [
    {
      rule: `${rule}(a)`.replace("(b)(a)", "(a)"),
      words: "It does not endanger the flight",
      holds: holdsWhen(item.endangers, false),
    },
    {
      rule,
      words:
        light === true
          ? "The pilot or certifying staff has decided that it can wait"
          : "Certifying staff has decided that it can wait",
      holds: mayDecide,
      asks: "noHazardBy",
    },
    {
      rule,
      words: "It stands in the record of the aircraft with the day on which it was found",
      holds: holdsWhen(said.recorded, true),
      asks: "recorded",
    },
  ];
  return rulingOf(
    rule,
    steps,
    RELIEF_CITATIONS,
    light === true ? ["pilot", "certifying-staff"] : ["certifying-staff"],
  );
}
