import { holdsWhen } from "../relief.ts";
import { any, type RuledSteps, ruledSteps } from "../ruled-steps.ts";
import type { Citations } from "../ruling.ts";

const DOCUMENT_CITATIONS: Citations = [
  {
    title: "14 CFR 91.203 and 91.9(b): papers aboard; 61.3: what the pilot has with him; 91.417(c)",
    edition: "2021 consolidation",
    status: "published",
    note: "Maintenance logs need not be aboard.",
  },
];

export interface DocumentsInput {
  readonly insideUnitedStates?: boolean | undefined;
  readonly airworthinessCertificate?: boolean | undefined;
  /** Displayed at the cabin or cockpit entrance, to be read. */
  readonly displayed?: boolean | undefined;
  readonly registration?: "certificate" | "copy-of-application" | "none" | undefined;
  readonly manualOrLimits?: boolean | undefined;
  /** A fuel tank stands in the cabin or the baggage compartment. */
  readonly cabinFuelTank?: boolean | undefined;
  /** The form of the alteration that put it there. */
  readonly tankForm?: boolean | undefined;
}

/** Papers of the aircraft that must be aboard. */
export function documentsAboard(input: DocumentsInput): RuledSteps {
  const { insideUnitedStates, registration, cabinFuelTank } = input;
  const registered =
    registration === undefined
      ? undefined
      : registration === "copy-of-application"
        ? insideUnitedStates
        : registration === "certificate";
  return ruledSteps(
    [
      {
        rule: "91.203(a)(1)",
        words: "The airworthiness certificate is aboard",
        holds: holdsWhen(input.airworthinessCertificate, true),
      },
      {
        rule: "91.203(a)(2)",
        words: "The registration is aboard; the copy of an application serves inside the United States only",
        holds: holdsWhen(registered, true),
      },
      {
        rule: "91.203(b)",
        words: "The airworthiness certificate is displayed at the entrance",
        holds: holdsWhen(input.displayed, true),
      },
      {
        rule: "91.203(c)",
        words: "The form of a fuel tank in the cabin or baggage compartment is aboard",
        holds: holdsWhen(any(cabinFuelTank === undefined ? undefined : !cabinFuelTank, input.tankForm), true),
      },
      {
        rule: "91.9(b)",
        words: "The flight manual, or the limits by marks and placards, is aboard",
        holds: holdsWhen(input.manualOrLimits, true),
      },
    ],
    DOCUMENT_CITATIONS,
  );
}

export interface PilotPapersInput {
  readonly certificate?: boolean | undefined;
  readonly photoIdentification?: boolean | undefined;
  /** A medical certificate, or what takes its place. */
  readonly medical?: boolean | undefined;
}

/** What the pilot must have in reach. */
export const pilotPapers = (input: PilotPapersInput): RuledSteps =>
  ruledSteps(
    [
      { rule: "61.3(a)(1)", words: "The pilot certificate", holds: holdsWhen(input.certificate, true) },
      {
        rule: "61.3(a)(2)",
        words: "An identification with a photograph",
        holds: holdsWhen(input.photoIdentification, true),
      },
      {
        rule: "61.3(c)",
        words: "The medical certificate, or its substitute",
        holds: holdsWhen(input.medical, true),
      },
    ],
    DOCUMENT_CITATIONS,
  );
