import type { Ask, RuleQuestion, Said } from "@witnessmark/assess";
import { toSI, type UnitId } from "@witnessmark/engine";
import { type FieldSpec, placeOf, readField } from "../calculators/calculate.ts";

export type NamedAsk = RuleQuestion["asks"][number];
type NamedFigure = Extract<Ask, { readonly kind: "figure" }> & { readonly name: string };

/** A figure that a rule asks for, as a field of a calculator. */
export const specOf = ({ name, words, unit, range }: NamedFigure): FieldSpec => ({
  name,
  meaning: words,
  unit,
  range,
});

export interface ReadAnswers {
  readonly said: Said;
  /** What is wrong with a figure, by `placeOf` its field; it is then not known. */
  readonly faults: ReadonlyMap<string, string>;
}

/**
 * What stands in the fields, as a rule takes it. An empty field is not known.
 *
 * @param textOf what stands in the field of an ask: `yes`, `no`, the value of an option, a day, a figure as typed
 */
export function readAnswers(
  { asks }: RuleQuestion,
  textOf: (name: string) => string,
  unitOf: (ask: NamedFigure) => UnitId,
): ReadAnswers {
  const said: Record<string, boolean | number | string> = {};
  const faults = new Map<string, string>();
  for (const ask of asks) {
    const text = textOf(ask.name).trim();
    if (text === "") continue;
    switch (ask.kind) {
      case "yes-no":
        said[ask.name] = text === "yes";
        break;
      case "choice":
      case "date":
        said[ask.name] = text;
        break;
      case "figure": {
        const read = readField(specOf(ask), text, unitOf(ask));
        if ("fault" in read) faults.set(placeOf(ask.name), read.fault);
        // a conversion may put the end of a range a hair beyond it
        else said[ask.name] = Math.min(Math.max(toSI(read.value, read.unit), ask.range[0]), ask.range[1]);
        break;
      }
      default:
        return ask satisfies never;
    }
  }
  return { said, faults };
}
