import type { GroundGearItem } from "@witnessmark/book";
import { compareOrder, type GearState, type Origin } from "@witnessmark/ledger";
import type { Verdict, WorkingLine } from "../assessment.ts";
import { bookSource, NOWHERE } from "../book-index.ts";
import type { Context } from "../context.ts";
import type { Cause, Finding } from "../finding.ts";
import { recorded_ms } from "../walk/moments.ts";
import { firstAfter, happeningCause } from "../walk/staleness.ts";
import { inside } from "../words/count-words.ts";
import { momentText, whenText } from "../words/local-time.ts";

/** What the record says of one item in the walk in hand. */
interface Counted {
  readonly gear: GearState | undefined;
  /** Taken off in this walk and not fitted since. */
  readonly off: GearState["removals"];
  readonly offCount: number;
  /** Pieces that were said to be fitted and not said to be off since. */
  readonly fitted: number;
  /** Whether the last word on it is that it was fitted. */
  readonly lastFitted: boolean;
}

const isOfWalk = (origin: Origin & { readonly walk?: string }, { walk }: Context): boolean =>
  walk !== null && (origin.walk === walk.id || (origin.walk === undefined && compareOrder(origin, walk) > 0));

function countedOf(item: string, context: Context): Counted {
  const gear = context.state.groundGear.get(item);
  const off = gear?.removals.filter((removal) => isOfWalk(removal, context)) ?? [];
  return {
    gear,
    off,
    offCount: off.reduce((sum, { count }) => sum + count, 0),
    fitted: gear?.fitted ?? 0,
    lastFitted: gear !== undefined && gear.removals.at(-1)?.event !== gear.last.event,
  };
}

/** Whether every piece is known to be off: counted in this walk, nothing fitted since, not left alone since. */
function isOff(item: GroundGearItem, counted: Counted, context: Context): boolean {
  if (counted.fitted > 0 || counted.offCount < item.count) return false;
  const { last } = counted.gear ?? {};
  return last !== undefined && firstAfter(context.happenings, ["unattended"], last) === undefined;
}

const piecesText = (count: number, of: number): string => `${count} of ${of}`;

function lines(item: GroundGearItem, { off }: Counted, context: Context): readonly WorkingLine[] {
  return [
    ...off.flatMap((removal) => [
      {
        label: "Taken off",
        value: `${piecesText(removal.count, item.count)}, ${momentText(recorded_ms(removal), context.clock)}`,
      },
      { label: "Stowed in", value: removal.stowedIn },
    ]),
    { label: "Why it must be off", value: item.why },
  ];
}

type Base = Omit<Extract<Verdict, { status: "clear" }>, "status" | "says">;

const baseOf = (item: GroundGearItem, counted: Counted, context: Context): Base => ({
  id: `gear:${item.id}`,
  topic: "ground-gear",
  title: item.name,
  working: { lines: lines(item, counted, context) },
  evidence:
    counted.gear === undefined
      ? []
      : [...new Set([...counted.off.map(({ event }) => event), counted.gear.last.event])],
  sources: [bookSource(context.book, `ground gear ${item.id}`)],
  subject: { kind: "ground-gear", id: item.id },
});

const finding = (verdict: Verdict, item: string, { index }: Context, cause?: Cause): Finding => ({
  verdict,
  severity: 0,
  place: index.placeOfGear.get(item) ?? NOWHERE,
  ...(cause === undefined ? {} : { cause }),
});

/** `8 of 9 off`, over all ground gear of the aircraft. */
interface Whole {
  readonly off: number;
  readonly pieces: number;
}

function openItem(item: GroundGearItem, counted: Counted, whole: Whole, context: Context): Finding {
  const { clock, index, happenings } = context;
  const where = index.stanceNames.get(index.stanceOfGear.get(item.id) ?? "");
  const at = where === undefined ? "" : `, ${inside(where)}`;
  const last = counted.gear?.last;
  const alone =
    last === undefined || counted.offCount < item.count || counted.fitted > 0
      ? undefined
      : firstAfter(happenings, ["unattended"], last);
  const says =
    alone !== undefined
      ? `${happeningCause(alone, clock).words}, after it was counted: count it again`
      : counted.offCount > 0 && counted.offCount < item.count
        ? `${piecesText(counted.offCount, item.count)} counted off${at}`
        : counted.offCount >= item.count
          ? `Counted off, but the record has ${counted.fitted} more still fitted: count again`
          : counted.lastFitted && last !== undefined
            ? `Fitted ${momentText(recorded_ms(last), clock)}, not counted off${at}`
            : `Not counted off${at}`;
  return finding(
    {
      ...baseOf(item, counted, context),
      status: "open",
      says,
      margin: { value: whole.off - whole.pieces, unit: "", text: `${whole.off} of ${whole.pieces} off` },
      missing: [`${item.count - Math.min(counted.offCount, item.count) || item.count} to count off`],
    },
    item.id,
    context,
    alone === undefined ? undefined : happeningCause(alone, clock),
  );
}

function stillFitted(base: Base, name: string, gear: GearState, context: Context): Finding {
  const at_ms = recorded_ms(gear.last);
  const when = momentText(at_ms, context.clock);
  return finding(
    {
      ...base,
      status: "stop",
      says: `Still fitted: put on ${when} and not taken off since`,
      margin: { value: -gear.fitted, unit: "", text: "still fitted" },
      because: ["It must be off before flight"],
      wayOut: ["Take it off and count it"],
    },
    base.subject?.id ?? "",
    context,
    {
      key: `gear:${gear.last.event}`,
      at_ms,
      words: `${name} fitted ${whenText(at_ms, context.clock)}`,
      reopens: false,
    },
  );
}

/** Before a flight every piece must be off. */
function toBeOff(item: GroundGearItem, counted: Counted, whole: Whole, context: Context): Finding {
  const { gear } = counted;
  const base = baseOf(item, counted, context);
  const inThisWalk = gear !== undefined && context.walk !== null && compareOrder(gear.last, context.walk) > 0;
  if (gear !== undefined && counted.fitted > 0 && counted.lastFitted && inThisWalk) {
    return stillFitted(base, item.name, gear, context);
  }
  if (gear === undefined || !isOff(item, counted, context)) return openItem(item, counted, whole, context);
  const where = [...new Set(counted.off.map(({ stowedIn }) => stowedIn))].join(", ");
  return finding(
    {
      ...base,
      status: "clear",
      says: `Off, ${momentText(recorded_ms(gear.last), context.clock)}, in ${inside(where)}`,
      margin: {
        value: 0,
        unit: "",
        text: item.count === 1 ? "off" : `${piecesText(item.count, item.count)} off`,
      },
      endsWith: ["fitted again", "left unattended"],
    },
    item.id,
    context,
  );
}

/** After a flight it is there to be fitted. */
function toBeFitted(item: GroundGearItem, counted: Counted, context: Context): Finding {
  const { gear } = counted;
  const { walk, clock } = context;
  const base: Base = {
    ...baseOf(item, counted, context),
    working: { lines: [{ label: "Why it must be off before flight", value: item.why }] },
  };
  const fitted = Math.min(counted.fitted, item.count);
  if (gear !== undefined && walk !== null && fitted === item.count && compareOrder(gear.last, walk) > 0) {
    return finding(
      {
        ...base,
        status: "clear",
        says: `Fitted, ${momentText(recorded_ms(gear.last), clock)}`,
        margin: {
          value: 0,
          unit: "",
          text: item.count === 1 ? "fitted" : `${piecesText(fitted, item.count)} fitted`,
        },
      },
      item.id,
      context,
    );
  }
  return finding(
    {
      ...base,
      status: "open",
      says: `${piecesText(fitted, item.count)} said to be fitted in this walk`,
      margin: { value: fitted - item.count, unit: "", text: "not fitted" },
      missing: [`${item.count - fitted || item.count} to fit`],
    },
    item.id,
    context,
  );
}

/** Fitted, says the record, and the book in force no longer names it. */
function notInBook(context: Context): readonly Finding[] {
  return [...context.state.groundGear]
    .filter(([id, gear]) => gear.fitted > 0 && !context.index.gear.has(id))
    .map(([id, gear]) =>
      stillFitted(
        {
          id: `gear:${id}`,
          topic: "ground-gear",
          title: id,
          working: { lines: [{ label: "In the book", value: "no longer" }] },
          evidence: [gear.last.event],
          sources: [bookSource(context.book, "ground gear")],
          subject: { kind: "ground-gear", id },
        },
        id,
        gear,
        context,
      ),
    );
}

/** One verdict for each item of ground gear: off before a flight, fitted after it. */
export function groundGearVerdicts(context: Context): readonly Finding[] {
  const items = context.book.groundGear.map((item) => ({ item, counted: countedOf(item.id, context) }));
  if (context.walk?.kind === "after-flight") {
    return items.map(({ item, counted }) => toBeFitted(item, counted, context));
  }
  const off = items.reduce((sum, { item, counted }) => {
    if (isOff(item, counted, context)) return sum + item.count;
    return counted.fitted > 0 ? sum : sum + Math.min(counted.offCount, item.count - 1);
  }, 0);
  const whole = { off, pieces: context.index.pieces };
  return [...items.map(({ item, counted }) => toBeOff(item, counted, whole, context)), ...notInBook(context)];
}
