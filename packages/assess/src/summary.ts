import type { Status } from "@witnessmark/ledger";
import type { Assessment, VerdictTopic } from "./assessment.ts";
import type { Context } from "./context.ts";
import type { Finding } from "./finding.ts";
import { firstWalkHolds_ms, firstWalkOf, isOver, sinceFlight } from "./verdicts/walk-due.ts";
import { lastFlown } from "./walk/happenings.ts";
import { recorded_ms } from "./walk/moments.ts";
import { counted, inWords, listed, sentence } from "./words/count-words.ts";
import { momentText } from "./words/local-time.ts";

type Counts = Assessment["counts"];

export function countsOf(findings: readonly Finding[]): Counts {
  const counts: Record<Status, number> = { clear: 0, caution: 0, stop: 0, open: 0 };
  for (const { verdict } of findings) counts[verdict.status] += 1;
  return counts;
}

/** What a flight's numbers speak of. */
const OF_FLIGHT: ReadonlySet<VerdictTopic> = new Set([
  "load",
  "fuel",
  "oxygen",
  "runway",
  "wind",
  "weather",
  "light",
  "ice",
] satisfies VerdictTopic[]);

/** `45 checks open`, `45 checks and 7 items of ground gear open`, `45 checks and 2 things of the flight open` */
function openText(findings: readonly Finding[]): string {
  const open = findings.filter(({ verdict }) => verdict.status === "open");
  const checks = open.filter(({ verdict }) => verdict.topic === "check").length;
  const gear = open.filter(({ verdict }) => verdict.topic === "ground-gear").length;
  const flight = open.filter(({ verdict }) => OF_FLIGHT.has(verdict.topic)).length;
  const other = open.length - checks - gear - flight;
  const parts = [
    ...(checks > 0 ? [counted(checks, "check")] : []),
    ...(gear > 0 ? [counted(gear, "item of ground gear", "items of ground gear")] : []),
    ...(flight > 0 ? [counted(flight, "thing of the flight", "things of the flight")] : []),
    // what runs out, releases, the record: all that is open is counted, so that the headline and the list agree
    ...(other > 0 && other < open.length ? [counted(other, "other thing", "other things")] : []),
  ];
  return parts.length === 0 ? counted(open.length, "thing open", "things open") : `${listed(parts)} open`;
}

/** `One thing stops this flight` */
export function headlineOf(findings: readonly Finding[], counts: Counts): string {
  const { stop, caution, open } = counts;
  if (stop > 0) return `${sentence(inWords(stop))} ${stop === 1 ? "thing stops" : "things stop"} this flight`;
  const cautions = caution === 0 ? "" : `${inWords(caution)} ${caution === 1 ? "caution" : "cautions"}`;
  if (open > 0) return caution === 0 ? openText(findings) : `${openText(findings)}, ${cautions}`;
  return caution === 0 ? "Nothing in the way" : `Nothing stops this flight, ${cautions}`;
}

/** `Right boot is split, 28 mm over`, and how many more there are of its kind. */
function worstText(
  findings: readonly Finding[],
  status: "stop" | "caution",
  count: number,
): string | undefined {
  const verdict = findings.find((finding) => finding.verdict.status === status)?.verdict;
  if (verdict === undefined) return undefined;
  const margin = verdict.margin === undefined ? "" : `, ${verdict.margin.text}`;
  const more = count > 1 ? `, and ${inWords(count - 1)} more` : "";
  return `${verdict.title}${margin}${more}.`;
}

/** What is open, in the words that tell most: since when nobody looked, or what reopened it. */
function openLine(findings: readonly Finding[], { walk, state, clock, inWalk }: Context): string {
  if (walk === null) return `Not looked at yet. ${openText(findings)}.`;
  const flown = lastFlown(state.happenings);
  const lastLook_ms = [...inWalk.latest.values()].reduce(
    (last_ms, answer) => Math.max(last_ms, recorded_ms(answer)),
    recorded_ms(walk),
  );
  const isEnded = walk.finished !== undefined || walk.abandoned !== undefined;
  const flownSince = flown !== undefined && flown.at_ms > lastLook_ms;
  if (flownSince || (isEnded && walk.kind === "after-flight")) return `${sinceFlight(state, walk, clock)}.`;
  const causes = new Set(
    findings.flatMap(({ verdict, cause }) =>
      verdict.status === "open" ? [cause?.reopens ? cause : undefined] : [],
    ),
  );
  const words = new Set([...causes].map((cause) => cause?.words));
  const [only] = words;
  return words.size === 1 && only !== undefined
    ? `${only}. ${openText(findings)}.`
    : `${openText(findings)}.`;
}

/**
 * What stands between the aircraft and flight, in one line, and the mark beside it. On an aircraft that waits for its
 * next walk the covers are where they belong: that walk will count them off, and the line says that it is due.
 */
export function lineOf(
  all: readonly Finding[],
  holdsUntil: Assessment["holdsUntil"],
  context: Context,
): Pick<Assessment, "line" | "lineStatus"> {
  const findings = isOver(context) ? all.filter(({ verdict }) => verdict.topic !== "ground-gear") : all;
  const counts = countsOf(findings);
  return { line: lineText(findings, counts, holdsUntil, context), lineStatus: worstOf(counts) };
}

const worstOf = (counts: Counts): Status =>
  counts.stop > 0 ? "stop" : counts.caution > 0 ? "caution" : counts.open > 0 ? "open" : "clear";

function lineText(
  findings: readonly Finding[],
  counts: Counts,
  holdsUntil: Assessment["holdsUntil"],
  context: Context,
): string {
  const parts = [
    worstText(findings, "stop", counts.stop),
    counts.stop > 0 ? undefined : worstText(findings, "caution", counts.caution),
    counts.open > 0 ? openLine(findings, context) : undefined,
  ].filter((part) => part !== undefined);
  if (parts.length > 0) return parts.join(" ");
  return holdsUntil === undefined
    ? "Nothing in the way."
    : `Nothing in the way. Holds until ${momentText(holdsUntil.at_ms, context.clock)}.`;
}

/** The first moment at which something that counts runs out of age: a look, or the walk's day. */
export function holdsUntilOf(findings: readonly Finding[], context: Context): Assessment["holdsUntil"] {
  const { walk, state, clock } = context;
  let first: NonNullable<Assessment["holdsUntil"]> | undefined;
  const offer = (at_ms: number | undefined, because: () => string): void => {
    if (at_ms === undefined || at_ms < clock.now_ms) return;
    if (first === undefined || at_ms < first.at_ms) first = { at_ms, because: because() };
  };
  const firstWalk = walk === null || walk.kind === "after-flight" ? undefined : firstWalkOf(state, walk);
  if (firstWalk !== undefined) {
    offer(firstWalkHolds_ms(firstWalk, clock.now_ms), () => "the first walk of the day counts for its day");
  }
  for (const { verdict } of findings) {
    offer(
      verdict.holdsUntil_ms,
      () => verdict.holdsBecause ?? `the look at ${verdict.title} is then too old`,
    );
  }
  return first;
}
