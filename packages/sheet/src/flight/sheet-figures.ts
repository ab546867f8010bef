import { type Assessment, tippingPoints } from "@witnessmark/assess";
import type { Book } from "@witnessmark/book";
import type { AircraftState } from "@witnessmark/ledger";
import { clockText } from "../local-time.ts";
import { briefOf, type SheetBrief } from "./brief.ts";
import { lastsText } from "./figure-text.ts";
import { askFlight, type FlightAsk } from "./flight-ask.ts";
import { massAndBalance, type SheetMass } from "./mass-and-balance.ts";
import type { SheetNumber } from "./number-line.ts";
import { numbersOf } from "./numbers.ts";
import { type SheetTip, tipsOf } from "./tips.ts";

/** The numbers of a planned flight, as its assessment found them. */
export interface SheetFigures {
  /** `visual rules by day` */
  readonly rules: string;
  readonly mass: SheetMass;
  readonly numbers: readonly SheetNumber[];
  readonly tips: readonly SheetTip[];
  /** What was planned, and what was counted with. */
  readonly brief: SheetBrief;
  /** When it is due at the destination, local; absent when that is not known. */
  readonly due?: string;
  readonly aboard: number;
  /** From the end of the taxi at cruise burn until the usable fuel is gone: `2 h 03`. */
  readonly fuelFor?: string;
}

function rulesText({ plan, fuel }: FlightAsk): string {
  const rules = plan.flightRules === "VFR" ? "visual rules" : "instrument rules";
  return fuel.night === undefined ? rules : `${rules} by ${fuel.night ? "night" : "day"}`;
}

/** The figures of a flight for the sheet; null when nothing is planned. */
export function figuresOf(given: {
  readonly book: Book;
  readonly state: AircraftState;
  readonly assessment: Assessment;
  readonly east_min: number;
}): SheetFigures | null {
  const { book, state, assessment, east_min } = given;
  const ask = askFlight(book, state, assessment);
  if (ask === undefined) return null;
  const { flight, field, fuel, oxygen } = ask;
  const now_ms = Date.parse(assessment.at);
  const points = tippingPoints(book, state, flight, now_ms);
  const due_ms = field("destination")?.time.value?.planned_ms;
  return {
    rules: rulesText(ask),
    mass: massAndBalance(ask),
    numbers: numbersOf(ask, east_min),
    tips: tipsOf(points, Math.max(Date.parse(flight.offBlocks), now_ms), east_min),
    brief: briefOf(ask, east_min),
    ...(due_ms === undefined ? {} : { due: clockText(due_ms, east_min) }),
    aboard: oxygen.seats.length,
    ...(fuel.endurance_s === undefined ? {} : { fuelFor: lastsText(fuel.endurance_s) }),
  };
}
