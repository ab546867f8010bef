import { NCO_CITATIONS, overWaterDecision_m } from "../eu-part-nco/papers-and-water.ts";
import { holdsWhen } from "../relief.ts";
import { any, ruledSteps } from "../ruled-steps.ts";
import {
  flightIntoIcing,
  overWater,
  SUBPART_F_CITATIONS,
  subpartFApplies,
  takeOffWithFrost,
} from "../us-part-91/subpart-f.ts";
import { choice, defineQuestion, figureOf, type RuleQuestion, yesNo } from "./question.ts";

const not = (said: boolean | undefined): boolean | undefined => (said === undefined ? undefined : !said);
/** A conversion's, no more. */
const ROUNDING_m = 1e-6;
const CRUISE = figureOf("Normal cruise", "mPerS", "kt", [1, 350]);

export const ICE_AND_WATER_QUESTIONS: readonly RuleQuestion[] = [
  defineQuestion({
    id: "subpart-f",
    title: "Is the aeroplane free of subpart F?",
    subject: "Ice and water",
    pack: "us-part-91",
    about: "Subpart F binds large aeroplanes, jets with more than one engine, and fractional ownership.",
    asks: {
      engine: choice("Which engines?", {
        piston: "Piston",
        turboprop: "Turbine with propeller",
        turbojet: "Jet",
      }),
      engines_count: figureOf("How many engines", "count", "count", [1, 12]),
      maxTakeOff_kg: figureOf("Highest take-off mass it is certified for", "kg", "lb", [1, 700_000]),
      fractional: yesNo("Is it in fractional ownership?"),
    },
    rule: ({ fractional, ...aeroplane }) =>
      ruledSteps(
        [
          {
            rule: "91.501(a)",
            words: "It is neither large, nor a jet with more than one engine, nor in fractional ownership",
            holds: holdsWhen(any(subpartFApplies(aeroplane), fractional), false),
          },
        ],
        SUBPART_F_CITATIONS,
      ),
    says: ["Subpart F does not bind it", "Subpart F binds it"],
  }),
  defineQuestion({
    id: "frost",
    title: "May it take off with frost on the wing?",
    subject: "Ice and water",
    pack: "us-part-91",
    asks: {
      subpartF: yesNo("Does subpart F bind the aeroplane?"),
      frostOnWing: yesNo("Does frost adhere to the upper wing, polished or not?"),
      manualAsksForCleanWing: yesNo("Does the flight manual ask for a clean aircraft?"),
    },
    rule: takeOffWithFrost,
    says: ["No frost stands against it", "Take-off is not allowed"],
  }),
  defineQuestion({
    id: "icing",
    title: "May it fly by instruments into ice?",
    subject: "Ice and water",
    pack: "us-part-91",
    about: "For an aeroplane under subpart F.",
    asks: {
      ice: choice("Which ice is on the way?", { none: "None", forecast: "Forecast", known: "Known" }),
      protection: yesNo("Has it ice protection that works and is certified for this?"),
      laterReportsClear: yesNo("Do later reports show that the forecast ice will not be met?"),
    },
    rule: flightIntoIcing,
    says: ["No rule of subpart F stands against it", "The flight may not be made so"],
  }),
  defineQuestion({
    id: "over-water",
    title: "Is aboard what a flight over water asks for?",
    subject: "Ice and water",
    pack: "us-part-91",
    about: "For an aeroplane under subpart F.",
    asks: {
      farthest_m: figureOf("Farthest from the nearest shore", "m", "NM", [0, 10_000_000]),
      cruise_mps: CRUISE,
      vests: yesNo("Is a life vest aboard for each?"),
      rafts: yesNo("Are rafts aboard, for all?"),
    },
    rule: ({ farthest_m, cruise_mps, vests, rafts }) => {
      const need = farthest_m === undefined ? undefined : overWater(cruise_mps ?? 0, farthest_m);
      const needsRafts = cruise_mps === undefined ? undefined : need?.rafts;
      return ruledSteps(
        [
          {
            rule: "91.509(a)",
            words: "A life vest for each, beyond 50 NM from shore",
            holds: holdsWhen(any(not(need?.vests), vests), true),
          },
          {
            rule: "91.509(b)",
            words: "Rafts, beyond 100 NM or half an hour at cruise, whichever is less",
            holds: holdsWhen(any(not(needsRafts), rafts), true),
          },
        ],
        SUBPART_F_CITATIONS,
      );
    },
    says: ["What is asked for is aboard", "It must be aboard first"],
  }),
  defineQuestion({
    id: "nco-over-water",
    title: "May it fly so far over water?",
    subject: "Ice and water",
    pack: "eu-part-nco",
    about: "Farther out than half an hour at cruise or 50 NM, whichever is less, the pilot weighs it.",
    asks: {
      farthest_m: figureOf("Farthest from land where one could alight", "m", "NM", [0, 10_000_000]),
      cruise_mps: CRUISE,
      decided: yesNo("Has the pilot weighed it and decided on rafts and survival equipment?"),
    },
    rule: ({ farthest_m, cruise_mps, decided }) =>
      ruledSteps(
        [
          {
            rule: "NCO.IDE.A.175(c)",
            words: "It stays within half an hour and 50 NM of land, or the pilot has decided",
            holds: holdsWhen(
              any(
                farthest_m === undefined || cruise_mps === undefined
                  ? undefined
                  : farthest_m <= overWaterDecision_m(cruise_mps) + ROUNDING_m,
                decided,
              ),
              true,
            ),
          },
        ],
        NCO_CITATIONS,
      ),
    says: ["Nothing more is asked by this rule", "The pilot decides on rafts and survival equipment first"],
  }),
];
