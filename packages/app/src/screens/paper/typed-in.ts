import { checkReading } from "@witnessmark/assess";
import type { Book, WalkKind } from "@witnessmark/book";
import type { UnitId } from "@witnessmark/engine";
import { type Answer, type CouldNotReason, newId, type Read } from "@witnessmark/ledger";
import { type Step, stepsOf, type WalkPlan } from "@witnessmark/planner";
import type { Draft } from "../../keep/contract.ts";
import { answered } from "../../walk/answered.ts";
import { discrepancyWords } from "../../walk/fault-entry.ts";
import { stepName } from "../../walk/walk-view.ts";
import { isoWithOffset, momentOfField } from "../../words/dates.ts";
import { understandFigure } from "../walk/understand-figure.ts";

/** What the paper says of one step, as it is typed; a step that is not in it stays open. */
export interface TypedStep {
  readonly answer?: Answer;
  /** What is not right, in words. */
  readonly words?: string;
  /** One of the book's own faults of this check. */
  readonly fault?: string;
  readonly reason?: CouldNotReason;
  /** The figure on its line, as typed. */
  readonly figure?: string;
  /** Of ground gear: where it was stowed. */
  readonly stowedIn?: string;
}

/** A walk on paper while it is being typed in. */
export interface TypedWalk {
  readonly kind: WalkKind;
  /** As a `datetime-local` field has it, local time. */
  readonly begun: string;
  readonly ended: string;
  /** Of what stood outside, as typed; for the figures whose limit moves with it. */
  readonly temperature: string;
  readonly steps: Readonly<Record<string, TypedStep>>;
}

/** One thing that must be mended before it can be kept. */
export interface TypedFault {
  /** A step's id, or the field it is about. */
  readonly at: string;
  readonly says: string;
}

export type TypedResult =
  | { readonly ok: true; readonly drafts: readonly Draft[]; readonly answered: number }
  | { readonly ok: false; readonly faults: readonly TypedFault[] };

/** A walk takes less; a longer one is a slip in the date. */
const LONGEST_MS = 12 * 3_600_000;
/** Paper older than this tells nothing of how the aircraft stands. */
const OLDEST_MS = 7 * 24 * 3_600_000;

/**
 * What is kept of a walk that was made on paper: all of it, or nothing and what must be mended. It is dated by its
 * paper, so that no look counts for longer than it may.
 *
 * @param temperatureUnit in which the temperature is typed when it names none
 */
export function typedIn(
  typed: TypedWalk,
  book: Book,
  plan: WalkPlan,
  { now_ms, temperatureUnit }: { readonly now_ms: number; readonly temperatureUnit: UnitId },
): TypedResult {
  const walk = newId();
  const { begun_ms, ended_ms, faults: timeFaults } = timesOf(typed, now_ms);
  const temperature = temperatureOf(typed.temperature, temperatureUnit);
  const faults: TypedFault[] = [
    ...timeFaults,
    ...(temperature.fault === undefined ? [] : [temperature.fault]),
  ];
  const said: Draft[] = [];
  let count = 0;
  for (const step of stepsOf(plan)) {
    const given = typed.steps[step.id];
    if (given === undefined) continue;
    const result =
      step.kind === "check"
        ? ofCheck(step, given, { walk, book, temperature: temperature.read })
        : ofGear(step, given, { walk, kind: typed.kind });
    if ("fault" in result) faults.push({ at: step.id, says: result.fault });
    else if (result.drafts.length > 0) {
      said.push(...result.drafts);
      count += 1;
    }
  }
  if (faults.length === 0 && count === 0) {
    faults.push({ at: "steps", says: "Nothing is answered yet: tap what the paper says." });
  }
  if (faults.length > 0 || begun_ms === null || ended_ms === null) return { ok: false, faults };
  const started: Draft = {
    type: "walk.started",
    body: {
      walk,
      kind: typed.kind,
      bookSha256: book.sha256,
      onPaper: { begun: isoWithOffset(begun_ms), ended: isoWithOffset(ended_ms) },
    },
  };
  return { ok: true, drafts: [started, ...said, { type: "walk.finished", body: { walk } }], answered: count };
}

function timesOf({ begun, ended }: TypedWalk, now_ms: number) {
  const begun_ms = momentOfField(begun);
  const ended_ms = momentOfField(ended);
  const faults: TypedFault[] = [];
  const fault = (at: string, says: string) => void faults.push({ at, says });
  if (begun_ms === null) fault("begun", "Say when the walk was begun: its looks count from then.");
  else if (begun_ms > now_ms) fault("begun", "It was begun in the future: look at the day and the time.");
  else if (begun_ms < now_ms - OLDEST_MS) {
    fault("begun", "That is more than a week ago: such a walk says nothing of how the aircraft stands now.");
  }
  if (ended_ms === null) fault("ended", "Say when the walk was ended.");
  else if (ended_ms > now_ms) fault("ended", "It ended in the future: look at the day and the time.");
  else if (begun_ms !== null && ended_ms < begun_ms) fault("ended", "It ended before it was begun.");
  else if (begun_ms !== null && ended_ms - begun_ms > LONGEST_MS) {
    fault("ended", "That is longer than twelve hours: look at the day of each.");
  }
  return { begun_ms, ended_ms, faults };
}

function temperatureOf(text: string, unit: UnitId): { readonly read?: Read; readonly fault?: TypedFault } {
  if (text.trim() === "") return {};
  const understood = understandFigure(text, unit, "8");
  return understood.ok
    ? { read: understood.read }
    : { fault: { at: "temperature", says: understood.message } };
}

type Said = { readonly drafts: readonly Draft[] } | { readonly fault: string };
type CheckStep = Extract<Step, { readonly kind: "check" }>;
type GearStep = Extract<Step, { readonly kind: "ground-gear" }>;

interface CheckGiven {
  readonly walk: string;
  readonly book: Book;
  readonly temperature: Read | undefined;
}

function ofCheck(step: CheckStep, given: TypedStep, { walk, book, temperature }: CheckGiven): Said {
  const { check } = step;
  const reading = readingOf(step, given.figure ?? "", { walk, book, temperature });
  if ("fault" in reading) return reading;
  if (given.answer === undefined) {
    return reading.drafts.length === 0
      ? reading
      : { fault: "There is a figure and no answer: tap what the paper says of it." };
  }
  switch (given.answer) {
    case "as-it-should-be":
      return check.reading !== undefined && reading.drafts.length === 0
        ? { fault: "The figure is missing. Without one it could not be checked." }
        : { drafts: [...reading.drafts, answered(walk, check.id, given.answer)] };
    case "could-not-check":
      return given.reason === undefined
        ? { fault: "Say why it could not be checked." }
        : {
            drafts: [
              ...reading.drafts,
              {
                type: "check.answered",
                body: { walk, check: check.id, answer: given.answer, reason: given.reason },
              },
            ],
          };
    case "not-right": {
      const fault = check.faults.find(({ id }) => id === given.fault);
      const words = discrepancyWords(stepName(step, book.points), fault, given.words ?? "");
      if (words === "") return { fault: "Say what is not right: choose it, or write it." };
      return {
        drafts: [
          ...reading.drafts,
          answered(walk, check.id, given.answer),
          {
            type: "discrepancy.raised",
            body: {
              discrepancy: newId(),
              words,
              walk,
              check: check.id,
              point: check.point,
              ...(fault === undefined ? {} : { fault: fault.id }),
              ...(check.jasc === undefined ? {} : { jasc: check.jasc }),
            },
          },
        ],
      };
    }
    default:
      return given.answer satisfies never;
  }
}

function readingOf({ check }: CheckStep, figure: string, { walk, book, temperature }: CheckGiven): Said {
  const { reading } = check;
  const gauge = reading === undefined ? undefined : book.gauges.get(reading.gauge);
  if (reading === undefined || gauge === undefined || figure.trim() === "") return { drafts: [] };
  const read = checkReading(check, book, figure, gauge.unit);
  if (!read.ok) return { fault: read.message };
  const moves = reading.limit.by !== "fixed";
  if (moves && temperature === undefined) {
    return { fault: "Its limit moves with temperature: give the temperature at the top." };
  }
  return {
    drafts: [
      {
        type: "reading.recorded",
        body: {
          walk,
          check: check.id,
          gauge: reading.gauge,
          read: read.read,
          ...(moves && temperature !== undefined ? { temperature } : {}),
        },
      },
    ],
  };
}

/** Ground gear is answered by one box: off, or fitted after a flight. Anything else on its line stays open. */
function ofGear(
  { item }: GearStep,
  given: TypedStep,
  { walk, kind }: { readonly walk: string; readonly kind: WalkKind },
): Said {
  if (given.answer !== "as-it-should-be") return { drafts: [] };
  const body = { item: item.id, count: item.count, walk };
  if (kind === "after-flight") return { drafts: [{ type: "groundGear.fitted", body }] };
  const { stowedIn } = given;
  return stowedIn === undefined
    ? { fault: "Say where it was stowed." }
    : { drafts: [{ type: "groundGear.removed", body: { ...body, stowedIn } }] };
}
