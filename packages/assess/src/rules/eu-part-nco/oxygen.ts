import { toSI } from "@witnessmark/engine";
import {
  beyondHalfAnHour_s,
  type CabinPoint,
  isProfile,
  timeAbove_s,
  timeBetween_s,
} from "../cabin-profile.ts";
import { feet, isAbove, minutes } from "../edges.ts";
import { needed, type Persons, personsOf } from "../oxygen-parts.ts";
import type { OxygenInput, OxygenNeed, OxygenPart } from "../rule-pack.ts";
import { type Citation, cannotTell, finite, type MissingInput, type Ruling, someMissing } from "../ruling.ts";

const USE: Citation = {
  title: "NCO.OP.190: use of supplemental oxygen",
  locator: "(a), (b)",
  edition: "text quoted on a public page",
  url: "https://www.euroga.org/forums/maintenance-avionics/566-aviation-oxygen-merged?page=41",
  status: "published",
  note: "(a) leaves it to a pilot in command who can judge the effect; (b), followed here, is for all others.",
};
const PRESSURISED: Citation = {
  title: "NCO.IDE.A.150: supplemental oxygen, pressurised aeroplanes",
  locator: "(b)",
  edition: "Regulation (EU) No 965/2012, UK regulatory library",
  url: "https://regulatorylibrary.caa.co.uk/965-2012/Content/Regs/20290_NCOIDEA150_Supplemental_oxygen_pressurised_aeroplanes.htm",
  status: "published",
  note: "Shares of passengers are rounded up to whole people; the crew is counted in the ten minutes too.",
};
const UNPRESSURISED: Citation = {
  title: "NCO.IDE.A.155: supplemental oxygen, non-pressurised aeroplanes",
  edition: "text that follows NCO.OP.190, with AMC1 and AMC2",
  url: "http://online.flipbuilder.com/xuei/rqzt/files/basic-html/page696.html",
  status: "from memory",
};

const LOW_M = toSI(10_000, "ft");
const EVERYONE_M = toSI(13_000, "ft");
const SHARE_M = toSI(14_000, "ft");
const ALL_M = toSI(15_000, "ft");
const HIGH_M = toSI(25_000, "ft");
const TEN_MINUTES_S = 10 * 60;

interface Use {
  readonly crewUse_s: number;
  readonly everyone_s: number;
  readonly steps: readonly string[];
}

function useOf(cabin: readonly CabinPoint[]): Use {
  const some_s = timeBetween_s(cabin, LOW_M, EVERYONE_M);
  const everyone_s = timeAbove_s(cabin, EVERYONE_M);
  return {
    crewUse_s: beyondHalfAnHour_s(some_s) + everyone_s,
    everyone_s,
    steps: [
      "The pilot may judge the need; where that cannot be done, these figures hold.",
      `Cabin above ${feet(LOW_M)} up to and including ${feet(EVERYONE_M)} for ${minutes(some_s)} in all: the crew uses oxygen beyond 30 min of it.`,
      `Cabin above ${feet(EVERYONE_M)} for ${minutes(everyone_s)}: everybody uses oxygen all of that time.`,
    ],
  };
}

/** What a pressurised aeroplane carries, by the cabin altitude after its pressure has gone. */
function carriedPressurised(
  after: readonly CabinPoint[],
  { crew_count, passengers_count }: Persons,
  tenMinutes: boolean,
): readonly OxygenPart[] {
  const above_s = timeAbove_s(after, ALL_M);
  const all_s = above_s > 0 ? Math.max(above_s, TEN_MINUTES_S) : 0;
  const share_s = timeBetween_s(after, SHARE_M, ALL_M);
  const tenth_s = beyondHalfAnHour_s(timeBetween_s(after, LOW_M, SHARE_M));
  const topUp_s = tenMinutes ? Math.max(0, TEN_MINUTES_S - all_s) : 0;
  const shareOf = (percent: number): number => Math.ceil((passengers_count * percent) / 100);
  const passengers = (persons_count: number, time_s: number, why: string): OxygenPart => ({
    id: "passengers",
    persons_count,
    time_s,
    why,
  });
  return [
    {
      id: "crew",
      persons_count: crew_count,
      time_s: all_s + share_s + tenth_s,
      why: "(b)(1): all crew members",
    },
    passengers(
      passengers_count,
      all_s,
      "(b)(1)(i): all passengers above 15,000 ft, never less than ten minutes",
    ),
    passengers(shareOf(30), share_s, "(b)(1)(ii): 30 % of the passengers between 14,000 and 15,000 ft"),
    passengers(
      shareOf(10),
      tenth_s,
      "(b)(1)(iii): 10 % of the passengers from 10,000 to 14,000 ft beyond 30 min",
    ),
    {
      id: "descent",
      persons_count: crew_count + passengers_count,
      time_s: topUp_s,
      why: "(b)(2): everybody for no less than ten minutes",
    },
  ];
}

/** Below 13,000 ft one is down already. */
const isDown = (input: OxygenInput, highest_m: number): boolean | undefined =>
  isAbove(highest_m, EVERYONE_M) ? input.downIn4Min : true;

function missingOf(input: OxygenInput, lacks: MissingInput[]): void {
  const highest_m = finite(input.highestLevel_m);
  if (!isProfile(input.cabin)) lacks.push({ input: "cabin", what: "the cabin altitude over the flight" });
  if (input.pressurised === undefined)
    lacks.push({ input: "pressurised", what: "whether the cabin is pressurised" });
  if (input.pressurised !== true) return;
  if (highest_m === undefined)
    lacks.push({ input: "highestLevel_m", what: "the highest level of the flight" });
  if (highest_m === undefined || !isAbove(highest_m, LOW_M)) return;
  if (!isProfile(input.afterLoss))
    lacks.push({
      input: "afterLoss",
      what: "the cabin altitude after a loss of pressure at the worst place",
    });
  if (!isAbove(highest_m, HIGH_M) && isDown(input, highest_m) === undefined)
    lacks.push({ input: "downIn4Min", what: "whether 13,000 ft can be reached safely within 4 minutes" });
}

export function oxygen(input: OxygenInput): Ruling<OxygenNeed> {
  const lacks: MissingInput[] = [];
  const persons = personsOf(input, lacks);
  missingOf(input, lacks);
  const missing = someMissing(lacks);
  if (missing !== undefined || persons === undefined || !isProfile(input.cabin))
    return cannotTell(
      [USE, PRESSURISED, UNPRESSURISED],
      missing ?? [{ input: "cabin", what: "the cabin altitude over the flight" }],
    );
  const { crewUse_s, everyone_s, steps } = useOf(input.cabin);
  const who = { crewUse_s, passengerUse_s: everyone_s, everyoneProvided_s: everyone_s, maskWorn: false };
  const used: readonly OxygenPart[] = [
    {
      id: "crew",
      persons_count: persons.crew_count,
      time_s: crewUse_s,
      why: "NCO.OP.190(b): used by the crew",
    },
    {
      id: "passengers",
      persons_count: persons.passengers_count,
      time_s: everyone_s,
      why: "NCO.OP.190(b)(2): used by everybody",
    },
  ];
  if (input.pressurised !== true) return needed([USE, UNPRESSURISED], who, used, steps);
  const highest_m = finite(input.highestLevel_m) ?? 0;
  if (!isAbove(highest_m, LOW_M))
    return needed([USE, PRESSURISED], who, used, [
      ...steps,
      "Pressurised, and never above 10,000 ft: none to carry.",
    ]);
  const tenMinutes = isAbove(highest_m, HIGH_M) || isDown(input, highest_m) === false;
  const after = isProfile(input.afterLoss) ? input.afterLoss : input.cabin;
  const carried = carriedPressurised(after, persons, tenMinutes);
  const carriedSteps = [
    ...steps,
    "Pressurised: what is carried is reckoned from the cabin altitude after its pressure has gone.",
    tenMinutes
      ? "Above 25,000 ft, or not down to 13,000 ft within 4 minutes: ten minutes at least for everybody."
      : "Down to 13,000 ft within 4 minutes and not above 25,000 ft: (b)(2) asks nothing more.",
  ];
  return needed([PRESSURISED, USE], who, larger(carried, used), carriedSteps);
}

const sumOf = (parts: readonly OxygenPart[]): number =>
  parts.reduce((sum_s, { persons_count, time_s }) => sum_s + persons_count * time_s, 0);

/** What is carried must also do for what is used on a flight as planned. */
const larger = (carried: readonly OxygenPart[], used: readonly OxygenPart[]): readonly OxygenPart[] =>
  sumOf(used) > sumOf(carried) ? used : carried;
