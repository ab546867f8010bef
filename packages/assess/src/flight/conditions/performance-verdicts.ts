import type { Book } from "@witnessmark/book";
import { approachSpeed, climbGradientOfRate, halfwaySpeedRule, toSI } from "@witnessmark/engine";
import { bookSource } from "../../book-index.ts";
import { REACTION_S } from "./abort.ts";
import { type ClimbFigures, DEPARTURE_GRADIENT_1 } from "./climb.ts";
import { countedWindLines } from "./counted-wind-lines.ts";
import type { FieldFigures } from "./field-figures.ts";
import type { Figure } from "./figure.ts";
import type { SpeedFigures } from "./speeds.ts";
import { feetPerMile, feetPerMinute, kt, marginIn, metres } from "./texts.ts";
import {
  type Draft,
  type FieldContext,
  NOT_KNOWN,
  openSays,
  type Told,
  told,
  untilOf,
  type Warned,
  withMissing,
} from "./told.ts";

const AIM = {
  title: "FAA Aeronautical Information Manual",
  locator: "5-2-9: departures are laid out for 200 ft/NM where they ask for nothing else",
};
const MISSED = {
  title: "FAA Aeronautical Information Manual",
  locator: "5-4-21: missed approaches are laid out for 200 ft/NM where they ask for nothing else",
};
const BALKED = {
  title: "14 CFR 23.77, balked landing",
  locator: "Amdt. 23-62: what a type had to reach in landing configuration; the book's table comes first",
};
const HALFWAY = {
  title: "FAA Aeronautical Information Manual",
  locator: "7-5-7: 70 % of the lift-off speed by half of the runway",
};
const FAST = { title: "FAA AC 91-79: each percent of speed in excess adds two of landing distance" };

/**
 * An open verdict for what its own table or book lacks; none where the distance there waits for all of it too, and has
 * told it.
 */
function open(
  field: FieldContext<FieldFigures>,
  base: Pick<Draft, "id" | "topic" | "title" | "sources">,
  { missing }: Figure<unknown>,
): readonly Told<"open">[] {
  const waited = new Set(field.figures.distance.missing.map(({ what }) => what));
  if (missing.every(({ what }) => waited.has(what))) return [];
  return [told(field, { ...base, says: openSays(missing), margin: NOT_KNOWN }, "open", missing)];
}

interface ClimbTold {
  readonly base: Pick<Draft, "id" | "topic" | "title" | "sources">;
  readonly climb: Figure<ClimbFigures>;
  readonly wayOut: readonly [string, ...string[]];
  readonly laidOut: string;
  /** What the type was certified to reach, where that is known. */
  readonly certified?: { readonly label: string; readonly value: string };
}

const BY: Readonly<Record<NonNullable<ClimbFigures["asked"]>["by"], string>> = {
  you: "you",
  departures: "departures by instruments",
  "missed-approaches": "missed approaches",
};

function climbVerdict(field: FieldContext<FieldFigures>): readonly Told[] {
  const { context, figures } = field;
  const { climb, planned } = figures;
  if (climb === undefined) return [];
  return climbTold(field, {
    base: {
      id: "runway:departure:climb",
      topic: "runway",
      title: `Climb from ${planned.code}`,
      sources: [bookSource(context.book, "performance.tables, climb-gradient"), AIM],
    },
    climb,
    wayOut: ["Less mass", "Wait for colder air or another wind", "A departure that asks for less"],
    laidOut: "departures",
  });
}

/** @source 14 CFR 23.77 (amendment 23-62): the gradient that a balked landing had to reach, by engine and mass */
function certifiedGoAround({
  aircraft,
}: Book): { readonly gradient_1: number; readonly at: string } | undefined {
  const mass_kg = aircraft.certification?.maxTakeOff?.valueSI;
  if (mass_kg === undefined) return undefined;
  const heavy = mass_kg > toSI(6000, "lb");
  if (aircraft.engine === "piston")
    return heavy ? { gradient_1: 0.025, at: "" } : { gradient_1: 0.033, at: " at sea level" };
  if (aircraft.engines === 1) return heavy ? { gradient_1: 0.025, at: "" } : undefined;
  return { gradient_1: heavy ? 0.032 : 0.025, at: "" };
}

function goAroundVerdict(field: FieldContext<FieldFigures>): readonly Told[] {
  const { context, figures } = field;
  const { goAround, planned, role } = figures;
  if (goAround === undefined) return [];
  const certified = certifiedGoAround(context.book);
  return climbTold(field, {
    base: {
      id: `runway:${role}:go-around`,
      topic: "runway",
      title: `Go-around at ${planned.code}`,
      sources: [bookSource(context.book, "performance.tables, go-around-gradient"), MISSED, BALKED],
    },
    climb: goAround,
    wayOut: [
      "Less mass at the landing",
      "Another field, or colder air",
      "Land where a go-around is not needed",
    ],
    laidOut: "missed approaches",
    ...(certified === undefined
      ? {}
      : {
          certified: {
            label: "Asked of such a type, 14 CFR 23.77",
            value: `${(certified.gradient_1 * 100).toFixed(1)}\u00A0%${certified.at}`,
          },
        }),
  });
}

function climbTold(
  field: FieldContext<FieldFigures>,
  { base, climb, wayOut, laidOut, certified }: ClimbTold,
): readonly Told[] {
  const { planned } = field.figures;
  const { value } = climb;
  const status = withMissing(value?.status, climb.missing);
  if (value === undefined || status === "open") return open(field, base, climb);
  const write = (): Draft => {
    const { asked, gradient_1 } = value;
    const { performance } = field.context.book;
    const along_mPerS = field.figures.wind.value?.along_mPerS;
    const asks =
      asked === undefined
        ? ""
        : asked.by === "you"
          ? `, you asked for ${feetPerMile(asked.gradient_1, "up")}`
          : `, ${feetPerMile(asked.gradient_1, "up")} asked of ${BY[asked.by]}`;
    const says = `${feetPerMile(gradient_1, "down")}, ${feetPerMinute(value.rate_mPerS, "down")} at ${kt(value.groundSpeed_mPerS, "up")} over the ground${asks}`;
    return {
      ...base,
      says,
      margin: marginIn(gradient_1 - (asked?.gradient_1 ?? 0), "ftPerNM", "short"),
      lines: [
        { label: value.title, value: `${(value.gradientInAir_1 * 100).toFixed(1)}\u00A0%` },
        { label: "Airspeed of the table", value: `${kt(value.calibrated_mPerS, "down")} calibrated` },
        { label: "True airspeed", value: kt(value.trueAirspeed_mPerS, "up") },
        ...(performance === undefined || along_mPerS === undefined
          ? []
          : countedWindLines({ along_mPerS, counted_mPerS: value.counted_mPerS, performance, isUsed: true })),
        { label: "Speed over the ground", value: kt(value.groundSpeed_mPerS, "up") },
        { label: "Rate of climb", value: feetPerMinute(value.rate_mPerS, "down") },
        { label: "Gradient over the ground", value: feetPerMile(gradient_1, "down") },
        ...(asked === undefined || value.askedRate_mPerS === undefined
          ? []
          : [
              {
                label: `Asked by ${BY[asked.by]}`,
                value: `${feetPerMile(asked.gradient_1, "up")}, ${feetPerMinute(value.askedRate_mPerS, "up")} at that speed`,
              },
            ]),
        ...(certified === undefined ? [] : [certified]),
      ],
      formula: climbGradientOfRate,
      because: [
        gradient_1 <= 0
          ? "It does not climb"
          : status === "stop"
            ? says
            : `Less than the ${feetPerMile(DEPARTURE_GRADIENT_1, "up")} for which ${laidOut} are laid out: look at what stands ahead`,
      ],
      wayOut,
      until: untilOf(climb, planned.code),
    };
  };
  return [told(field, { id: base.id, write }, status)];
}

/** What the speeds are. */
function speedWords(
  base: Pick<Draft, "id" | "topic" | "title" | "sources">,
  value: SpeedFigures,
  until: Draft["until"],
): Draft {
  const { approach, stall_mPerS, stallClean_mPerS, flaps, mass_kg } = value;
  const withFlaps = flaps === undefined ? "" : `, flaps ${flaps}`;
  const gust = approach !== undefined && approach.forGust_mPerS > 0 ? approach.forGust_mPerS : undefined;
  const flown = approach === undefined ? undefined : approach.steady_mPerS + (gust ?? 0);
  const says =
    approach === undefined || flown === undefined
      ? `Stalls at ${kt(stall_mPerS, "up")}${withFlaps}`
      : `Stalls at ${kt(stall_mPerS, "up")}${withFlaps}; approach ${kt(approach.steady_mPerS, "up")}${gust === undefined ? "" : `, ${kt(flown, "up")} with half of the gust`}`;
  const landing =
    approach?.needed_m === undefined || approach.available_m === undefined
      ? undefined
      : `${metres(approach.needed_m, "up")} of ${metres(approach.available_m, "down")}`;
  return {
    ...base,
    says,
    lines: [
      { label: "Mass", value: `${Math.ceil(mass_kg - 1e-9)}\u00A0kg` },
      { label: value.stallTitle, value: `${kt(stall_mPerS, "up")} calibrated` },
      ...(stallClean_mPerS === undefined
        ? []
        : [{ label: "Stall speed, flaps up", value: `${kt(stallClean_mPerS, "up")} calibrated` }]),
      ...(approach === undefined
        ? []
        : [
            {
              label: `Approach, ${approach.factor_1} times the stall`,
              value: kt(approach.steady_mPerS, "up"),
            },
          ]),
      ...(gust === undefined ? [] : [{ label: "For the gust, half of it", value: kt(gust, "up") }]),
      ...(landing === undefined ? [] : [{ label: "Landing at that speed", value: landing }]),
    ],
    ...(approach === undefined ? {} : { formula: approachSpeed }),
    sources: [...base.sources, ...(gust === undefined ? [] : [FAST])],
    because: [
      landing === undefined
        ? "The gust asks for more speed than the rule for the landing distance reaches"
        : `With what is added for the gust the landing needs ${landing}`,
    ],
    until,
  };
}

function speedsVerdict(field: FieldContext<FieldFigures>): readonly Told<Warned>[] {
  const { context, figures } = field;
  const { speeds, planned, role } = figures;
  if (speeds === undefined) return [];
  const base = {
    id: `runway:${role}:speeds`,
    topic: "runway" as const,
    title: `Speeds at ${planned.code}`,
    sources: [bookSource(context.book, "performance.tables, stall-speed")],
  };
  const { value } = speeds;
  const status = withMissing(value?.status, speeds.missing);
  if (value === undefined || status === "open") return open(field, base, speeds);
  const write = (): Draft => speedWords(base, value, untilOf(speeds, planned.code));
  return [told(field, { id: base.id, write }, status)];
}

function abortVerdict(field: FieldContext<FieldFigures>): readonly Told<Warned>[] {
  const { context, figures } = field;
  const { abort, planned } = figures;
  if (abort === undefined) return [];
  const base = {
    id: "runway:departure:abort",
    topic: "runway" as const,
    title: `Point to stop at ${planned.code}`,
    sources: [bookSource(context.book, "performance, liftOffFactor, touchdownFactor"), HALFWAY],
  };
  const { value } = abort;
  const status = withMissing(value?.status, abort.missing);
  if (value === undefined || status === "open") return open(field, base, abort);
  const write = (): Draft => {
    const { at_m, speed_mPerS, stop_m, available_m } = value;
    const left_m = Math.floor(available_m - stop_m);
    return {
      ...base,
      says: `Below ${kt(speed_mPerS, "up")} at ${metres(at_m, "down")}, half-way: stop. It then stands after ${metres(stop_m, "up")}`,
      margin: {
        value: left_m,
        unit: "m",
        text: left_m < 0 ? `${-left_m}\u00A0m short` : `${left_m}\u00A0m`,
      },
      lines: [
        { label: "Lift-off speed", value: kt(value.liftOff_mPerS, "up") },
        { label: "Ground roll of the take-off, factors in", value: metres(value.takeOffRoll_m, "up") },
        { label: "Touchdown speed at that mass", value: kt(value.touchdown_mPerS, "up") },
        { label: "Ground roll of a landing at that mass", value: metres(value.landingRoll_m, "up") },
        { label: "Until the brakes are on", value: `${REACTION_S}\u00A0s` },
        { label: "Stands after", value: `${metres(stop_m, "up")} of ${metres(available_m, "down")} ASDA` },
      ],
      formula: halfwaySpeedRule,
      because: [
        `From the middle of the runway there is not enough left to stop: ${metres(stop_m, "up")} of ${metres(available_m, "down")}. Decide earlier`,
      ],
      until: untilOf(abort, planned.code),
    };
  };
  return [told(field, { id: base.id, write }, status)];
}

/** The climb after the take-off, and that of a landing which is not made. */
export const climbVerdicts = (field: FieldContext<FieldFigures>): readonly Told[] => [
  ...climbVerdict(field),
  ...goAroundVerdict(field),
];

/** Speeds and the point to stop: they stop no flight. */
export const performanceWarnings = (field: FieldContext<FieldFigures>): readonly Told<Warned>[] => [
  ...speedsVerdict(field),
  ...abortVerdict(field),
];
