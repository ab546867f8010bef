import type { Check } from "@witnessmark/book";
import type { CheckAnswer } from "@witnessmark/ledger";
import { NOWHERE } from "../book-index.ts";
import type { Context } from "../context.ts";
import type { Finding } from "../finding.ts";
import { recorded_ms } from "../walk/moments.ts";
import { counted, inside, listed } from "../words/count-words.ts";
import { durationText } from "../words/duration-text.ts";

/** Less than this share of the least time that the book gives is too fast to be believed. */
const TOO_FAST_1 = 0.5;

interface Paced {
  readonly check: Check;
  readonly answer: CheckAnswer;
}

interface TooFast {
  readonly where: string;
  readonly checks: number;
  readonly took_s: number;
  readonly least_s: number;
  readonly last: CheckAnswer;
}

/**
 * One device's answers against the least time of their checks. The first answer starts the clock, so its own check is
 * not counted: how long that one took is not known.
 */
function tooFast(where: string, paced: readonly Paced[]): TooFast | undefined {
  const inTime = paced
    .map((each) => ({ ...each, at_ms: recorded_ms(each.answer) }))
    .sort((a, b) => a.at_ms - b.at_ms);
  const [first, ...rest] = inTime;
  const last = rest.at(-1);
  if (first === undefined || last === undefined) return undefined;
  const took_s = (last.at_ms - first.at_ms) / 1000;
  const least_s = rest.reduce((sum_s, { check }) => sum_s + check.least.valueSI, 0);
  if (took_s >= least_s * TOO_FAST_1) return undefined;
  return { where, checks: inTime.length, took_s, least_s, last: last.answer };
}

function grouped(
  paced: readonly Paced[],
  key: (each: Paced) => string,
): ReadonlyMap<string, readonly Paced[]> {
  const groups = new Map<string, Paced[]>();
  for (const each of paced) {
    const name = key(each);
    const group = groups.get(name);
    if (group === undefined) groups.set(name, [each]);
    else group.push(each);
  }
  return groups;
}

/** The answers that count in the walk in hand, in the order of the walk; "could not check" takes no time. */
const pacedOf = ({ index, inWalk }: Context): readonly Paced[] =>
  [...inWalk.latest.values()].flatMap((answer) => {
    const check = index.checks.get(answer.check);
    return check === undefined || answer.answer === "could-not-check" ? [] : [{ check, answer }];
  });

/** Stops that were too fast, in the book's order; the walk as a whole only when no single stop was. */
function findTooFast(context: Context): readonly TooFast[] {
  const paced = pacedOf(context);
  const names = context.index.stanceNames;
  const ofStops = [...grouped(paced, ({ check, answer }) => `${check.stance} ${answer.device}`).values()]
    .sort((a, b) => place(a, context) - place(b, context))
    .flatMap((stop) => {
      const stance = stop[0]?.check.stance ?? "";
      return tooFast(names.get(stance) ?? stance, stop) ?? [];
    });
  if (ofStops.length > 0) return ofStops;
  return [...grouped(paced, ({ answer }) => answer.device).values()].flatMap(
    (walk) => tooFast("the whole walk", walk) ?? [],
  );
}

const place = (stop: readonly Paced[], { index }: Context): number =>
  index.placeOfCheck.get(stop[0]?.check.id ?? "") ?? NOWHERE;

/** A quiet question when looks were answered far faster than they can be made. */
export function paceVerdict(context: Context): readonly Finding[] {
  const { walk } = context;
  const [worst, ...others] = findTooFast(context);
  if (walk === null || worst === undefined) return [];
  const all = [worst, ...others];
  const stops = [...new Set(all.map(({ where }) => inside(where)))];
  const last = all.map((each) => each.last).sort((a, b) => recorded_ms(b) - recorded_ms(a))[0] ?? worst.last;
  return [
    {
      verdict: {
        id: "pace:walk",
        topic: "pace",
        status: "caution",
        title: "Pace of the walk",
        says: `Faster than one can look: ${listed(stops)}. Was everything looked at?`,
        margin: { value: 0, unit: "", text: counted(stops.length, "stance") },
        because: all.map(explained) as [string, ...string[]], // as many as there are in `all`, at least one
        working: {
          lines: all.map((each) => ({
            label: each.where,
            value: `${counted(each.checks, "check")} in ${durationText(each.took_s)}, at least ${durationText(each.least_s)}`,
          })),
        },
        evidence: all.map((each) => each.last.event),
        sources: [
          {
            title: "Witnessmark's own rule",
            locator: "half of the least time that the book gives; common practice",
          },
        ],
        subject: { kind: "walk", id: walk.id },
      },
      severity: 2,
      place: NOWHERE,
      cause: {
        key: `answer:${last.event}`,
        at_ms: recorded_ms(last),
        words: "Looks were answered faster than they can be made",
        reopens: false,
      },
    },
  ];
}

const explained = ({ where, checks, took_s, least_s }: TooFast): string =>
  `${where}: ${counted(checks, "check")} in ${durationText(took_s)}; they take at least ${durationText(least_s)}`;
