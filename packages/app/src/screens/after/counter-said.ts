import type { Counter } from "@witnessmark/book";
import type { CounterReading } from "@witnessmark/ledger";
import { figure, readFigure } from "../../words/figures.ts";

/** What was typed for one counter: a figure, nothing, one that its meter cannot have come to, or what is wrong with it. */
export type CounterSaid =
  | { readonly kind: "nothing" }
  | { readonly kind: "shows"; readonly value: number }
  /** Unless the meter was replaced: less than before, or more than there were hours since. */
  | { readonly kind: "cannot-be"; readonly value: number; readonly before: number; readonly why: string }
  | { readonly kind: "fault"; readonly words: string };

const HOUR_MS = 3_600_000;
/** A meter is read a little early or late, and counts in tenths. */
const SLACK_h = 1;

export const counterText = (value: number, { unit }: Counter): string =>
  unit === "h" ? `${figure(value, 1)} h` : figure(value);

/** Reads what a counter shows, against what it showed last: an hour meter counts no more than an hour an hour. */
export function readCounter(
  text: string,
  counter: Counter,
  last: Pick<CounterReading, "shown" | "at_ms"> | undefined,
  now_ms: number,
): CounterSaid {
  if (text.trim() === "") return { kind: "nothing" };
  const typed = readFigure(text, counterText(last?.shown ?? 100, counter));
  if (!typed.ok) return { kind: "fault", words: `${counter.name}: ${typed.why.replace(/\.$/, "")}` };
  if (typed.unit !== undefined && typed.unit !== counter.unit)
    return { kind: "fault", words: `${counter.name} counts ${counter.unit === "h" ? "hours" : "times"}` };
  const { value } = typed;
  if (value < 0) return { kind: "fault", words: `${counter.name} cannot show less than 0` };
  if (counter.unit === "1" && !Number.isInteger(value))
    return { kind: "fault", words: `${counter.name} counts whole ones` };
  if (last === undefined) return { kind: "shows", value };
  const cannotBe = { kind: "cannot-be", value, before: last.shown } as const;
  if (value < last.shown) return { ...cannotBe, why: "would run backwards" };
  const since_h = Math.max(0, now_ms - last.at_ms) / HOUR_MS;
  if (counter.unit === "h" && value - last.shown > since_h + SLACK_h)
    return { ...cannotBe, why: "would have run more hours than there were since" };
  return { kind: "shows", value };
}
