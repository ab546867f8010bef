import { toSI } from "@witnessmark/engine";
import { beyondHalfAnHour_s, isProfile, timeAbove_s, timeBetween_s } from "../cabin-profile.ts";
import { feet, isAbove, minutes } from "../edges.ts";
import { needed, personsOf } from "../oxygen-parts.ts";
import type { OxygenInput, OxygenNeed, OxygenPart } from "../rule-pack.ts";
import {
  type Citations,
  cannotTell,
  finite,
  type MissingInput,
  type Ruling,
  someMissing,
} from "../ruling.ts";

const CITATIONS: Citations = [
  {
    title: "14 CFR 91.211: supplemental oxygen",
    locator: "(a), (b)",
    edition: "text as reproduced on public pages; check the eCFR",
    url: "https://cyanavigation.com/federal-aviation-regulations-and-oxygen-use/",
    status: "published",
    note: "Altitudes of (a) are those of the cabin, those of (b) of the flight.",
  },
];

const CREW_SOME_M = toSI(12_500, "ft");
const CREW_ALL_M = toSI(14_000, "ft");
const EVERYONE_M = toSI(15_000, "ft");
const DESCENT_M = toSI(25_000, "ft");
const MASK_M = toSI(35_000, "ft");
const MASK_ALWAYS_M = toSI(41_000, "ft");
const DESCENT_S = 10 * 60;

/** Above FL350 one pilot wears a mask, unless two are at the controls with masks that go on at once, up to FL410. */
export function maskWorn(input: OxygenInput, highest_m: number): readonly [worn: boolean, step: string] {
  if (input.pressurised !== true || !isAbove(highest_m, MASK_M))
    return [
      false,
      `No mask need be worn for the level alone: it is asked above FL350 in a pressurised cabin.`,
    ];
  const two = (finite(input.pilotsAtControls_count) ?? 0) >= 2;
  const relieved = two && input.quickDonningMasks === true && !isAbove(highest_m, MASK_ALWAYS_M);
  return relieved
    ? [
        false,
        "Above FL350, two pilots at the controls with quick-donning masks, not above FL410: none need be worn.",
      ]
    : [true, "Above FL350: one pilot at the controls wears and uses a mask."];
}

export function oxygen(input: OxygenInput): Ruling<OxygenNeed> {
  const lacks: MissingInput[] = [];
  const persons = personsOf(input, lacks);
  const highest_m = finite(input.highestLevel_m);
  if (highest_m === undefined)
    lacks.push({ input: "highestLevel_m", what: "the highest level of the flight" });
  if (input.pressurised === undefined)
    lacks.push({ input: "pressurised", what: "whether the cabin is pressurised" });
  if (!isProfile(input.cabin)) lacks.push({ input: "cabin", what: "the cabin altitude over the flight" });
  const missing = someMissing(lacks);
  if (missing !== undefined || persons === undefined || highest_m === undefined || !isProfile(input.cabin))
    return cannotTell(CITATIONS, missing ?? [{ input: "cabin", what: "the cabin altitude over the flight" }]);

  const some_s = timeBetween_s(input.cabin, CREW_SOME_M, CREW_ALL_M);
  const all_s = timeAbove_s(input.cabin, CREW_ALL_M);
  const everyone_s = timeAbove_s(input.cabin, EVERYONE_M);
  const crewUse_s = beyondHalfAnHour_s(some_s) + all_s;
  const descends = input.pressurised === true && isAbove(highest_m, DESCENT_M);
  const [worn, maskStep] = maskWorn(input, highest_m);
  const parts: readonly OxygenPart[] = [
    {
      id: "crew",
      persons_count: persons.crew_count,
      time_s: crewUse_s,
      why: "(a)(1), (2): used by the crew",
    },
    {
      id: "passengers",
      persons_count: persons.passengers_count,
      time_s: everyone_s,
      why: "(a)(3): provided to every occupant",
    },
    {
      id: "descent",
      persons_count: persons.crew_count + persons.passengers_count,
      time_s: descends ? DESCENT_S : 0,
      why: "(b)(1)(i): ten minutes for every occupant, on top of (a)",
    },
  ];
  const steps = [
    `Cabin above ${feet(CREW_SOME_M)} up to and including ${feet(CREW_ALL_M)} for ${minutes(some_s)} in all: the crew uses oxygen beyond 30 min of it.`,
    `Cabin above ${feet(CREW_ALL_M)} for ${minutes(all_s)}: the crew uses oxygen all of that time.`,
    `Cabin above ${feet(EVERYONE_M)} for ${minutes(everyone_s)}: every occupant has it at hand.`,
    descends
      ? "Pressurised and above FL250: ten minutes more for every occupant."
      : "Not pressurised, or not above FL250: nothing on top for a descent.",
    maskStep,
  ];
  return needed(
    CITATIONS,
    { crewUse_s, passengerUse_s: 0, everyoneProvided_s: everyone_s, maskWorn: worn },
    parts,
    steps,
  );
}
