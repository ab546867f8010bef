import { addMonths } from "@witnessmark/engine";
import { holdsWhen } from "../relief.ts";
import { every, type RuledSteps, ruledSteps } from "../ruled-steps.ts";
import { LOCATOR_CITATIONS, removedLocatorUntil } from "./locator-removed.ts";

/** Training within so far of the place of departure needs no locator. @source 14 CFR 91.207(f)(3) */
const TRAINING_m = 50 * 1852;
/** More than so much use since it was fitted, tests included, uses a battery up. @source 14 CFR 91.207(c)(1) */
const BATTERY_USE_s = 3600;

export interface LocatorInput {
  /** It is there and works. */
  readonly works?: boolean | undefined;
  readonly operation?: "private" | "training" | "ferry-for-repair" | undefined;
  readonly farthestFromDeparture_m?: number | undefined;
  /** Persons whom it is equipped to carry. */
  readonly seats_count?: number | undefined;
  readonly onlyRequiredCrew?: boolean | undefined;
  /** Can be repaired or replaced where the flight departs. */
  readonly repairableHere?: boolean | undefined;
  /** Taken out for repair; what of it is not known is left out. */
  readonly removed?:
    | {
        readonly on?: string | undefined;
        readonly entered?: boolean | undefined;
        readonly placard?: boolean | undefined;
      }
    | undefined;
  /** Local day of the flight. */
  readonly on?: string | undefined;
}

export interface LocatorRuling extends RuledSteps {
  /** The paragraph under which it may be missing: `91.207(e)(2)`. */
  readonly exception: string | undefined;
  /** The last day, where it was removed for repair. */
  readonly until: string | undefined;
}

/** Whether a flight may be made without a locator that works. */
export function flightWithoutLocator(input: LocatorInput): LocatorRuling {
  const { removed, on } = input;
  if (removed !== undefined) {
    const until = removed.on === undefined ? undefined : removedLocatorUntil(removed.on);
    const ruled = ruledSteps(
      [
        {
          rule: "91.207(f)(10)(i)",
          words: "The record has its removal, and a placard in view of the pilot says so",
          holds: holdsWhen(every(removed.entered, removed.placard), true),
        },
        {
          rule: "91.207(f)(10)(ii)",
          words: "No more than 90 days have gone since it was removed",
          holds: on === undefined || until === undefined ? "unknown" : on <= until,
        },
      ],
      LOCATOR_CITATIONS,
    );
    return { ...ruled, until, exception: ruled.allowed ? "91.207(f)(10)" : undefined };
  }
  const exceptions = exceptionsOf(input);
  const exception = exceptions.find(({ applies }) => applies === true)?.rule;
  const open = exceptions.some(({ applies }) => applies === undefined);
  const works = holdsWhen(input.works, true);
  const holds =
    exception !== undefined || works === true ? true : works === "unknown" || open ? "unknown" : false;
  return {
    ...ruledSteps(
      [{ rule: "91.207(a)(2)", words: "A locator is fitted and works, or the flight needs none", holds }],
      LOCATOR_CITATIONS,
    ),
    until: undefined,
    exception: works === true ? undefined : exception,
  };
}

interface Exception {
  readonly rule: string;
  readonly applies: boolean | undefined;
}

function exceptionsOf(input: LocatorInput): readonly Exception[] {
  const { operation, farthestFromDeparture_m, seats_count, onlyRequiredCrew, repairableHere } = input;
  const ferry =
    operation === "ferry-for-repair"
      ? onlyRequiredCrew === false || repairableHere === true
        ? false
        : onlyRequiredCrew === undefined || repairableHere === undefined
          ? undefined
          : true
      : operation === undefined
        ? undefined
        : false;
  const training =
    operation === "training"
      ? farthestFromDeparture_m === undefined
        ? undefined
        : farthestFromDeparture_m <= TRAINING_m
      : operation === undefined
        ? undefined
        : false;
  return [
    { rule: "91.207(e)(2)", applies: ferry },
    { rule: "91.207(f)(3)", applies: training },
    { rule: "91.207(f)(9)", applies: seats_count === undefined ? undefined : seats_count === 1 },
  ];
}

/** The month at whose end half of the battery's life is gone, `2026-02`. @source 14 CFR 91.207(c)(2) */
export const locatorBatteryMonth = (lifeFrom: string, life_months: number): string =>
  addMonths(`${lifeFrom}-01`, Math.floor(life_months / 2)).slice(0, 7);

/** Whether use alone asks for a new battery. */
export const locatorBatteryUsed = (use_s: number): boolean => use_s > BATTERY_USE_s;
