import { band } from "@witnessmark/assess";
import type { Book, Check } from "@witnessmark/book";
import { fromSI } from "@witnessmark/engine";
import { newId, type Read } from "@witnessmark/ledger";
import { planWalk, type Step, stepsOf } from "@witnessmark/planner";
import { roundTo } from "../instruments/scale.ts";
import type { Draft } from "../keep/contract.ts";
import type { OpenKeep } from "../keep/keep.ts";
import { isoWithOffset } from "../words/dates.ts";

/** A clock that a scenario sets forward itself. */
export interface ScenarioClock {
  at_ms: number;
}

/** What is told of one check instead of "as it should be" in the middle of its band. */
export interface Told {
  readonly answer?: "not-right" | "could-not-check";
  readonly read?: Read;
  readonly temperature?: Read;
  readonly drafts?: (walk: string) => readonly Draft[];
}

export interface WalkTold {
  readonly from_ms: number;
  readonly temperature: Read;
  /** Walks until this step comes to hand; all of them when absent. */
  readonly until?: string;
  readonly told: Readonly<Record<string, Told>>;
  readonly finish: boolean;
}

/** Walks a first walk of the day in the book's order, at a step every 11 seconds. */
export async function walkThrough(
  keep: OpenKeep,
  clock: ScenarioClock,
  registration: string,
  told: WalkTold,
): Promise<string> {
  const book = keep.snapshot().aircraft.get(registration)?.book;
  if (book === null || book === undefined) throw new Error(`scenario: ${registration} has no book`);
  const walk = newId();
  clock.at_ms = told.from_ms;
  await keep.append(registration, [
    { type: "walk.started", body: { walk, kind: "first-of-day", bookSha256: book.sha256 } },
  ]);
  for (const step of stepsOf(planWalk(book, "first-of-day"))) {
    if (step.id === told.until) break;
    clock.at_ms += 11_000;
    await keep.append(registration, draftsOf(walk, step, told, book));
  }
  if (told.finish) {
    clock.at_ms += 20_000;
    await keep.append(registration, [{ type: "walk.finished", body: { walk } }]);
  }
  return walk;
}

function draftsOf(walk: string, step: Step, told: WalkTold, book: Book): readonly Draft[] {
  if (step.kind === "ground-gear") {
    const { item } = step;
    return [
      {
        type: "groundGear.removed",
        body: { item: item.id, count: item.count, stowedIn: item.stowedIn[0] ?? "bag", walk },
      },
    ];
  }
  const of = told.told[step.id];
  const read = of?.read ?? middleOf(step.check, book, of?.temperature ?? told.temperature);
  const reading: readonly Draft[] =
    step.check.reading === undefined || read === undefined
      ? []
      : [
          {
            type: "reading.recorded",
            body: {
              walk,
              check: step.id,
              gauge: step.check.reading.gauge,
              read,
              ...(step.check.reading.limit.by === "fixed"
                ? {}
                : { temperature: of?.temperature ?? told.temperature }),
            },
          },
        ];
  const answer = of?.answer ?? "as-it-should-be";
  return [
    ...reading,
    {
      type: "check.answered",
      body: {
        walk,
        check: step.id,
        answer,
        ...(answer === "could-not-check" ? { reason: "too-hot" as const } : {}),
      },
    },
    ...(of?.drafts?.(walk) ?? []),
  ];
}

/** A value that is as it should be: the middle of the band at that temperature, to the step of its gauge. */
function middleOf(check: Check, book: Book, temperature: Read): Read | undefined {
  const { reading } = check;
  const gauge = reading === undefined ? undefined : book.gauges.get(reading.gauge);
  if (reading === undefined || gauge === undefined) return undefined;
  const [from, to] = reading.scale;
  const limits = band(check, book, temperature);
  const middleSI = ((limits?.low ?? from.valueSI) + (limits?.high ?? to.valueSI)) / 2;
  return { value: roundTo(fromSI(middleSI, gauge.unit), gauge.resolution.value), unit: gauge.unit };
}

export const fuelled = (at_ms: number): Draft => ({
  type: "happening.recorded",
  body: { happening: "fuelled", at: isoWithOffset(at_ms) },
});
