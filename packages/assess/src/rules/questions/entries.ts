import type { LocalDate } from "@witnessmark/ledger";
import type { RuledStep } from "../relief.ts";
import { ruledSteps } from "../ruled-steps.ts";
import { SIGNATURE_ATTRIBUTES, SIGNATURE_CITATIONS, signatureLacks } from "../signature-attributes.ts";
import {
  defectListKeptUntil,
  goesWithAircraft,
  inspectionEntryLacks,
  lawKeepsUntil,
  RECORD_CITATIONS,
  RECORDS_OF_STATUS,
  workEntryLacks,
} from "../us-part-91/record-entries.ts";
import { choice, day, defineQuestion, type RuleQuestion, yesNo } from "./question.ts";

const SIGNED = {
  signature: yesNo("Is it signed by who releases it?"),
  certificateNumber: yesNo("Does the number of the certificate stand there?"),
  certificateKind: yesNo("Does the kind of certificate stand there?"),
};

const WORK = {
  description: yesNo("Does the entry say what was done?"),
  completed_date: yesNo("Does it say on which day it was finished?"),
  ...SIGNED,
  doneByOther: yesNo("Did someone other than the signer do the work?"),
  workerName: yesNo("Does the name of who did it stand there?"),
};

const INSPECTION = {
  inspectionType: yesNo("Does the entry say which inspection it was?"),
  extentDescription: yesNo("Does it say how far it went?"),
  inspection_date: yesNo("Does the day of the inspection stand there?"),
  aircraftTotalTime_h: yesNo("Does the aircraft's total time stand there?"),
  ...SIGNED,
  statement: yesNo("Does it state that the aircraft is airworthy, or that a list of faults was given?"),
};

/** What a step asks of each part. */
const SIGNED_WORDS = {
  signature: "The signature of who releases it",
  certificateNumber: "The number of the certificate",
  certificateKind: "The kind of certificate",
};
const WORK_WORDS = {
  description: "What was done",
  completed_date: "The day on which it was finished",
  ...SIGNED_WORDS,
};
const INSPECTION_WORDS = {
  inspectionType: "Which inspection it was",
  extentDescription: "How far it went",
  inspection_date: "The day of the inspection",
  aircraftTotalTime_h: "The aircraft's total time",
  ...SIGNED_WORDS,
  statement: "The statement that it is airworthy, or that a list of faults was given",
};

type Answers = Readonly<Record<string, boolean | undefined>>;

/** What is said to stand in an entry, as the entry's own parts. */
const partsOf = (said: Answers) =>
  Object.fromEntries(Object.entries(said).flatMap(([name, is]) => (is === true ? [[name, "there"]] : [])));

/** A part that lacks is missing when that was said, and not known before. */
const lackStep = (rule: string, words: string, lacks: boolean, said: boolean | undefined): RuledStep => ({
  rule,
  words,
  holds: !lacks ? true : said === false ? false : "unknown",
});

const entrySteps = (
  rule: string,
  words: Readonly<Record<string, string>>,
  lacks: readonly string[],
  said: Answers,
): readonly RuledStep[] =>
  Object.entries(words).map(([part, asks]) => lackStep(rule, asks, lacks.includes(part), said[part]));

const ATTRIBUTES: Readonly<Record<(typeof SIGNATURE_ATTRIBUTES)[number], string>> = {
  unique: "It is the signer's own, and nobody else's",
  "controlled-by-signer": "Only the signer can make it",
  "signer-notified-and-intends": "The signer is told that it signs, and means it",
  "deliberate-act": "It takes an act of its own",
  "scope-of-what-is-signed-clear": "It is clear what is signed",
  "bound-to-record": "It is bound to the record that it signs",
  "traceable-retrievable": "It can be traced and found again",
  "non-repudiable": "The signer cannot deny it",
  "access-secured": "Access to the system is secured",
  "permanent-unalterable": "It stays, and cannot be altered",
  "correctable-with-trail": "A mistake is corrected with a trail",
  "identifies-and-authenticates": "The system knows who signs, and proves it",
  archivable: "It can be archived",
};

const STATUS_RECORDS = Object.fromEntries(
  RECORDS_OF_STATUS.map((each) => [each, each.charAt(0).toUpperCase() + each.slice(1)]),
);

const SUBJECT = { subject: "Entries and signatures", pack: "us-part-91" } as const;

export const ENTRY_QUESTIONS: readonly RuleQuestion[] = [
  defineQuestion({
    ...SUBJECT,
    id: "work-entry",
    title: "Is an entry of work complete?",
    asks: WORK,
    rule: ({ doneByOther, ...said }) => {
      const lacks = workEntryLacks(partsOf(said), doneByOther !== false);
      return ruledSteps(
        [
          ...entrySteps("43.9(a)", WORK_WORDS, lacks, said),
          lackStep(
            "43.9(a)(3)",
            "The name of who did the work, where it was not the signer",
            lacks.includes("workerName"),
            doneByOther === undefined ? undefined : said.workerName,
          ),
        ],
        RECORD_CITATIONS,
      );
    },
    says: ["The entry is complete", "The entry lacks something"],
  }),
  defineQuestion({
    ...SUBJECT,
    id: "inspection-entry",
    title: "Is an entry of an inspection complete?",
    asks: INSPECTION,
    rule: (said) =>
      ruledSteps(
        entrySteps("43.11(a)", INSPECTION_WORDS, inspectionEntryLacks(partsOf(said)), said),
        RECORD_CITATIONS,
      ),
    says: ["The entry is complete", "The entry lacks something"],
  }),
  defineQuestion({
    ...SUBJECT,
    id: "let-go",
    title: "Does the law let go of a record?",
    about: "The least that the law asks. This program keeps all of it.",
    asks: {
      record: choice("Which record is it?", { ...STATUS_RECORDS, other: "An entry of other work" }),
      workOn: day("On which day was the work done?"),
      superseded: yesNo("Was the work repeated or superseded since?"),
      supersededOn: day("On which day was it repeated or superseded?"),
      on: day("On which day is it to be let go?"),
    },
    rule: ({ record, workOn, superseded, supersededOn, on }) =>
      ruledSteps(
        [
          {
            rule: "91.417(b)(2)",
            words: "It is no record of status, which stays and goes with the aircraft when it is sold",
            holds: record === undefined ? "unknown" : !goesWithAircraft(record),
          },
          {
            rule: "91.417(b)(1)",
            words: "A year has gone since the work, or it was repeated or superseded",
            holds: isOver(workOn, superseded, supersededOn, on),
          },
        ],
        RECORD_CITATIONS,
      ),
    says: ["The law lets it go", "It is kept"],
  }),
  defineQuestion({
    ...SUBJECT,
    id: "defect-list",
    title: "Does the law let go of a list of faults?",
    asks: {
      repairedOn: day("On which day were the faults repaired?"),
      releasedOn: day("On which day was the aircraft released?"),
      on: day("On which day is it to be let go?"),
    },
    rule: ({ repairedOn, releasedOn, on }) =>
      ruledSteps(
        [
          {
            rule: "91.417(b)(3)",
            words: "The faults are repaired and the aircraft is released",
            holds:
              repairedOn === undefined || releasedOn === undefined || on === undefined
                ? "unknown"
                : on >= defectListKeptUntil(repairedOn, releasedOn),
          },
        ],
        RECORD_CITATIONS,
      ),
    says: ["The law lets it go", "It is kept"],
  }),
  defineQuestion({
    ...SUBJECT,
    id: "electronic-signature",
    title: "Is an electronic signature what it must be?",
    asks: Object.fromEntries(SIGNATURE_ATTRIBUTES.map((each) => [each, yesNo(ATTRIBUTES[each])])),
    rule: (said) => {
      const lacks = signatureLacks(SIGNATURE_ATTRIBUTES.filter((each) => said[each] === true));
      return ruledSteps(
        SIGNATURE_ATTRIBUTES.map((each) =>
          lackStep("AC 120-78", ATTRIBUTES[each], lacks.includes(each), said[each]),
        ),
        SIGNATURE_CITATIONS,
      );
    },
    says: ["It has every attribute", "It lacks an attribute"],
  }),
];

/** Whether the time is over for which an ordinary entry is kept. */
function isOver(
  workOn: LocalDate | undefined,
  superseded: boolean | undefined,
  supersededOn: LocalDate | undefined,
  on: LocalDate | undefined,
): boolean | "unknown" {
  if (workOn === undefined || on === undefined) return "unknown";
  if (on >= lawKeepsUntil(workOn)) return true;
  if (superseded === false) return false;
  return superseded === true && supersededOn !== undefined
    ? on >= lawKeepsUntil(workOn, supersededOn)
    : "unknown";
}
