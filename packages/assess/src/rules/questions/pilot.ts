import type { RuledStep } from "../relief.ts";
import { holdsWhen } from "../relief.ts";
import { any, every, ruledSteps } from "../ruled-steps.ts";
import type { Citations } from "../ruling.ts";
import { choice, defineQuestion, type RuleQuestion, yesNo } from "./question.ts";

const published = (title: string, locator: string): Citations => [
  { title, locator, edition: "eCFR, August 2026", status: "published" },
];

const HOUR_s = 3600;
/** @source 14 CFR 91.17(a)(1) */
const BOTTLE_s = 8 * HOUR_s;
/** Grams in 100 mL of blood, or in 210 L of breath, from which on nobody acts. @source 14 CFR 91.17(a)(4) */
const CONCENTRATION_1 = 0.04;
/** @source 14 CFR 61.31(f): more than 200 horsepower, of one engine */
const HIGH_PERFORMANCE_W = 200 * 745.6998715822702;
/** @source 14 CFR 61.31(g): above 25,000 ft */
const HIGH_ALTITUDE_m = 25_000 * 0.3048;
/** @source 14 CFR 1.1: large is more than 12,500 lb */
export const LARGE_kg = 12_500 * 0.45359237;

const not = (said: boolean | undefined): boolean | undefined => (said === undefined ? undefined : !said);
const above = (value: number | undefined, limit: number): boolean | undefined =>
  value === undefined ? undefined : value > limit;
const atMost = (value: number | undefined, limit: number): boolean | undefined => not(above(value, limit));

/** A conversion may put a figure at a limit a hair beyond it. */
const HAIR = 1 + 1e-9;

interface Endorsement {
  readonly rule: string;
  readonly words: string;
  readonly asked: boolean | undefined;
  readonly held: boolean | undefined;
}

/** An endorsement that is not asked for, or is held. */
const endorsed = ({ rule, words, asked, held }: Endorsement): RuledStep => ({
  rule,
  words,
  holds: holdsWhen(any(not(asked), held), true),
});

export const PILOT_QUESTIONS: readonly RuleQuestion[] = [
  defineQuestion({
    id: "alcohol",
    title: "May one fly after a drink?",
    subject: "The pilot",
    pack: "us-part-91",
    about: "Four tests, each by itself; eight hours alone clear nobody.",
    asks: {
      sinceLastDrink_s: {
        kind: "figure",
        words: "Since the last drink",
        unit: "s",
        askedIn: "h",
        range: [0, 100_000 * HOUR_s],
      },
      underTheInfluence: yesNo("Is one still under its influence, or that of a drug against safety?"),
      concentration_1: {
        kind: "figure",
        words: "Alcohol, grams in 100 mL of blood or 210 L of breath",
        unit: "1",
        askedIn: "1",
        range: [0, 1],
      },
    },
    rule: ({ sinceLastDrink_s, underTheInfluence, concentration_1 }) =>
      ruledSteps(
        [
          {
            rule: "91.17(a)(1)",
            words: "Eight hours have gone since the last drink",
            holds: holdsWhen(
              sinceLastDrink_s === undefined ? undefined : sinceLastDrink_s * HAIR >= BOTTLE_s,
              true,
            ),
          },
          {
            rule: "91.17(a)(2)",
            words: "Nothing of it, nor of a drug that is against safety, is felt",
            holds: holdsWhen(underTheInfluence, false),
          },
          {
            rule: "91.17(a)(4)",
            words: "The concentration is below 0.04",
            holds: holdsWhen(
              concentration_1 === undefined ? undefined : concentration_1 < CONCENTRATION_1,
              true,
            ),
          },
        ],
        published("14 CFR 91.17: alcohol or drugs", "(a)"),
      ),
    says: ["These rules let one act as crew; how one feels comes after them", "Nobody acts as crew so"],
  }),
  defineQuestion({
    id: "endorsements",
    title: "Are all endorsements held that the aeroplane asks for?",
    subject: "The pilot",
    pack: "us-part-91",
    asks: {
      large: yesNo("Is its greatest take-off mass more than 12,500 lb (5,670 kg)?"),
      turbojet: yesNo("Has it a turbojet or turbofan?"),
      typeRating: yesNo("Held: the type rating"),
      retractableGear: yesNo("Does its landing gear come up?"),
      flaps: yesNo("Has it flaps?"),
      controllablePropeller: yesNo("Can the pitch of its propeller be changed, or one lever does it?"),
      complex: yesNo("Held: complex aeroplane"),
      power_W: {
        kind: "figure",
        words: "Power of one engine",
        unit: "W",
        askedIn: "hp",
        range: [0, 10_000_000],
      },
      highPerformance: yesNo("Held: high-performance aeroplane"),
      pressurised: yesNo("Is it pressurised?"),
      ceiling_m: {
        kind: "figure",
        words: "Lower of its service ceiling and its greatest operating altitude",
        unit: "m",
        askedIn: "ft",
        range: [0, 30_000],
      },
      highAltitude: yesNo("Held: pressurised aircraft at high altitude"),
      tailwheel: yesNo("Has it a tail-wheel?"),
      tailwheelHeld: yesNo("Held: tail-wheel aeroplane"),
    },
    rule: (said) =>
      ruledSteps(
        [
          endorsed({
            rule: "61.31(a)",
            words: "A type rating is held where it is large or has a turbojet",
            asked: any(said.large, said.turbojet),
            held: said.typeRating,
          }),
          endorsed({
            rule: "61.31(e)",
            words: "Complex: gear that comes up, flaps, and a propeller whose pitch changes",
            asked: every(said.retractableGear, said.flaps, said.controllablePropeller),
            held: said.complex,
          }),
          endorsed({
            rule: "61.31(f)",
            words: "High-performance: an engine of more than 200 hp",
            asked: above(said.power_W, HIGH_PERFORMANCE_W * HAIR),
            held: said.highPerformance,
          }),
          endorsed({
            rule: "61.31(g)",
            words: "Pressurised, and able to operate above 25,000 ft",
            asked: every(said.pressurised, above(said.ceiling_m, HIGH_ALTITUDE_m * HAIR)),
            held: said.highAltitude,
          }),
          endorsed({
            rule: "61.31(i)",
            words: "Tail-wheel",
            asked: said.tailwheel,
            held: said.tailwheelHeld,
          }),
        ],
        published(
          "14 CFR 61.31: type rating, additional training and authorization requirements",
          "(a), (e) to (g), (i)",
        ),
      ),
    says: ["What the aeroplane asks for is held", "An endorsement or rating is missing"],
  }),
  defineQuestion({
    id: "basicmed",
    title: "Is the flight within the limits of BasicMed?",
    subject: "The pilot",
    pack: "us-part-91",
    about: "For a pilot who flies without a medical certificate, under 61.113(i).",
    asks: {
      occupants_count: {
        kind: "figure",
        words: "Persons that it is authorised to carry",
        unit: "1",
        askedIn: "1",
        range: [1, 1000],
      },
      maxTakeOff_kg: {
        kind: "figure",
        words: "Greatest take-off mass that it is certificated for",
        unit: "kg",
        askedIn: "lb",
        range: [1, 1_000_000],
      },
      passengers_count: {
        kind: "figure",
        words: "Passengers on this flight",
        unit: "1",
        askedIn: "1",
        range: [0, 1000],
      },
      altitude_m: {
        kind: "figure",
        words: "Highest altitude, above mean sea level",
        unit: "m",
        askedIn: "ft",
        range: [-500, 30_000],
      },
      speed_mPerS: {
        kind: "figure",
        words: "Highest indicated airspeed",
        unit: "mPerS",
        askedIn: "kt",
        range: [0, 500],
      },
      forHire: yesNo("Is it for compensation or hire?"),
    },
    rule: (said) =>
      ruledSteps(
        [
          {
            rule: "61.113(i)(1) occupants",
            words: "It is authorised to carry no more than 7 persons",
            holds: holdsWhen(atMost(said.occupants_count, 7), true),
          },
          {
            rule: "61.113(i)(1) mass",
            words: "Its greatest take-off mass is no more than 12,500 lb",
            holds: holdsWhen(atMost(said.maxTakeOff_kg, LARGE_kg * HAIR), true),
          },
          {
            rule: "61.113(i)(1) passengers",
            words: "No more than 6 passengers are aboard",
            holds: holdsWhen(atMost(said.passengers_count, 6), true),
          },
          {
            rule: "61.113(i)(2)(i)",
            words: "It stays at or below 18,000 ft",
            holds: holdsWhen(atMost(said.altitude_m, 18_000 * 0.3048 * HAIR), true),
          },
          {
            rule: "61.113(i)(2)(iii)",
            words: "It stays at or below 250 kt indicated",
            holds: holdsWhen(atMost(said.speed_mPerS, ((250 * 1852) / HOUR_s) * HAIR), true),
          },
          {
            rule: "61.113(i)(2)(iv)",
            words: "It is not for compensation or hire",
            holds: holdsWhen(said.forHire, false),
          },
        ],
        published("14 CFR 61.113: private pilot privileges and limitations", "(i)"),
      ),
    says: [
      "The flight is within them; examination and course must be in time too",
      "The flight is beyond them",
    ],
  }),
  defineQuestion({
    id: "flight-review",
    title: "Does the flight review hold?",
    subject: "The pilot",
    pack: "us-part-91",
    about: "Until when it lasts is followed under What runs out; this asks whether it counts at all.",
    asks: {
      inTime: yesNo("Was it flown since the beginning of the 24th calendar month before this one?"),
      endorsed: yesNo("Does an endorsement in the logbook say so?"),
      what: choice("What was done in that time?", {
        review: "A flight review",
        check: "A pilot proficiency check or practical test for a certificate or rating",
        "instructor-renewal": "A flight instructor certificate was renewed, and nothing else",
        none: "Nothing of these",
      }),
    },
    rule: ({ inTime, endorsed: logged, what }) =>
      ruledSteps(
        [
          {
            rule: "61.56(c)",
            words: "A review, or a check that stands for one, was made in the 24 calendar months before",
            holds: holdsWhen(
              every(inTime, what === undefined ? undefined : what === "review" || what === "check"),
              true,
            ),
          },
          {
            rule: "61.56(c)(2)",
            words: "The logbook was endorsed by who gave the review; a check needs none",
            holds: holdsWhen(any(what === undefined ? undefined : what === "check", logged), true),
          },
        ],
        published("14 CFR 61.56: flight review", "(c) to (f)"),
      ),
    says: ["It holds", "It does not hold: nobody acts as pilot in command without it"],
    adds: ({ what }) =>
      what === "instructor-renewal"
        ? "Renewing an instructor certificate spares the hour of ground training only"
        : undefined,
  }),
];
