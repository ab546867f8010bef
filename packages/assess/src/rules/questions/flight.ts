import type { RuledStep } from "../relief.ts";
import { ruledSteps } from "../ruled-steps.ts";
import { lights } from "../us-part-91/lights.ts";
import {
  PREFLIGHT_CITATIONS,
  preflightInformation,
  preflightLacks,
} from "../us-part-91/preflight-information.ts";
import { choice, defineQuestion, type RuleQuestion, yesNo } from "./question.ts";

/** The ask for each thing that the rule names, by the rule's own words for it. */
const KNOWN = {
  "weather reports and forecasts": yesNo("Known: weather reports and forecasts"),
  "fuel requirements": yesNo("Known: how much fuel it takes"),
  alternatives: yesNo("Known: where else to go if it cannot be completed"),
  "known ATC delays": yesNo("Known: delays that air traffic control has told of"),
  "runway lengths": yesNo("Known: the lengths of the runways"),
  "takeoff and landing distance": yesNo("Known: take-off and landing distance"),
};
type Part = keyof typeof KNOWN;
// the keys of the record are its own names
const PARTS = Object.keys(KNOWN) as readonly Part[];

export const FLIGHT_QUESTIONS: readonly RuleQuestion[] = [
  defineQuestion({
    id: "preflight-information",
    title: "Is all known that the rule names before a flight?",
    subject: "Before and during flight",
    pack: "us-part-91",
    about: "The rule asks for all available information; this is what it names.",
    asks: {
      flightRules: choice("Under which flight rules?", { VFR: "Visual", IFR: "By instruments" }),
      local: yesNo("Does it stay in the vicinity of an airport?"),
      ...KNOWN,
    },
    rule: (said) => {
      const { flightRules, local } = said;
      const lacks = preflightLacks(
        said,
        PARTS.filter((part) => said[part] === true),
      );
      // what a visual flight round the field asks for is asked for always
      const least = preflightInformation({ flightRules: "VFR", local: true });
      const isFarther = flightRules === "IFR" || local === false;
      const stepOf = (part: Part): RuledStep => ({
        rule: least.includes(part) ? "91.103(b)" : "91.103(a)",
        words: KNOWN[part].words,
        holds: !lacks.includes(part)
          ? true
          : said[part] === false && (isFarther || least.includes(part))
            ? false
            : "unknown",
      });
      const asked = preflightInformation(said);
      return ruledSteps(PARTS.filter((part) => asked.includes(part)).map(stepOf), PREFLIGHT_CITATIONS);
    },
    says: ["What the rule names is known", "Something that the rule names is not known"],
  }),
  defineQuestion({
    id: "lights",
    title: "Are the lights on that must be?",
    subject: "Before and during flight",
    pack: "us-part-91",
    asks: {
      sunIsDown: yesNo("Is it between sunset and sunrise?"),
      positionLightsOn: yesNo("Are the position lights on?"),
      anticollisionInstalled: yesNo("Are anticollision lights installed?"),
      anticollisionOn: yesNo("Are the anticollision lights on?"),
      putOutForSafety: yesNo("Did the pilot put them out for safety, in cloud for example?"),
    },
    rule: lights,
    says: ["The lights are as the rule asks", "The lights are not as the rule asks"],
  }),
];
