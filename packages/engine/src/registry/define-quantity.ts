import { InputError } from "../input-error.ts";
import { checkDefinition, checkReads } from "./check-definition.ts";
import { checkInputs } from "./check-inputs.ts";
import type { InputSpecs, InputsOf, OutputSpec, Quantity, QuantityDefinition } from "./quantity.ts";

/**
 * Makes a quantity of its definition. A unit that the name does not end in, a unit that is not SI, a missing source or
 * an input that `compute` reads and the definition does not list: none of them compiles, and none of them loads.
 *
 * @throws {DefinitionError} when the program loads
 */
export function defineQuantity<const Inputs extends InputSpecs, const Output extends OutputSpec>(
  definition: QuantityDefinition<Inputs, Output>,
): Quantity<Inputs, Output> {
  const { id, inputs, output, compute } = definition;
  checkDefinition(definition);
  // A formula is told apart from its inputs' types only here, where a watched object stands in for them.
  checkReads(id, inputs, compute as unknown as (watched: Readonly<Record<string, number>>) => number);
  return Object.freeze({
    ...definition,
    compute(given: InputsOf<Inputs>): number {
      checkInputs(id, inputs, given);
      const value = compute(given);
      if (!Number.isFinite(value)) {
        throw new InputError("not-a-number", output.name, {
          quantity: id,
          expected: "a finite result",
          received: String(value),
          remedy: "check the inputs; together they lead nowhere",
        });
      }
      return value;
    },
  });
}
