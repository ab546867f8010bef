import { InputError, quantities, UNITS, work } from "@witnessmark/engine";
import type { Command, Given } from "../arguments.ts";
import { EXIT } from "../exit-code.ts";
import { Refused } from "../refused.ts";

/** `elevation_ft=5883` as a name and a number; a comma is taken for a decimal point. */
function readInput(word: string): readonly [string, number] {
  const at = word.indexOf("=");
  const value = Number(
    word
      .slice(at + 1)
      .replace(",", ".")
      .replace("−", "-"),
  );
  if (at < 1 || at === word.length - 1 || !Number.isFinite(value)) {
    throw new Refused("usage", `Expected a name and a number, such as elevation_ft=5883; found "${word}".`);
  }
  return [word.slice(0, at), value];
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
      `  ${quantity.title}: ${quantity.inputs.map((input) => input.name).join(", ")} -> ${quantity.output.name}`,
    );
  }
  return EXIT.done;
}

export const workCommand: Command = {
  words: ["work"],
  usage: "work <quantity> <name_unit=number> … | work --list",
  about: "Works out one quantity of the registry, with its working and its sources.",
  options: { list: { type: "boolean" } },
  async run(given) {
    const [id, ...words] = given.words;
    if (given.options["list"] === true) return listAll(given);
    if (id === undefined)
      throw new Refused("usage", "Which quantity? witnessmark work --list names them all.");
    const worked = (() => {
      try {
        return work(id, Object.fromEntries(words.map(readInput)));
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
