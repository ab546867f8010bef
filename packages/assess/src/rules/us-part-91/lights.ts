import { holdsWhen } from "../relief.ts";
import { any, every, type RuledSteps, ruledSteps } from "../ruled-steps.ts";
import type { Citations } from "../ruling.ts";

const LIGHTS_CITATIONS: Citations = [
  {
    title: "14 CFR 91.209: aircraft lights; 91.205(b)(11): anticollision lights that fail",
    edition: "eCFR issue 2026-08-24",
    url: "https://www.ecfr.gov/on/2026-08-24/title-14/section-91.209",
    status: "published",
  },
];

export interface LightsInput {
  /** From sunset to sunrise; Alaska has its own. */
  readonly sunIsDown?: boolean | undefined;
  readonly positionLightsOn?: boolean | undefined;
  readonly anticollisionInstalled?: boolean | undefined;
  readonly anticollisionOn?: boolean | undefined;
  /** The pilot put it out for safety, in cloud for example. */
  readonly putOutForSafety?: boolean | undefined;
}

/** Which lights must be on: position lights from sunset, anticollision lights by day too. */
export function lights(input: LightsInput): RuledSteps {
  const { sunIsDown, positionLightsOn, anticollisionInstalled, anticollisionOn, putOutForSafety } = input;
  const not = (said: boolean | undefined): boolean | undefined => (said === undefined ? undefined : !said);
  return ruledSteps(
    [
      {
        rule: "91.209(a)(1)",
        words: "Position lights are on from sunset to sunrise",
        holds: holdsWhen(any(not(sunIsDown), positionLightsOn), true),
      },
      {
        rule: "91.209(b)",
        words: "Anticollision lights that are installed are on, unless the pilot put them out for safety",
        holds: holdsWhen(any(not(anticollisionInstalled), anticollisionOn, putOutForSafety), true),
      },
    ],
    LIGHTS_CITATIONS,
  );
}

/** To where one may go on when an anticollision light has failed. */
export const FAILED_LIGHT_LIMIT = "to a location where repairs or replacement can be made";

/** Whether one may go on when an anticollision light has failed, by day, away from base. */
export const anticollisionFailed = (input: {
  readonly awayFromBase?: boolean | undefined;
  /** The flight ends where it can be repaired. */
  readonly toRepair?: boolean | undefined;
}): RuledSteps =>
  ruledSteps(
    [
      {
        rule: "91.205(b)(11)",
        words: `It failed on the way, and the flight goes on ${FAILED_LIGHT_LIMIT}`,
        holds: holdsWhen(every(input.awayFromBase, input.toRepair), true),
      },
    ],
    LIGHTS_CITATIONS,
  );
