import { InputError } from "../input-error.ts";
import { checkDefinition, checkReads } from "./check-definition.ts";
import { checkInputs } from "./check-inputs.ts";
import type {
  InputSpecs,
  InputsOf,
  InputValue,
  OutputSpec,
  Quantity,
  QuantityDefinition,
} from "./quantity.ts";

/**
 * Makes a quantity of its definition. A unit that the name does not end in, a unit that is not SI, a missing source or
 * an input that `compute` reads and the definition does not list: none of them compiles, and none of them loads.
 *
 * @throws {DefinitionError} when the program loads
 */
export function defineQuantity<const Inputs extends InputSpecs, const Output extends OutputSpec>(
  definition: QuantityDefinition<Inputs, Output>,
): Quantity<Inputs, Output> {
  const { id, inputs, output } = definition;
  checkDefinition(definition);
  // Types tell the names that compute reads; from here on they are looked at as they are.
  const compute = definition.compute as unknown as (given: Readonly<Record<string, InputValue>>) => number;
  checkReads(id, inputs, compute);
  return Object.freeze({
    ...definition,
    compute(given: InputsOf<Inputs>): number {
      const value = compute(checkInputs(id, inputs, given));
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
