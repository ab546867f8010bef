import { NOT_FOR_PILOT_OWNERS, OF_THE_PILOT_OWNER, pilotOwnerTask, release } from "../eu-part-nco/release.ts";
import { afterMaintenance } from "../us-part-91/after-maintenance.ts";
import { PREVENTIVE_WORK, preventiveMaintenance } from "../us-part-91/preventive-maintenance.ts";
import { PERMIT_PURPOSES, specialPermit } from "../us-part-91/special-permit.ts";
import { choice, defineQuestion, figureOf, type RuleQuestion, yesNo } from "./question.ts";

const WORK: Readonly<Record<string, string>> = {
  ...Object.fromEntries(PREVENTIVE_WORK.map(({ id, line, words }) => [id, `(${line}) ${words}`])),
  "nav-database-upload": "Load a navigation database from the flight deck, without tools",
  other: "Anything else",
};

export const WORK_QUESTIONS: readonly RuleQuestion[] = [
  defineQuestion({
    id: "nco-pilot-owner",
    title: "May the pilot-owner release this work?",
    subject: "Work on the aircraft",
    pack: "eu-part-nco",
    about:
      "Part-ML lets who owns and flies it release limited maintenance that they have done. All else is for certifying staff or an organisation.",
    asks: {
      maxTakeOff_kg: figureOf("Greatest take-off mass of the aeroplane", "kg", "kg", [0, 100_000]),
      privately: yesNo(OF_THE_PILOT_OWNER.privately),
      licence: yesNo(OF_THE_PILOT_OWNER.licence),
      owns: yesNo(OF_THE_PILOT_OWNER.owns),
      inProgramme: yesNo(OF_THE_PILOT_OWNER.inProgramme),
      didIt: yesNo(OF_THE_PILOT_OWNER.didIt),
      task: choice("Is the work one of these?", { none: "None of these", ...NOT_FOR_PILOT_OWNERS }),
      entered: yesNo(OF_THE_PILOT_OWNER.entered),
    },
    rule: ({ maxTakeOff_kg, task, ...said }) =>
      release({ as: "pilot-owner", maxTakeOff_kg, said: { ...said, ...pilotOwnerTask(task) } }),
    says: ["The pilot-owner may release it", "It is not the pilot-owner's to release"],
  }),
  defineQuestion({
    id: "preventive-maintenance",
    title: "May the pilot do this work?",
    subject: "Work on the aircraft",
    pack: "us-part-91",
    about: "Preventive maintenance is a list in the rule. What is not in it is for a mechanic.",
    asks: {
      work: choice("Which work is it?", WORK),
      certificate: choice("Which certificate does the pilot hold who releases it?", {
        student: "Student",
        sport: "Sport",
        recreational: "Recreational",
        private: "Private",
        commercial: "Commercial",
        airline: "Airline transport",
      }),
      ownsOrOperates: yesNo("Does that pilot own or operate the aircraft?"),
      usedUnder: choice("Under which part is the aircraft used?", { "91": "Part 91", other: "Another part" }),
    },
    // what is no maintenance asks nothing of the pilot: until the work is said, nothing is settled
    rule: (said) => preventiveMaintenance(said.work === undefined ? {} : said),
    says: ["The pilot may do it, and enters it by 43.9", "It is not the pilot's to do and release"],
    adds: (said) => {
      const { itIs } = preventiveMaintenance(said);
      return itIs === undefined ? undefined : `It is ${itIs}`;
    },
  }),
  defineQuestion({
    id: "after-maintenance",
    title: "May it fly after work on it?",
    subject: "Work on the aircraft",
    pack: "us-part-91",
    asks: {
      released: yesNo("Was it released by a person who may?"),
      recorded: yesNo("Was the entry in the record made?"),
      mayFlyOtherwise: yesNo("May the work have changed how it flies, so that it is felt in the air?"),
      groundTestsConclusive: yesNo("Do tests on the ground show conclusively that nothing changed?"),
      passengers: yesNo("Are passengers to be aboard?"),
      flownAndLogged: yesNo(
        "Has a pilot rated for it, private or better, flown it, checked it and written that down?",
      ),
    },
    rule: afterMaintenance,
    says: ["It may be flown after the work", "It may not be flown so"],
  }),
  defineQuestion({
    id: "special-permit",
    title: "May a special flight permit be asked for?",
    subject: "Work on the aircraft",
    pack: "us-part-91",
    about:
      "A permit is the way of an aircraft that does not meet all requirements and is safe to fly. The authority issues it, with limits, or does not.",
    asks: {
      purpose: choice("What is the flight for?", { ...PERMIT_PURPOSES, none: "Anything else" }),
      capableOfSafeFlight: yesNo("Is it capable of safe flight, as a mechanic sees it?"),
      directiveForbids: yesNo("Does an airworthiness directive that is overdue forbid it?"),
    },
    rule: specialPermit,
    says: ["A permit may be asked for; who issues it decides", "No permit can be had for this flight"],
  }),
];
