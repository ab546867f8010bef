import {
  type AnyQuantity,
  InputError,
  type InputValue,
  quantities,
  quantityOf,
  stemOf,
  UNITS,
  work,
} from "@witnessmark/engine";
import type { Command, Given } from "../arguments.ts";
import { EXIT } from "../exit-code.ts";
import { Refused } from "../refused.ts";

/** A number, where there is one; a comma is taken for a decimal point. */
const numberOf = (text: string): number =>
  text.trim() === "" ? Number.NaN : Number(text.replace(",", ".").replace("−", "-"));

/**
 * `elevation_ft=5883` as a name and a number. Where the quantity takes a list, `mass_lb=340,350` as a name and the
 * numbers between the commas; with semicolons between them, `mass_kg=82,5;90`, a comma is a decimal point.
 */
function readInput(quantity: AnyQuantity, word: string): readonly [string, InputValue] {
  const at = word.indexOf("=");
  const name = word.slice(0, Math.max(at, 0));
  const text = word.slice(at + 1);
  const many = quantity.inputs.some((spec) => spec.many && stemOf(spec.name) === stemOf(name));
  const values = (many ? text.split(text.includes(";") ? ";" : ",") : [text]).map(numberOf);
  const [first] = values;
  if (name === "" || first === undefined || !values.every(Number.isFinite)) {
    const such = many
      ? "a name and numbers, such as mass_lb=340,350"
      : "a name and a number, such as elevation_ft=5883";
    throw new Refused("usage", `Expected ${such}; found "${word}".`);
  }
  return [name, many ? values : first];
}

function listAll({ io, options }: Given): number {
  const all = [...quantities.values()];
  if (options["json"] === true) {
    io.out(
      JSON.stringify(
        all.map(({ compute: _, ...quantity }) => quantity),
        null,
        2,
      ),
    );
    return EXIT.done;
  }
  for (const quantity of all) {
    io.out(`${quantity.id}`);
    io.out(
      `  ${quantity.title}: ${quantity.inputs.map((input) => (input.many ? `${input.name} (a list)` : input.name)).join(", ")} -> ${quantity.output.name}`,
    );
  }
  return EXIT.done;
}

export const workCommand: Command = {
  words: ["work"],
  usage: "work <quantity> <name_unit=number[,number …]> … | work --list",
  about: "Works out one quantity of the registry, with its working and its sources.",
  options: { list: { type: "boolean" } },
  async run(given) {
    const [id, ...words] = given.words;
    if (given.options["list"] === true) return listAll(given);
    if (id === undefined)
      throw new Refused("usage", "Which quantity? witnessmark work --list names them all.");
    const worked = (() => {
      try {
        const quantity = quantityOf(id);
        return work(id, Object.fromEntries(words.map((word) => readInput(quantity, word))));
      } catch (error) {
        if (error instanceof InputError) throw new Refused("usage", `${error.message}.`);
        throw error;
      }
    })();
    const { quantity } = worked;
    if (given.options["json"] === true) {
      const { compute: _, ...about } = quantity;
      given.io.out(
        JSON.stringify(
          { quantity: about, inputs: worked.inputs, output: { [quantity.output.name]: worked.outputSI } },
          null,
          2,
        ),
      );
      return EXIT.done;
    }
    given.io.out(quantity.title);
    for (const { label, value } of worked.lines) given.io.out(`  ${label}: ${value}`);
    for (const source of quantity.sources) given.io.out(`  Source: ${sourceText(source)}`);
    given.io.out(
      `  SI: ${quantity.output.name} = ${worked.outputSI} ${UNITS[quantity.output.unit].symbol}`.trimEnd(),
    );
    return EXIT.done;
  },
};

const sourceText = (source: unknown): string =>
  typeof source === "string"
    ? source
    : Object.values(source as Record<string, unknown>)
        .filter((part) => typeof part === "string")
        .join(", "); // a record of short texts
