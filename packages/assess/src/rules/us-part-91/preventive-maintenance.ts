import { holdsWhen } from "../relief.ts";
import { type RuledSteps, ruledSteps } from "../ruled-steps.ts";
import type { Citations } from "../ruling.ts";

const PREVENTIVE_CITATIONS: Citations = [
  {
    title: "14 CFR part 43, appendix A, paragraph (c): preventive maintenance",
    edition: "2021 consolidation; lines without a case are from memory",
    url: "https://www.ecfr.gov/current/title-14/part-43",
    status: "from memory",
    note: "Lines (1), (17), (21), (23), (24) and (31) are held by published cases. Read the line itself before the work.",
  },
  {
    title: "14 CFR 43.3(g), 43.7(f) and 43.9: who may do it, who releases it, what is written down",
    edition: "2021 consolidation",
    status: "published",
  },
];

/** One line of the list: work that is simple and of no consequence for the structure. */
export interface PreventiveWork {
  readonly id: string;
  /** Number of the line in paragraph (c). */
  readonly line: number;
  readonly words: string;
  /** System codes whose faults it may put right. */
  readonly systems?: readonly string[];
  /** Only for equipment that the rule's list calls so. */
  readonly items?: readonly string[];
}

/** What of the list is met at a walk. */
export const PREVENTIVE_WORK: readonly PreventiveWork[] = [
  {
    id: "tyre-change",
    line: 1,
    words: "Take off, fit and repair landing gear tyres",
    systems: ["3244", "3245"],
  },
  {
    id: "strut-servicing",
    line: 3,
    words: "Add oil or air to landing gear struts",
    systems: ["3213", "3222"],
  },
  { id: "wheel-bearings", line: 4, words: "Clean and grease wheel bearings" },
  { id: "safety-wire", line: 5, words: "Replace safety wire and cotter keys" },
  { id: "lubrication", line: 6, words: "Lubricate what needs no taking apart beyond covers and cowlings" },
  { id: "hydraulic-fluid", line: 8, words: "Fill up the hydraulic reservoir", systems: ["2916"] },
  { id: "decorative-coating", line: 9, words: "Renew decorative coating, control surfaces excepted" },
  { id: "upholstery", line: 11, words: "Repair upholstery and furnishings of the cabin" },
  {
    id: "simple-fairing-repair",
    line: 12,
    words: "Small simple repairs of fairings, cover plates and cowlings",
  },
  { id: "side-windows", line: 13, words: "Replace side windows that carry no structure" },
  { id: "safety-belts", line: 14, words: "Replace safety belts" },
  { id: "seats", line: 15, words: "Replace seats or their parts by approved parts" },
  {
    id: "landing-light-wiring",
    line: 16,
    words: "Find and mend broken landing light wiring",
    systems: ["3340"],
    items: ["landing-light"],
  },
  {
    id: "landing-light-bulb",
    line: 17,
    words: "Replace bulbs, reflectors and lenses of position and landing lights",
    systems: ["3340"],
    items: ["position-lights", "landing-light"],
  },
  { id: "wheels", line: 18, words: "Replace wheels and skis, where no weighing follows", systems: ["3246"] },
  { id: "cowling", line: 19, words: "Replace a cowling, without the propeller or flight controls" },
  { id: "spark-plugs", line: 20, words: "Replace, clean and gap spark plugs", systems: ["7421"] },
  { id: "hose", line: 21, words: "Replace hoses, hydraulic ones excepted" },
  { id: "fuel-lines", line: 22, words: "Replace prefabricated fuel lines" },
  {
    id: "oil-filter",
    line: 23,
    words: "Clean or replace fuel and oil strainers and filters",
    systems: ["2821"],
  },
  { id: "battery", line: 24, words: "Replace and service batteries", systems: ["2432"] },
  { id: "fasteners", line: 26, words: "Replace or adjust fasteners that carry no structure" },
  {
    id: "chip-detector",
    line: 29,
    words: "Take out, look at and replace magnetic chip detectors",
    systems: ["7210"],
  },
  {
    id: "tray-mounted-nav-com",
    line: 31,
    words: "Swap radios that sit in a tray in the panel, then try them",
  },
];

/** Not maintenance at all, when started from the flight deck, without tools, as its maker says. */
const NO_MAINTENANCE = "nav-database-upload";

/** The lines that may put a fault right, by its system and what the rule's list calls the equipment. */
export const preventiveFor = (
  jasc: string | undefined,
  ruleItem: string | undefined,
): readonly PreventiveWork[] =>
  jasc === undefined
    ? []
    : PREVENTIVE_WORK.filter(
        ({ systems, items }) =>
          systems?.includes(jasc) === true &&
          (items === undefined || (ruleItem !== undefined && items.includes(ruleItem))),
      );

export interface PreventiveInput {
  /** `tyre-change`; any other word is work that is not in the list. */
  readonly work?: string | undefined;
  readonly certificate?:
    | "student"
    | "sport"
    | "recreational"
    | "private"
    | "commercial"
    | "airline"
    | undefined;
  readonly ownsOrOperates?: boolean | undefined;
  /** The part under which the aircraft is used. */
  readonly usedUnder?: "91" | "other" | undefined;
}

export interface PreventiveRuling extends RuledSteps {
  /** `not maintenance (43.3(k))`, where it is none. */
  readonly itIs?: string;
}

const AT_LEAST_PRIVATE: readonly PreventiveInput["certificate"][] = ["private", "commercial", "airline"];

/** Whether a pilot may do a piece of work and release the aircraft after it. */
export function preventiveMaintenance(input: PreventiveInput): PreventiveRuling {
  const { work, certificate, ownsOrOperates, usedUnder } = input;
  if (work === NO_MAINTENANCE) {
    const words = "Uploading a navigation database from the flight deck, without tools, is no maintenance";
    const ruled = ruledSteps([{ rule: "43.3(k)", words, holds: true }], PREVENTIVE_CITATIONS);
    return { ...ruled, itIs: "not maintenance (43.3(k))" };
  }
  const line = PREVENTIVE_WORK.find(({ id }) => id === work);
  return ruledSteps(
    [
      {
        rule: line === undefined ? "43 appendix A (c)" : `43 appendix A (c)(${line.line})`,
        words: line === undefined ? "The work is in the list of preventive maintenance" : line.words,
        holds: work === undefined ? "unknown" : line !== undefined,
      },
      {
        rule: "43.3(g)",
        words: "The pilot owns or operates the aircraft, and it is not used under other parts",
        holds: holdsWhen(
          ownsOrOperates === false || usedUnder === "other"
            ? false
            : ownsOrOperates === undefined || usedUnder === undefined
              ? undefined
              : true,
          true,
        ),
      },
      {
        rule: "43.7(f)",
        words: "The pilot who releases it holds a private certificate or better",
        holds: certificate === undefined ? "unknown" : AT_LEAST_PRIVATE.includes(certificate),
      },
    ],
    PREVENTIVE_CITATIONS,
  );
}
