import { type Assessment, limitWords } from "@witnessmark/assess";
import type { Book, Check, GroundGearItem, Stance, WalkKind } from "@witnessmark/book";
import { UNITS } from "@witnessmark/engine";
import type { AircraftState, Read } from "@witnessmark/ledger";
import { STANDING_CAUTION } from "../sheet.ts";
import { WALK_NAMES } from "../walk-names.ts";

/** One thing to do, with room for its answer. */
export interface PaperLine {
  readonly id: string;
  readonly kind: "check" | "ground-gear";
  /** Where: the point's or the item's name. */
  readonly place: string;
  /** What to do there. */
  readonly title: string;
  /** What right looks like; how many, for ground gear. */
  readonly shouldBe: string;
  readonly reading?: {
    /** "tyre pressure" */
    readonly quantity: string;
    /** Symbol of the gauge's unit, empty for a plain count. */
    readonly unit: string;
    /** One limit at the temperature given; without one, a limit for each of several. */
    readonly limits: readonly string[];
  };
  /** The tanks that are looked into here though no reading is asked for: a line for each, and its unit. */
  readonly tanks: readonly { readonly name: string; readonly unit: string }[];
  /** Of ground gear that is taken off: where it may be stowed, a box each. */
  readonly stowedIn: readonly string[];
  /** A photo or a figure is asked for, a tick is not enough. */
  readonly asksPhoto: boolean;
}

export interface PaperStop {
  readonly number: number;
  readonly stance: Stance;
  readonly lines: readonly PaperLine[];
}

/** A walk as it is carried on paper: for when the phone is dead, or is left in the office. */
export interface WalkPaper {
  readonly registration: string;
  readonly type: string;
  readonly revision: number;
  readonly walk: string;
  readonly stops: readonly PaperStop[];
  readonly lineCount: number;
  /** Discrepancies that nobody has put right, in the words in which they were raised; then what was read outside its limit. */
  readonly known: readonly string[];
  /** What the limits were worked out for. */
  readonly temperature: Read | undefined;
  /** A flight is decided on after it; after an after-flight walk there is none. */
  readonly isBeforeFlight: boolean;
  readonly caution: string;
  /** The book's own notice. */
  readonly notice: string;
}

/** A step of a planned walk, as the planner gives it. */
export type PlannedStep =
  | { readonly kind: "check"; readonly id: string; readonly check: Check }
  | { readonly kind: "ground-gear"; readonly id: string; readonly item: GroundGearItem };

export interface PlannedWalk {
  readonly kind: WalkKind;
  readonly stops: readonly {
    readonly number: number;
    readonly stance: Stance;
    readonly steps: readonly PlannedStep[];
  }[];
}

/** Without a temperature the sheet is to serve on any day: a cold, a cool, a warm and a hot one. */
const DAYS: readonly Read[] = [-10, 5, 20, 35].map((value) => ({ value, unit: "degC" }));

/**
 * @param verdicts on the aircraft as it stands
 * @param temperature of what stands parked, which gas and oil have taken on; `undefined` when it is not known yet
 */
export function walkPaper(
  book: Book,
  state: Pick<AircraftState, "discrepancies">,
  plan: PlannedWalk,
  verdicts: Assessment["verdicts"],
  temperature: Read | undefined,
): WalkPaper {
  const stops = plan.stops.map(({ number, stance, steps }) => ({
    number,
    stance,
    lines: steps.map((step) =>
      step.kind === "check" ? checkLine(book, step.check, temperature) : gearLine(step.item, plan.kind),
    ),
  }));
  return {
    registration: book.aircraft.registration,
    type: book.aircraft.type,
    revision: book.revision,
    walk: WALK_NAMES[plan.kind],
    stops,
    lineCount: stops.reduce((count, { lines }) => count + lines.length, 0),
    known: knownWrong(state, verdicts),
    temperature,
    isBeforeFlight: plan.kind !== "after-flight",
    caution: STANDING_CAUTION,
    notice: book.notice,
  };
}

/** A look that stops is known to be wrong, whatever was answered: a discrepancy names the others. */
function knownWrong(
  state: Pick<AircraftState, "discrepancies">,
  verdicts: Assessment["verdicts"],
): readonly string[] {
  return [
    ...[...state.discrepancies.values()].filter(({ isOpen }) => isOpen).map(({ words }) => words),
    ...verdicts
      .filter(({ topic, status }) => topic === "check" && status === "stop")
      .map(({ title, says, margin }) => `${title}: ${margin?.text ?? says}`),
  ];
}

function checkLine(book: Book, check: Check, temperature: Read | undefined): PaperLine {
  const reading = readingLine(book, check, temperature);
  return {
    id: check.id,
    kind: "check",
    place: book.points.get(check.point)?.name ?? check.point,
    title: check.title,
    shouldBe: check.shouldBe,
    ...(reading === undefined ? {} : { reading }),
    tanks: tanksToldAt(book, check),
    stowedIn: [],
    asksPhoto: check.evidence === "photo",
  };
}

/**
 * The tanks that are told at a check's point and asked for by no reading there; of several checks at one point the
 * book's first has their lines. A tank's own gauge says in what it is read; without one, litres.
 */
function tanksToldAt({ loading, gauges, checks }: Book, { id, point }: Check): PaperLine["tanks"] {
  const here = checks.filter((check) => check.point === point);
  if (here[0]?.id !== id || here.some(({ reading }) => reading?.dimension === "volume")) return [];
  return (loading?.tanks ?? [])
    .filter(({ readAt }) => readAt.includes(point))
    .map(({ name, gauge }) => {
      const unit = gauge === undefined ? undefined : gauges.get(gauge)?.unit;
      return { name, unit: UNITS[unit ?? "L"].symbol };
    });
}

function readingLine(book: Book, check: Check, temperature: Read | undefined): PaperLine["reading"] {
  const { reading } = check;
  const gauge = reading === undefined ? undefined : book.gauges.get(reading.gauge);
  if (reading === undefined || gauge === undefined) return undefined;
  const at = reading.limit.by === "fixed" ? [undefined] : temperature === undefined ? DAYS : [temperature];
  return {
    quantity: reading.quantity,
    unit: UNITS[gauge.unit].symbol,
    limits: at.map((day) => {
      const limit = limitWords(reading, gauge, day);
      return limit.known ? limit.words : limit.says;
    }),
  };
}

function gearLine(item: GroundGearItem, kind: WalkKind): PaperLine {
  const isFitted = kind === "after-flight";
  const count = item.count === 1 ? "" : `, all ${item.count}`;
  return {
    id: item.id,
    kind: "ground-gear",
    place: item.name,
    title: `${isFitted ? "Fit it" : "Take it off"}${count}`,
    shouldBe: isFitted ? "Fitted" : "Off, and stowed",
    tanks: [],
    stowedIn: isFitted ? [] : item.stowedIn,
    asksPhoto: false,
  };
}
