import type { Counter } from "@witnessmark/book";
import type { CounterReading } from "@witnessmark/ledger";
import { figure, readFigure } from "../../words/figures.ts";

/** What was typed for one counter: a figure, nothing, a figure that runs backwards, or what is wrong with it. */
export type CounterSaid =
  | { readonly kind: "nothing" }
  | { readonly kind: "shows"; readonly value: number }
  | { readonly kind: "backwards"; readonly value: number; readonly before: number }
  | { readonly kind: "fault"; readonly words: string };

/** Ten times as much as the last time is a slip of a finger, not a flight. */
const LEAP = 10;

export const counterText = (value: number, { unit }: Counter): string =>
  unit === "h" ? `${figure(value, 1)} h` : figure(value);

/** Reads what a counter shows, against what it showed last. A meter that shows less may have been replaced. */
export function readCounter(text: string, counter: Counter, last: CounterReading | undefined): CounterSaid {
  if (text.trim() === "") return { kind: "nothing" };
  const typed = readFigure(text, counterText(last?.shown ?? 100, counter));
  if (!typed.ok) return { kind: "fault", words: `${counter.name}: ${typed.why}` };
  if (typed.unit !== undefined && typed.unit !== counter.unit)
    return { kind: "fault", words: `${counter.name} counts ${counter.unit === "h" ? "hours" : "times"}` };
  const { value } = typed;
  if (value < 0) return { kind: "fault", words: `${counter.name} cannot show less than 0` };
  if (counter.unit === "1" && !Number.isInteger(value))
    return { kind: "fault", words: `${counter.name} counts whole ones` };
  if (last === undefined) return { kind: "shows", value };
  if (value < last.shown) return { kind: "backwards", value, before: last.shown };
  if (last.shown > 0 && value > last.shown * LEAP)
    return {
      kind: "fault",
      words: `${counter.name} showed ${counterText(last.shown, counter)} the last time; look at the decimal mark`,
    };
  return { kind: "shows", value };
}
