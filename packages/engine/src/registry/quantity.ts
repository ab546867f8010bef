import type { SiUnit } from "../units/units.ts";

/**
 * One input: its name ends in its unit, which is the SI unit of its dimension. `range` is what `compute` takes, both
 * ends included. With `many` it is a list of at least one value, each of them within `range`.
 */
export type InputSpec = {
  readonly [Unit in SiUnit]: {
    readonly name: `${string}_${Unit}`;
    readonly unit: Unit;
    readonly range: readonly [low: number, high: number];
    readonly meaning: string;
    readonly many?: true;
  };
}[SiUnit];

/** What is given for an input: one number, or a list where the input is `many`. */
export type InputValue = number | readonly number[];

/** What comes out; named and unit-bound as an input is. */
export type OutputSpec = {
  readonly [Unit in SiUnit]: { readonly name: `${string}_${Unit}`; readonly unit: Unit };
}[SiUnit];

/** Where a formula or a constant comes from. */
export interface QuantitySource {
  readonly title: string;
  readonly edition?: string;
  readonly locator?: string;
  readonly url?: string;
  readonly status: "published" | "common practice" | "from memory";
  readonly note?: string;
}

export type InputSpecs = readonly [InputSpec, ...InputSpec[]];

/** The object that `compute` takes, by the inputs' names: a list for each input that is `many`, else one number. */
export type InputsOf<Specs extends readonly InputSpec[]> = {
  readonly [Spec in Specs[number] as Spec["name"]]: Spec extends { readonly many: true }
    ? readonly number[]
    : number;
};

interface QuantityFacts<Inputs extends readonly InputSpec[], Output extends OutputSpec> {
  /** Kebab-case; on the command line, in reference cases and in verdicts. */
  readonly id: string;
  readonly title: string;
  readonly inputs: Inputs;
  readonly output: Output;
  /** As a person reads it. */
  readonly formula: string;
  readonly sources: readonly [QuantitySource, ...QuantitySource[]];
  /** A rule of thumb or another author's form: shown beside an answer, never the answer. */
  readonly crossCheckOnly?: true;
  /** What a user of the number should know: what it leaves out, how far it may be out. */
  readonly notes?: readonly string[];
}

export interface QuantityDefinition<Inputs extends InputSpecs, Output extends OutputSpec>
  extends QuantityFacts<Inputs, Output> {
  readonly compute: (inputs: InputsOf<Inputs>) => number;
}

export interface Quantity<Inputs extends InputSpecs, Output extends OutputSpec>
  extends QuantityFacts<Inputs, Output> {
  /**
   * @param inputs one number, or a list of at least one, for each input, in SI units
   * @returns the output in its SI unit, always finite
   * @throws {InputError} `missing`, `unknown-input`, `not-a-number`, `out-of-range`; names quantity, input, value, range
   */
  compute(inputs: InputsOf<Inputs>): number;
}

/** A quantity of which only the registry's facts are known; its `compute` checks names as well as values. */
export interface AnyQuantity extends QuantityFacts<readonly InputSpec[], OutputSpec> {
  compute(inputs: Readonly<Record<string, InputValue>>): number;
}
