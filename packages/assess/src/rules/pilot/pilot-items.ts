import type { AircraftClass, Book } from "@witnessmark/book";
import type { AddedItem } from "@witnessmark/ledger";
import { classOfBook } from "./aircraft-class.ts";

/** What runs out for a pilot by one authority's rules, ready to be followed: nothing of it counts before somebody does. */
export interface PilotItem {
  readonly item: AddedItem;
  /** Whom it is for, where it is not for every pilot. */
  readonly onlyFor?: string;
  /** Only on an aircraft of this sort. */
  readonly gear?: Book["aircraft"]["gear"];
  /** Only on an aircraft of one of these classes. */
  readonly classes?: readonly AircraftClass[];
}

const TMG: readonly AircraftClass[] = ["touring-motor-glider"];
const GLIDERS: readonly AircraftClass[] = ["touring-motor-glider", "glider"];
const POWERED: readonly AircraftClass[] = [
  "single-engine-land",
  "multi-engine-land",
  "single-engine-sea",
  "multi-engine-sea",
];

const DAYS_90: AddedItem["limits"] = [{ by: "days", days: 90 }];
const ON_ITS_DAY: AddedItem["limits"] = [{ by: "printed" }];
const ALONE = "alone, or with those only who must be aboard";

const item = (more: Partial<AddedItem> & Pick<AddedItem, "id" | "name" | "limits" | "why">): AddedItem => ({
  about: "pilot",
  combine: "first",
  recurring: true,
  endsLife: false,
  ...more,
});

const UNITED_STATES: readonly PilotItem[] = [
  {
    item: item({
      id: "us-flight-review",
      name: "Flight review",
      rule: "14 CFR 61.56(c)",
      limits: [{ by: "calendar-months", months: 24 }],
      why: "Nobody acts as pilot in command without one, endorsed in the logbook, in the 24 calendar months before. A check for a certificate or rating counts as one.",
    }),
  },
  {
    item: item({
      id: "us-medical",
      name: "Medical certificate",
      rule: "14 CFR 61.23(d)",
      limits: ON_ITS_DAY,
      why: "How long it lasts goes by its class, the age on the day of the examination, and what is flown on it.",
    }),
    onlyFor: "a pilot who flies on a medical certificate",
  },
  {
    item: item({
      id: "us-basicmed-examination",
      name: "BasicMed, examination",
      rule: "14 CFR 61.23(c)(3)",
      limits: [{ by: "calendar-months", months: 48 }],
      why: "In place of a medical certificate, within the limits of 61.113(i): an examination every 48 calendar months.",
    }),
    onlyFor: "a pilot who flies under BasicMed",
  },
  {
    item: item({
      id: "us-basicmed-course",
      name: "BasicMed, course",
      rule: "14 CFR 61.23(c)(3)",
      limits: [{ by: "calendar-months", months: 24 }],
      why: "And its course every 24 calendar months; whichever ends first ends both.",
    }),
    onlyFor: "a pilot who flies under BasicMed",
  },
  {
    item: item({
      id: "us-recency-day",
      name: "Three landings in 90 days",
      rule: "14 CFR 61.57(a)",
      limits: DAYS_90,
      counts: "landings",
      atLeast: 3,
      neededFor: ["passengers"],
      instead: ALONE,
      why: "To carry anybody: three take-offs and landings in the 90 days before, in the same category and class, and the type where a rating is asked for.",
    }),
    gear: "nose-wheel",
  },
  {
    item: item({
      id: "us-recency-tailwheel",
      name: "Three tail-wheel landings in 90 days",
      rule: "14 CFR 61.57(a)(1)(ii)",
      limits: DAYS_90,
      counts: "tailwheel-landings",
      atLeast: 3,
      neededFor: ["passengers"],
      instead: ALONE,
      why: "To carry anybody with a tail-wheel the landings were made with one, each to a full stop.",
    }),
    gear: "tail-wheel",
  },
  {
    item: item({
      id: "us-recency-night",
      name: "Three night landings in 90 days",
      rule: "14 CFR 61.57(b)",
      limits: DAYS_90,
      counts: "night-landings",
      atLeast: 3,
      neededFor: ["passengers-by-night"],
      instead: `${ALONE}, or by day`,
      why: "To carry anybody from one hour after sunset to one hour before sunrise: three to a full stop, made in those hours.",
    }),
    onlyFor: "a pilot who carries anybody by night",
  },
  {
    item: item({
      id: "us-recency-instruments",
      name: "Six approaches in six months",
      rule: "14 CFR 61.57(c)",
      limits: [{ by: "calendar-months", months: 6 }],
      counts: "approaches",
      atLeast: 6,
      neededFor: ["ifr-day", "ifr-night"],
      instead: "by sight",
      why: "To fly by instruments: six approaches, holding and tracking in the six calendar months before the month of the flight. This counts the approaches; say to yourself that you have held and tracked.",
    }),
    onlyFor: "a pilot with an instrument rating",
    classes: POWERED,
  },
  {
    item: item({
      id: "us-glider-tow",
      name: "Three tows in 24 calendar months",
      rule: "14 CFR 61.69(a)(6)",
      limits: [{ by: "calendar-months", months: 24 }],
      neededFor: ["glider-tow"],
      instead: "without a glider in tow",
      why: "To tow a glider: three tows, real or simulated with a pilot who may, or three flights in command of a glider that was towed. Write down the day of the third last of them, from which it counts.",
    }),
    onlyFor: "a pilot who tows gliders",
    classes: POWERED,
  },
];

const EUROPE: readonly PilotItem[] = [
  {
    item: item({
      id: "eu-medical",
      name: "Medical certificate",
      rule: "MED.A.045",
      limits: ON_ITS_DAY,
      why: "Its last day is printed on it; it goes by the class and the age on the day of the examination.",
    }),
  },
  {
    item: item({
      id: "eu-class-rating",
      name: "Class or type rating",
      rule: "FCL.740",
      limits: ON_ITS_DAY,
      why: "Its last day stands on the licence; without it the aircraft may not be flown in command.",
    }),
    onlyFor: "a pilot with a licence of Part-FCL other than the light aircraft licence",
  },
  {
    item: item({
      id: "eu-instrument-rating",
      name: "Instrument rating",
      rule: "FCL.625",
      limits: ON_ITS_DAY,
      neededFor: ["ifr-day", "ifr-night"],
      instead: "by sight",
      why: "Its last day stands on the licence.",
    }),
    onlyFor: "a pilot with an instrument rating",
  },
  {
    item: item({
      id: "eu-language",
      name: "Language proficiency",
      rule: "FCL.055",
      limits: ON_ITS_DAY,
      why: "It stands on the licence with its last day, but for the highest level, which has none.",
    }),
    onlyFor: "a pilot who talks on the radio below the highest level",
  },
  {
    item: item({
      id: "eu-recency-day",
      name: "Three landings in 90 days",
      rule: "FCL.060(b)(1)",
      limits: DAYS_90,
      counts: "landings",
      atLeast: 3,
      neededFor: ["passengers"],
      instead: "alone",
      why: "To carry passengers: three take-offs, approaches and landings in the 90 days before, in an aircraft of the same type or class.",
    }),
  },
  {
    item: item({
      id: "eu-recency-night",
      name: "A night landing in 90 days",
      rule: "FCL.060(b)(2)",
      limits: DAYS_90,
      counts: "night-landings",
      atLeast: 1,
      neededFor: ["passengers-by-night"],
      instead: "alone, by day, or with an instrument rating",
      why: "To carry passengers by night without an instrument rating: one of the landings was by night. Here it counts when it was to a full stop.",
    }),
    onlyFor: "a pilot without an instrument rating",
    classes: POWERED,
  },
  {
    item: item({
      id: "eu-glider-tow",
      name: "Five tows in 24 months",
      rule: "FCL.805(e)",
      limits: [{ by: "months", months: 24 }],
      neededFor: ["glider-tow"],
      instead: "without a glider in tow",
      why: "To tow a glider: five tows in the 24 months before. Write down the day of the fifth last of them, from which it counts.",
    }),
    onlyFor: "a pilot with a rating to tow sailplanes",
    classes: [...POWERED, ...TMG],
  },
  {
    item: item({
      id: "eu-tmg-landings",
      name: "Twelve take-offs and landings in 24 months",
      rule: "SFCL.160(b)(1)(ii)",
      limits: [{ by: "months", months: 24 }],
      counts: "landings",
      atLeast: 12,
      why: "To fly a touring motor glider on a sailplane licence: twelve take-offs and landings with one in the 24 months before. The licence asks for hours and a training flight beside them.",
    }),
    onlyFor: "a pilot with a sailplane licence and none of Part-FCL for it",
    classes: TMG,
  },
  {
    item: item({
      id: "eu-tmg-training",
      name: "Training flight and twelve hours in 24 months",
      rule: "SFCL.160(b)(1)",
      limits: [{ by: "months", months: 24 }],
      why: "Twelve hours in command, six of them on touring motor gliders, and a training flight of an hour with an instructor, in the 24 months before; or a proficiency check. Write down the day from which all of it is still within.",
    }),
    onlyFor: "a pilot with a sailplane licence and none of Part-FCL for it",
    classes: TMG,
  },
  {
    item: item({
      id: "eu-sailplane-passengers",
      name: "Three launches or landings in 90 days",
      rule: "SFCL.160(e)",
      limits: DAYS_90,
      counts: "landings",
      atLeast: 3,
      neededFor: ["passengers"],
      instead: "alone",
      why: "To carry anybody on a sailplane licence: three launches on sailplanes, or three take-offs and landings on touring motor gliders where one is flown, in the 90 days before.",
    }),
    onlyFor: "a pilot with a sailplane licence",
    classes: GLIDERS,
  },
];

/** The pilot's own items of each rule pack, by the id of the pack. A licence goes by its own rules wherever it is flown. */
export const PILOT_ITEMS: ReadonlyMap<string, readonly PilotItem[]> = new Map([
  ["us-part-91", UNITED_STATES],
  ["eu-part-nco", EUROPE],
]);

/** Those that a book's aircraft can have. */
export const pilotItemsFor = (pack: string, book: Pick<Book, "aircraft">): readonly PilotItem[] =>
  (PILOT_ITEMS.get(pack) ?? []).filter(
    ({ gear, classes }) =>
      (gear === undefined || gear === book.aircraft.gear) &&
      (classes === undefined || classes.includes(classOfBook(book))),
  );
