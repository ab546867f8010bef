import { RELIEF_CITATIONS } from "../eu-part-nco/relief.ts";
import { holdsWhen } from "../relief.ts";
import { any, every, ruledSteps } from "../ruled-steps.ts";
import { choice, defineQuestion, type RuleQuestion, yesNo } from "./question.ts";

const not = (said: boolean | undefined): boolean | undefined => (said === undefined ? undefined : !said);

export const PUT_OFF_QUESTIONS: readonly RuleQuestion[] = [
  defineQuestion({
    id: "nco-put-off",
    title: "May putting it right be put off, and by whom?",
    subject: "What does not work",
    pack: "eu-part-nco",
    about: "Part-ML covers aeroplanes of 2,730 kg at most; heavier ones are under Part-M.",
    asks: {
      endangers: yesNo("Does it endanger the flight?"),
      required: yesNo("Is it required for the flight: by a rule, the type, its lists or a directive?"),
      inList: yesNo("Does the operator's minimum equipment list have it, and is the list used?"),
      partML: yesNo("Is the aeroplane 2,730 kg or less, under Part-ML?"),
      who: choice("Who puts it off?", {
        pilot: "The pilot in command",
        "certifying-staff": "Certifying staff",
        nobody: "Somebody else",
      }),
      recorded: yesNo("Is it in the aircraft's record, with the day on which it was found?"),
    },
    rule: ({ endangers, required, inList, partML, who, recorded }) => {
      const isPilot = who === undefined ? undefined : who === "pilot";
      const isStaff = who === undefined ? undefined : who === "certifying-staff";
      return ruledSteps(
        [
          {
            rule: "ML.A.403(a), M.A.403(a)",
            words: "It does not endanger the flight; what does is put right before",
            holds: holdsWhen(endangers, false),
          },
          {
            rule: "NCO.IDE.A.105",
            words: "It is not required for the flight, or the minimum equipment list has it",
            holds: holdsWhen(any(not(required), inList), true),
          },
          {
            rule: "ML.A.403(b), M.A.403(b)",
            words: "Certifying staff puts it off; the pilot only under Part-ML, or by the list",
            holds: holdsWhen(any(isStaff, every(isPilot, any(partML, inList))), true),
          },
          {
            rule: "ML.A.403(c), M.A.403(c)",
            words: "It is in the record with the day on which it was found, which is never set anew",
            holds: holdsWhen(recorded, true),
          },
        ],
        RELIEF_CITATIONS,
      );
    },
    says: ["It may be put off by who does", "It may not be put off so"],
  }),
];
