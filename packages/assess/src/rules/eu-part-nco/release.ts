import { holdsWhen, type RuledStep } from "../relief.ts";
import type { ReleaseInput } from "../rule-pack.ts";
import { every, type RuledSteps, ruledSteps } from "../ruled-steps.ts";
import type { Citations } from "../ruling.ts";

export const RELEASE_CITATIONS: Citations = [
  {
    title: "Regulation (EU) 1321/2014, Annex Vb (Part-ML), appendix II: limited pilot-owner maintenance",
    locator: "(b)(1) to (9), (c)",
    edition: "as amended by Regulation (EU) 2019/1383, on a page that quotes it whole",
    url: "https://balloonwiki.org/luftrecht/doku.php/en/part-ml/appendix2",
    status: "published",
  },
  {
    title: "The same, appendix III: complex maintenance tasks not to be released by the pilot-owner",
    edition: "as on an authority's regulatory library page",
    url: "https://regulatorylibrary.caa.co.uk/1321-2014/Content/map2/04280_Complex_maintenance_tasks_not_to_be_released_by_the_pilot-owner.htm",
    status: "published",
  },
  {
    title: "M.A.803 (a) to (d): pilot-owner authorisation; ML.A.803 has the same paragraphs",
    edition: "M.A.803 as quoted on a reference page",
    url: "https://avilaw.info/avilaw-base/pilot-owner-authorisation/",
    status: "published",
    note: "The page quotes M.A.803. That ML.A.803 asks the same, with its own appendix II, is from memory.",
  },
  {
    title: "ML.A.801(b): who issues a certificate of release to service",
    edition: "Regulation (EU) 1321/2014",
    status: "from memory",
  },
];

/** Heavier aeroplanes have no pilot-owner who may release. @source M.A.803(b); ML.1 of Regulation 1321/2014 */
const PILOT_OWNER_kg = 2730;

/** What a pilot-owner may not release, whatever the maintenance programme says. @source appendix II (b)(1) to (9) */
export const NOT_FOR_PILOT_OWNERS = {
  critical: "It is a critical maintenance task",
  majorComponent: "It needs a major component or assembly to be taken off",
  directive: "It is done for a directive or an airworthiness limitation that does not allow the pilot-owner",
  specialTools: "It needs special or calibrated tools, other than a torque wrench or a crimping tool",
  testEquipment: "It needs test equipment or special tests, as checks of avionics do",
  unscheduledInspection: "It is an inspection after something happened, as a heavy landing",
  instrumentFlight: "It touches systems that flight by instruments needs",
  complex: "It is a complex task of appendix III, or work inside a component (ML.A.502)",
  periodicInspection: "It is part of the 100-hour or annual inspection",
} as const satisfies Readonly<Record<string, string>>;
export type NotForPilotOwner = keyof typeof NOT_FOR_PILOT_OWNERS;
// the keys of a record are its own names
export const NOT_FOR_PILOT_OWNER_NAMES = Object.keys(NOT_FOR_PILOT_OWNERS) as readonly NotForPilotOwner[];

/** One of them, or none, as the answers that `release` takes. */
export const pilotOwnerTask = (
  task: NotForPilotOwner | "none" | undefined,
): Readonly<Record<string, boolean>> =>
  task === undefined
    ? {}
    : Object.fromEntries(NOT_FOR_PILOT_OWNER_NAMES.map((name) => [name, name === task]));

/** What else is asked of a pilot-owner. */
export const OF_THE_PILOT_OWNER = {
  privately: "Is the aircraft used privately, never commercially?",
  licence: "Does the pilot-owner hold a valid licence with the type or class rating of the aircraft?",
  owns: "Is that pilot on the registration as owner or joint owner, or named by the club that is?",
  inProgramme: "Does the maintenance programme name this work, and this pilot, as pilot-owner maintenance?",
  didIt: "Did that pilot do the work?",
  entered: "Is it entered: what was done by which data, the day, the name, signature and licence number?",
} as const satisfies Readonly<Record<string, string>>;

function byPilotOwner({ said, maxTakeOff_kg }: ReleaseInput): readonly RuledStep[] {
  const light = maxTakeOff_kg === undefined ? undefined : maxTakeOff_kg <= PILOT_OWNER_kg + 1e-6;
  return [
    {
      rule: "ML.A.803(b), M.A.803(b)",
      words: "The aeroplane is 2,730 kg or less, and not used commercially",
      holds: holdsWhen(every(light, said["privately"]), true),
    },
    {
      rule: "ML.A.803(a)(1)",
      words: "The pilot-owner holds a valid licence with the type or class rating",
      holds: holdsWhen(said["licence"], true),
    },
    {
      rule: "ML.A.803(a)(2)",
      words: "That pilot owns it, alone or jointly, or is named by the club that does",
      holds: holdsWhen(said["owns"], true),
    },
    {
      rule: "ML.A.803(c)",
      words: "The maintenance programme names the work as pilot-owner maintenance",
      holds: holdsWhen(said["inProgramme"], true),
    },
    {
      rule: "ML.A.803(b)",
      words: "Who releases it has done the work",
      holds: holdsWhen(said["didIt"], true),
    },
    ...NOT_FOR_PILOT_OWNER_NAMES.map((name, index) => ({
      rule: `ML appendix II (b)(${index + 1})`,
      words: `Not so: ${NOT_FOR_PILOT_OWNERS[name].replace(/^It /, "it ")}`,
      holds: holdsWhen(said[name], false),
    })),
    {
      rule: "ML.A.803(d)",
      words: "It is entered with the data used, the day, name, signature and licence number",
      holds: holdsWhen(said["entered"], true),
    },
  ];
}

/**
 * Whether a release by this person, on this authority, is one that the rules know. What is not said is never taken as
 * so: a release of which something is not known permits nothing.
 */
export function release(input: ReleaseInput): RuledSteps {
  const { as, authority, said } = input;
  switch (as) {
    case "pilot-owner":
      return ruledSteps(byPilotOwner(input), RELEASE_CITATIONS);
    case "certifying-staff":
    case "organisation": {
      const who =
        as === "organisation"
          ? "An approved maintenance organisation released it; its approval is named"
          : "Independent certifying staff, licensed for the type, released it; the licence is named";
      return ruledSteps(
        [
          {
            rule: "ML.A.801(b)",
            words: who,
            holds: authority === undefined ? "unknown" : true,
          },
          {
            rule: "ML.A.801",
            words: "The release stands in the record of the aircraft",
            holds: holdsWhen(said["entered"], true),
          },
        ],
        RELEASE_CITATIONS,
      );
    }
    case "not-known":
    case undefined:
      return ruledSteps(
        [
          {
            rule: "ML.A.801",
            words: "It was released by a person who may, on an authority that is named",
            holds: "unknown",
          },
        ],
        RELEASE_CITATIONS,
      );
    default:
      return as satisfies never;
  }
}
