import { addDays, addMonths, daysBetween } from "@witnessmark/engine";
import { holdsWhen } from "../relief.ts";
import { any, every, ruledSteps } from "../ruled-steps.ts";
import type { Citation, Citations } from "../ruling.ts";
import { LARGE_kg } from "./pilot.ts";
import { choice, day, defineQuestion, type RuleQuestion, yesNo } from "./question.ts";

const ecfr = (title: string, locator: string): Citation => ({
  title,
  locator,
  edition: "eCFR, August 2026",
  status: "published",
});
const one = (title: string, locator: string): Citations => [ecfr(title, locator)];

const not = (said: boolean | undefined): boolean | undefined => (said === undefined ? undefined : !said);
const is = <T>(said: T | undefined, ...wanted: readonly T[]): boolean | undefined =>
  said === undefined ? undefined : wanted.includes(said);

const DEGREE_rad = Math.PI / 180;
/** A conversion may put a figure at a limit a hair beyond it. */
const HAIR_rad = 1e-9;

/** How far two bearings are apart, the short way round, 0 to half a turn. */
export function bearingError_rad(indicated_rad: number, reference_rad: number): number {
  const turn = 2 * Math.PI;
  const apart = Math.abs(indicated_rad - reference_rad) % turn;
  return Math.min(apart, turn - apart);
}

const bearing = (words: string) =>
  ({ kind: "figure", words, unit: "rad", askedIn: "deg", range: [0, 2 * Math.PI] }) as const;

/** Permitted error of each way to check a bearing receiver. @source 14 CFR 91.171(b), (c) */
const PERMITTED_deg = {
  "test-signal": 4,
  "ground-checkpoint": 4,
  "airborne-checkpoint": 6,
  "airway-ground-point": 6,
  "dual-receiver": 4,
} as const;

export const TESTED_QUESTIONS: readonly RuleQuestion[] = [
  defineQuestion({
    id: "bearing-receiver-check",
    title: "Does the check of the VOR receiver hold?",
    subject: "Before and during flight",
    pack: "us-part-91",
    about: "For a flight by instruments that uses it; within 30 days before.",
    asks: {
      method: choice("How was it checked?", {
        "test-signal": "By a test signal",
        "ground-checkpoint": "At a checkpoint on the ground",
        "airborne-checkpoint": "At a checkpoint in the air",
        "airway-ground-point": "Over a point of the ground on an airway",
        "dual-receiver": "Two receivers against each other",
      }),
      indicated_rad: bearing("Bearing that it showed"),
      reference_rad: bearing("Bearing that it should have shown, or that the other showed"),
      signalOrCheckpointThere: yesNo("Was a test signal or a checkpoint on the ground to be had there?"),
      dateEntered: yesNo("Entered: the date"),
      placeEntered: yesNo("Entered: the place"),
      errorEntered: yesNo("Entered: the error"),
      signed: yesNo("Signed by who made it"),
    },
    rule: (said) => {
      const { method, indicated_rad, reference_rad } = said;
      const error_rad =
        indicated_rad === undefined || reference_rad === undefined
          ? undefined
          : bearingError_rad(indicated_rad, reference_rad);
      const inAir = is<string>(method, "airborne-checkpoint", "airway-ground-point");
      return ruledSteps(
        [
          {
            rule: method === "dual-receiver" ? "91.171(c)" : "91.171(b)",
            words: "The error is within what is permitted: 4° on the ground or between two, 6° in the air",
            holds:
              error_rad === undefined || method === undefined
                ? "unknown"
                : error_rad <= PERMITTED_deg[method] * DEGREE_rad + HAIR_rad,
          },
          {
            rule: "91.171(b)(3)",
            words: "In the air only where neither a signal nor a checkpoint is there",
            holds: holdsWhen(any(not(inAir), not(said.signalOrCheckpointThere)), true),
          },
          {
            rule: "91.171(d)",
            words: "Date, place and error are entered, and it is signed",
            holds: holdsWhen(
              every(said.dateEntered, said.placeEntered, said.errorEntered, said.signed),
              true,
            ),
          },
        ],
        one("14 CFR 91.171: VOR equipment check for IFR operations", "(a) to (d)"),
      );
    },
    says: ["It holds for 30 days", "It does not hold"],
    adds: ({ dateEntered, placeEntered, errorEntered, signed }) => {
      const lacks = [
        ...(dateEntered === false ? ["date"] : []),
        ...(placeEntered === false ? ["place"] : []),
        ...(errorEntered === false ? ["error"] : []),
        ...(signed === false ? ["signature"] : []),
      ];
      return lacks.length === 0 ? undefined : `The entry lacks: ${lacks.join(", ")}`;
    },
  }),
  defineQuestion({
    id: "altimeter-and-transponder",
    title: "May it be flown by its altimeter and transponder tests?",
    subject: "Before and during flight",
    pack: "us-part-91",
    about: "Until when each test lasts is followed under What runs out.",
    asks: {
      ifrInControlled: yesNo("Is it by instruments in controlled airspace?"),
      altimeterInTime: yesNo("Was the altimeter and static system tested in the last 24 calendar months?"),
      staticOpened: yesNo("Was the static system opened since, other than its drains and alternate valve?"),
      leakTested: yesNo("Was it tested for leaks after that?"),
      encoderWork: yesNo("Was there work since that could make the reported altitude differ?"),
      correspondenceTested: yesNo("Was the correspondence tested after that?"),
      testedTo_m: {
        kind: "figure",
        words: "Altitude that the altimeter was tested to",
        unit: "m",
        askedIn: "ft",
        range: [0, 30_000],
      },
      planned_m: {
        kind: "figure",
        words: "Highest altitude planned",
        unit: "m",
        askedIn: "ft",
        range: [-500, 30_000],
      },
      transponderInTime: yesNo("Was the transponder tested in the last 24 calendar months?"),
      transponderUsed: yesNo("Is the transponder to be used?"),
    },
    rule: (said) => {
      const { testedTo_m, planned_m } = said;
      const free = not(said.ifrInControlled);
      const reaches =
        testedTo_m === undefined || planned_m === undefined ? undefined : planned_m <= testedTo_m + 1e-6;
      return ruledSteps(
        [
          {
            rule: "91.411(a)(1)",
            words: "By instruments in controlled airspace the altimeter was tested in 24 calendar months",
            holds: holdsWhen(any(free, said.altimeterInTime), true),
          },
          {
            rule: "91.411(a)(2)",
            words: "A static system that was opened was tested for leaks",
            holds: holdsWhen(any(free, not(said.staticOpened), said.leakTested), true),
          },
          {
            rule: "91.411(a)(3)",
            words: "After work on altitude reporting its correspondence was tested",
            holds: holdsWhen(any(free, not(said.encoderWork), said.correspondenceTested), true),
          },
          {
            rule: "91.411(d)",
            words: "By instruments it goes no higher than the altimeter was tested to",
            holds: holdsWhen(any(free, reaches), true),
          },
          {
            rule: "91.413(a)",
            words: "A transponder that is used was tested in 24 calendar months, by sight too",
            holds: holdsWhen(any(not(said.transponderUsed), said.transponderInTime), true),
          },
        ],
        [
          ecfr("14 CFR 91.411: altimeter system and altitude reporting equipment tests", "(a), (d)"),
          ecfr("14 CFR 91.413: ATC transponder tests and inspections", "(a)"),
        ],
      );
    },
    says: ["It may, by these tests", "It may not"],
  }),
  defineQuestion({
    id: "navigation-data",
    title: "May the navigation data be used?",
    subject: "Before and during flight",
    pack: "us-part-91",
    about: "The flight manual's supplement may ask for more: data in its cycle, whatever was looked up.",
    asks: {
      current: yesNo("Is the data within its cycle on the day of the flight?"),
      byData: yesNo("Is any of the flight by instruments on its points or approaches?"),
      verified: yesNo("Was each point and approach found unchanged since the data ended?"),
      manualAsksCurrent: yesNo("Does the flight manual ask for data in its cycle?"),
    },
    rule: ({ current, byData, verified, manualAsksCurrent }) =>
      ruledSteps(
        [
          {
            rule: "AIM 1-1-17",
            words:
              "It is in its cycle, is not flown on by instruments, or every point was verified unchanged",
            holds: holdsWhen(any(current, not(byData), verified), true),
          },
          {
            rule: "91.9(a)",
            words: "What the flight manual asks of it is met",
            holds: holdsWhen(any(not(manualAsksCurrent), current), true),
          },
        ],
        [
          {
            title: "Aeronautical Information Manual, chapter 1 section 1: GPS, database currency",
            edition: "2026",
            status: "published",
          },
          ecfr("14 CFR 91.9: civil aircraft flight manual, marking, and placard requirements", "(a)"),
        ],
      ),
    says: ["It may be used", "It may not be used so"],
    adds: ({ current, byData, verified }) =>
      current === false && byData === true && verified === true
        ? "Out of its cycle, and verified unchanged since"
        : undefined,
  }),
  defineQuestion({
    id: "inspections",
    title: "Is it within the inspections that bind it?",
    subject: "Work on the aircraft",
    pack: "us-part-91",
    about: "Which inspections bind goes by the aircraft and by what it is flown for.",
    asks: {
      certificate: choice("Which airworthiness certificate has it?", {
        standard: "Standard",
        "light-sport-special": "Special, light-sport",
        other: "Another special one",
      }),
      engine: choice("Which engine?", {
        piston: "Piston",
        turboprop: "Turbine propeller",
        turbojet: "Turbojet",
      }),
      engines_count: { kind: "figure", words: "Engines", unit: "1", askedIn: "1", range: [1, 8] },
      maxTakeOff_kg: {
        kind: "figure",
        words: "Greatest take-off mass that it is certificated for",
        unit: "kg",
        askedIn: "lb",
        range: [1, 1_000_000],
      },
      inspected: yesNo("Was it inspected in time: the annual, or the programme that it is under?"),
      approved: yesNo("Did the last inspection end with its approval for return to service?"),
      forHire: yesNo("Are persons carried for hire?"),
      instruction: yesNo("Is it instruction for hire, in an aircraft that the instructor provides?"),
      sinceHundred_s: {
        kind: "figure",
        words: "Time in service at the end of the flight since the last 100-hour inspection or annual",
        unit: "s",
        askedIn: "h",
        range: [0, 360_000_000],
      },
      enRoute: yesNo("Is the flight to the place where that inspection is made?"),
    },
    rule: (said) => {
      const regime = inspectionRegime(said);
      const used = said.sinceHundred_s;
      const within = (h: number) => (used === undefined ? undefined : used <= h * 3600 * (1 + 1e-9));
      // an aircraft under a programme has no 100-hour inspection beside it
      const binds = every(
        any(said.forHire, said.instruction),
        regime === undefined ? undefined : regime === "91.409(a)-annual",
      );
      return ruledSteps(
        [
          {
            rule:
              regime === "91.409(e)-inspection-program"
                ? "91.409(e)"
                : regime === "not-91.409(a)(b)"
                  ? "91.409(c)(1)"
                  : "91.409(a)",
            words: "It was inspected in time: each 12 calendar months, or as its programme has it",
            holds: holdsWhen(regime === undefined ? undefined : said.inspected, true),
          },
          {
            rule: "91.409(a)(1)",
            words: "The inspection ended with its approval for return to service",
            holds: holdsWhen(said.approved, true),
          },
          {
            rule: "91.7(a)",
            words: "It was not found unairworthy with the finding still open",
            holds: holdsWhen(said.approved, true),
          },
          {
            rule: "91.409(b)",
            words: "For hire or instruction no more than 100 h, and 10 h more only to where it is inspected",
            holds: holdsWhen(any(not(binds), within(100), every(said.enRoute, within(110))), true),
          },
        ],
        one("14 CFR 91.409: inspections", "(a) to (f)"),
      );
    },
    says: ["It is within them", "It is not within them"],
    adds: (said) => {
      const regime = inspectionRegime(said);
      if (regime === undefined) return undefined;
      return regime === "91.409(a)-annual"
        ? "It needs an annual inspection"
        : regime === "91.409(e)-inspection-program"
          ? "It needs a programme of inspections, and has no annual"
          : "It is inspected as its own certificate and its maker ask";
    },
  }),
  defineQuestion({
    id: "progressive-interval",
    title: "May an inspection interval be overflown on the way to it?",
    subject: "Work on the aircraft",
    pack: "us-part-91",
    about: "For an aircraft under a progressive inspection.",
    asks: {
      enRoute: yesNo("Is the flight to the place where the inspection is made?"),
      inProgramme: yesNo("Does the approved procedures manual have this allowance?"),
      over_s: {
        kind: "figure",
        words: "Over the interval on arrival",
        unit: "s",
        askedIn: "h",
        range: [0, 3_600_000],
      },
    },
    rule: ({ enRoute, inProgramme, over_s }) =>
      ruledSteps(
        [
          {
            rule: "91.409(d)(2)(ii)",
            words: "It is on the way there, the manual has the allowance, and it is no more than 10 h",
            holds: holdsWhen(
              every(enRoute, inProgramme, over_s === undefined ? undefined : over_s <= 36_000 * (1 + 1e-9)),
              true,
            ),
          },
        ],
        one("14 CFR 91.409: inspections", "(d)(2)(ii)"),
      ),
    says: ["It may, by so much", "It may not"],
  }),
  defineQuestion({
    id: "registration-aboard",
    title: "Does the registration serve for the flight?",
    subject: "Papers",
    pack: "us-part-91",
    asks: {
      flight: day("Day of the flight"),
      expires: day("Last day printed on the certificate"),
      newReceived: yesNo("Has a new certificate come and is it aboard?"),
    },
    rule: ({ flight, expires, newReceived }) =>
      ruledSteps(
        [
          {
            rule: "91.203(a)(2)",
            words: "An effective certificate of registration is aboard; an application to renew is none",
            holds: holdsWhen(
              any(newReceived, flight === undefined || expires === undefined ? undefined : flight <= expires),
              true,
            ),
          },
        ],
        one("14 CFR 91.203: civil aircraft, certifications required", "(a)(2)"),
      ),
    says: ["It serves", "It does not serve"],
  }),
  defineQuestion({
    id: "review-certificate",
    title: "May the airworthiness review certificate be extended?",
    subject: "Papers",
    pack: "eu-part-nco",
    about: "At most twice in a row, and only after twelve months in the care of one organisation.",
    asks: {
      expires: day("Its last day"),
      extended: day("Day of the extension"),
      used_count: {
        kind: "figure",
        words: "Extensions since the last review",
        unit: "1",
        askedIn: "1",
        range: [0, 20],
      },
      managed: yesNo("Was it twelve months in the care of the same organisation?"),
    },
    rule: ({ expires, extended, used_count, managed }) =>
      ruledSteps(
        [
          {
            rule: "ML.A.901(c)",
            words:
              "No more than two extensions follow a review, after twelve months in one organisation's care",
            holds: holdsWhen(every(used_count === undefined ? undefined : used_count < 2, managed), true),
          },
          {
            rule: "ML.A.901(d)",
            words: "It is extended in the 30 days before its last day, and not after it",
            holds:
              expires === undefined || extended === undefined
                ? "unknown"
                : extended <= expires && daysBetween(extended, expires) <= 30,
          },
        ],
        [
          {
            title: "EASA FAQ 19050: anticipating the extension of a review certificate",
            edition: "as published",
            status: "published",
          },
        ],
      ),
    says: ["It may, and keeps its day of the year", "It may not so: a full review, or another day"],
    adds: ({ expires, extended, used_count }) =>
      expires !== undefined && extended !== undefined && used_count !== undefined && used_count < 2
        ? `Extended, it is good until ${addMonths(expires, 12)}`
        : undefined,
  }),
];

/** Which inspections of 91.409 an aeroplane is under; undefined where that is not known. @source 14 CFR 91.409(a), (c), (e), 1.1 */
export function inspectionRegime(said: {
  readonly certificate?: "standard" | "light-sport-special" | "other" | undefined;
  readonly engine?: "piston" | "turboprop" | "turbojet" | undefined;
  readonly engines_count?: number | undefined;
  readonly maxTakeOff_kg?: number | undefined;
}): "91.409(a)-annual" | "91.409(e)-inspection-program" | "not-91.409(a)(b)" | undefined {
  const { certificate, engine, engines_count, maxTakeOff_kg } = said;
  if (certificate === undefined) return undefined;
  if (certificate !== "standard") return "not-91.409(a)(b)";
  const large = maxTakeOff_kg === undefined ? undefined : maxTakeOff_kg > LARGE_kg * (1 + 1e-9);
  const turbines = every(
    is<string>(engine, "turboprop"),
    engines_count === undefined ? undefined : engines_count > 1,
  );
  const programme = any(large, is<string>(engine, "turbojet"), turbines);
  if (programme === undefined) return undefined;
  return programme ? "91.409(e)-inspection-program" : "91.409(a)-annual";
}

/** Whether a review of airworthiness that began early keeps the day of the year. @source ML.A.903(d): up to 90 days */
export const reviewKeepsDay = (expires: string, began: string): boolean =>
  began >= addDays(expires, -90) && began <= expires;
