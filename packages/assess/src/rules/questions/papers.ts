import { listEntryAcceptable, mayStayOnGround, NCO_CITATIONS } from "../eu-part-nco/papers-and-water.ts";
import { holdsWhen, type RuledStep } from "../relief.ts";
import { ruledSteps } from "../ruled-steps.ts";
import { documentsAboard, pilotPapers } from "../us-part-91/documents.ts";
import { listMayHold } from "../us-part-91/minimum-list.ts";
import { RELIEF_CITATIONS } from "../us-part-91/relief.ts";
import { choice, defineQuestion, figureOf, type RuleQuestion, yesNo } from "./question.ts";

const DAY_s = 86_400;

const ESSENTIAL_UNKNOWN: RuledStep = {
  rule: "91.213(b)(1)",
  words: "It is not essential under the type's certification for every operation",
  holds: "unknown",
};

const NCO_PAPERS = {
  "flight manual": "The flight manual",
  registration: "The certificate of registration",
  "certificate of airworthiness": "The certificate of airworthiness",
  "noise certificate": "The noise certificate",
  "specific approvals": "The list of specific approvals",
  "radio licence": "The radio licence",
  "third-party insurance": "The certificate of third-party insurance",
  "journey log": "The journey log",
  "ATS flight plan details": "Details of the filed flight plan",
  charts: "Charts",
  "interception procedures": "What to do when intercepted",
  "MEL or CDL": "The minimum equipment list or configuration deviation list",
} as const;

export const PAPERS_QUESTIONS: readonly RuleQuestion[] = [
  defineQuestion({
    id: "papers-aboard",
    title: "Are the aircraft's papers aboard?",
    subject: "Papers",
    pack: "us-part-91",
    asks: {
      airworthinessCertificate: yesNo("Is the airworthiness certificate aboard?"),
      displayed: yesNo("Is it displayed at the cabin or cockpit entrance, to be read?"),
      registration: choice("Which registration is aboard?", {
        certificate: "The certificate",
        "copy-of-application": "The copy of an application",
        none: "None",
      }),
      insideUnitedStates: yesNo("Does the flight stay inside the United States?"),
      manualOrLimits: yesNo("Is the flight manual aboard, or are the limits marked and placarded?"),
      cabinFuelTank: yesNo("Does a fuel tank stand in the cabin or the baggage compartment?"),
      tankForm: yesNo("Is the form of the alteration that put the tank there aboard?"),
    },
    rule: documentsAboard,
    says: ["The papers that the rules name are aboard", "Papers are missing"],
  }),
  defineQuestion({
    id: "pilot-papers",
    title: "Has the pilot the papers at hand?",
    subject: "Papers",
    pack: "us-part-91",
    asks: {
      certificate: yesNo("The pilot certificate?"),
      photoIdentification: yesNo("An identification with a photograph?"),
      medical: yesNo("The medical certificate, or what takes its place?"),
    },
    rule: pilotPapers,
    says: ["The pilot's papers are there", "Papers are missing"],
  }),
  defineQuestion({
    id: "own-list",
    title: "May a minimum equipment list hold it?",
    subject: "Papers",
    pack: "us-part-91",
    asks: {
      essential: yesNo("Is it essential under the type's certification for every operation?"),
      directive: yesNo("Does an airworthiness directive ask that it works?"),
      ruleRequires: yesNo("Does a rule of part 91 ask for it on this kind of flight?"),
      restServes: yesNo("Do others of its kind still work, as many as are asked for?"),
    },
    rule: ({ essential, ruleRequires, ...item }) => ({
      steps: [
        // the list's own rule leaves it out where nothing is said; here it is asked
        ...(essential === undefined ? [ESSENTIAL_UNKNOWN] : []),
        ...listMayHold({
          ...item,
          essential,
          // whether the rest serves is left out there where there is no rest; here it may not be said yet
          ruleRequires: ruleRequires === true && item.restServes === undefined ? undefined : ruleRequires,
        }),
      ],
      citations: RELIEF_CITATIONS,
    }),
    says: ["A list may hold it", "No list may hold it"],
  }),
  defineQuestion({
    id: "nco-papers",
    title: "May this paper stay at the aerodrome?",
    subject: "Papers",
    pack: "eu-part-nco",
    asks: {
      paper: choice("Which paper?", NCO_PAPERS),
      sameAerodrome: yesNo("Does the flight take off and land at the same aerodrome?"),
    },
    rule: ({ paper, sameAerodrome }) =>
      ruledSteps(
        [
          {
            rule: "NCO.GEN.135(b)",
            words: "The flight takes off and lands at the same aerodrome",
            holds: holdsWhen(sameAerodrome, true),
          },
          {
            rule: "NCO.GEN.135(b)",
            words: "It is one of the papers that the rule lets stay there",
            holds: paper === undefined ? "unknown" : mayStayOnGround(paper, true),
          },
        ],
        NCO_CITATIONS,
      ),
    says: ["It may stay at the aerodrome", "It must be aboard"],
  }),
  defineQuestion({
    id: "nco-list-entry",
    title: "May the aircraft's list allow this many days?",
    subject: "Papers",
    pack: "eu-part-nco",
    asks: {
      own_s: figureOf("Days that the aircraft's own list allows", "s", "d", [0, 3_650 * DAY_s]),
      master_s: figureOf("Days that the master list allows", "s", "d", [0, 3_650 * DAY_s]),
      notified: yesNo("Was the authority told of the list?"),
    },
    rule: ({ own_s, master_s, notified }) => {
      const strict =
        own_s === undefined || master_s === undefined
          ? undefined
          : listEntryAcceptable(master_s / DAY_s, own_s / DAY_s, true);
      return ruledSteps(
        [
          {
            rule: "NCO.GEN.155(b)",
            words: "The list is no less strict than the master list",
            holds: holdsWhen(strict, true),
          },
          { rule: "NCO.GEN.155(a)", words: "The authority was told", holds: holdsWhen(notified, true) },
        ],
        NCO_CITATIONS,
      );
    },
    says: ["The entry may stand", "The entry may not stand"],
  }),
];
