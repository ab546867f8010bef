import { holdsWhen } from "../relief.ts";
import { any, ruledSteps } from "../ruled-steps.ts";
import { anticollisionFailed } from "../us-part-91/lights.ts";
import { flightWithoutLocator, locatorBatteryMonth, locatorBatteryUsed } from "../us-part-91/locator.ts";
import { LOCATOR_CITATIONS } from "../us-part-91/locator-removed.ts";
import { deviationInTime, TRANSPONDER_CITATIONS, transponderRequired } from "../us-part-91/transponder.ts";
import { choice, day, defineQuestion, figureOf, type RuleQuestion, yesNo } from "./question.ts";

const DAY_s = 86_400;

export const DOES_NOT_WORK_QUESTIONS: readonly RuleQuestion[] = [
  defineQuestion({
    id: "locator-does-not-work",
    title: "May it fly without an emergency locator that works?",
    subject: "What does not work",
    pack: "us-part-91",
    asks: {
      works: yesNo("Is a locator fitted, and does it work?"),
      operation: choice("What is the flight?", {
        private: "Private travel",
        training: "Training",
        "ferry-for-repair": "Ferry, to have it fitted or repaired",
      }),
      farthestFromDeparture_m: figureOf("Farthest from the place of departure", "m", "NM", [0, 20_000_000]),
      seats_count: figureOf("Persons whom it is equipped to carry", "count", "count", [1, 100]),
      onlyRequiredCrew: yesNo("Is nobody aboard but the crew that it requires?"),
      repairableHere: yesNo("Can it be repaired or replaced at the place of departure?"),
    },
    rule: flightWithoutLocator,
    says: ["The flight may be made", "The flight may not be made without it"],
    adds: (said) => {
      const { exception } = flightWithoutLocator(said);
      return exception === undefined ? undefined : `The exception is ${exception}`;
    },
  }),
  defineQuestion({
    id: "locator-removed",
    title: "May it fly while its locator is away for repair?",
    subject: "What does not work",
    pack: "us-part-91",
    asks: {
      removedOn: day("On which day was it removed?"),
      entered: yesNo("Does the record say when, its make, model, serial number and why?"),
      placard: yesNo("Does a placard in view of the pilot say “ELT not installed”?"),
      on: day("Day of the flight"),
    },
    rule: ({ removedOn, entered, placard, on }) =>
      flightWithoutLocator({ removed: { on: removedOn, entered, placard }, on }),
    says: ["It may be flown without", "It may not be flown without"],
    adds: ({ removedOn }) => {
      const { until } = flightWithoutLocator({ removed: { on: removedOn } });
      return until === undefined ? undefined : `The last day is ${until}`;
    },
  }),
  defineQuestion({
    id: "locator-battery",
    title: "Is the locator's battery still good?",
    subject: "What does not work",
    pack: "us-part-91",
    about: "The date on the outside of the locator goes before this sum.",
    asks: {
      lifeFrom: day("From when does its useful life count? Any day of that month."),
      life_months: figureOf("Its useful life in months", "count", "count", [1, 600]),
      use_s: figureOf("All its use since it was fitted, tests included", "s", "min", [0, 100 * DAY_s]),
      on: day("Day of the flight"),
    },
    rule: ({ lifeFrom, life_months, use_s, on }) => {
      const until =
        lifeFrom === undefined || life_months === undefined
          ? undefined
          : locatorBatteryMonth(lifeFrom.slice(0, 7), life_months);
      return ruledSteps(
        [
          {
            rule: "91.207(c)(1)",
            words: "It was not used for more than an hour in all",
            holds: use_s === undefined ? "unknown" : !locatorBatteryUsed(use_s),
          },
          {
            rule: "91.207(c)(2)",
            words: "Half of its useful life is not gone",
            holds: until === undefined || on === undefined ? "unknown" : on.slice(0, 7) <= until,
          },
        ],
        LOCATOR_CITATIONS,
      );
    },
    says: ["The battery may stay in", "It needs a new battery"],
    adds: ({ lifeFrom, life_months }) =>
      lifeFrom === undefined || life_months === undefined
        ? undefined
        : `Its last month is ${locatorBatteryMonth(lifeFrom.slice(0, 7), life_months)}`,
  }),
  defineQuestion({
    id: "anticollision-failed",
    title: "May one go on when an anticollision light has failed?",
    subject: "What does not work",
    pack: "us-part-91",
    about: "By day, for an aircraft that must have such lights.",
    asks: {
      awayFromBase: yesNo("Did it fail on the way?"),
      toRepair: yesNo("Does the flight end where it can be repaired or replaced?"),
    },
    rule: anticollisionFailed,
    says: ["The flight may go on to there", "The flight may not go on with it"],
  }),
  defineQuestion({
    id: "transponder",
    title: "May it fly without a transponder?",
    subject: "What does not work",
    pack: "us-part-91",
    about: "With altitude reporting, in the 48 states.",
    asks: {
      works: yesNo("Is one aboard, and does it work with altitude reporting?"),
      airspace: choice("Airspace on the way that asks for most", {
        A: "A",
        B: "B",
        C: "C",
        D: "D",
        E: "E",
        G: "G",
      }),
      nearListedAirspace: yesNo("Within 30 NM of an airport that the rule lists, or above class B or C?"),
      altitude_m: figureOf("Highest above mean sea level", "m", "ft", [-500, 25_000]),
      terrain_m: figureOf("The ground below there, above mean sea level", "m", "ft", [-500, 9_000]),
    },
    rule: ({ works, nearListedAirspace, ...where }) => {
      const asked = transponderRequired({ ...where, nearListedAirspace });
      // that it is far from the listed airports is a thing to be known too
      const required = asked === false && nearListedAirspace === undefined ? undefined : asked;
      return ruledSteps(
        [
          {
            rule: "91.215(b)",
            words: "The airspace asks for none, or one is aboard and works",
            holds: holdsWhen(any(required === undefined ? undefined : !required, works), true),
          },
        ],
        TRANSPONDER_CITATIONS,
      );
    },
    says: ["It may be flown so", "It may not be flown so without leave of air traffic control"],
  }),
  defineQuestion({
    id: "transponder-leave",
    title: "Is leave to fly without a transponder asked for in time?",
    subject: "What does not work",
    pack: "us-part-91",
    asks: {
      state: choice("Why is there none?", {
        "does-not-work": "It does not work",
        "not-installed": "None is installed",
      }),
      before_s: figureOf("How long before the flight leave is asked for", "s", "min", [0, 365 * DAY_s]),
    },
    rule: ({ state, before_s }) =>
      deviationInTime({
        state,
        ...(before_s === undefined ? {} : { asked_ms: 0, flight_ms: Math.round(before_s * 1_000) }),
      }),
    says: ["It is asked for in time; the controller decides", "It is asked for too late"],
  }),
];
