import { RULE_SUBJECTS, type RuleQuestion, rulePacks, ruleQuestions, type Said } from "@witnessmark/assess";
import { fromSI, isLocalDate, stemOf, toSI, UNITS, type UnitId } from "@witnessmark/engine";
import type { Command, Given } from "../arguments.ts";
import { EXIT } from "../exit-code.ts";
import { Refused } from "../refused.ts";

type NamedAsk = RuleQuestion["asks"][number];

const HOLDS = { true: "yes", false: "no", unknown: "not known" } as const;

/** As much as a conversion may put a value beyond the end of a range. */
const ROUNDING = 1e-12;

/** Rounded for reading: a range in another unit than its own has no end of figures. */
const tidy = (value: number): string => `${Math.round(value * 100) / 100}`;

/** What an ask takes, in words. */
function takes(ask: NamedAsk): string {
  switch (ask.kind) {
    case "yes-no":
      return "yes or no";
    case "choice":
      return `one of ${ask.options.map(({ value }) => value).join(", ")}`;
    case "date":
      return "a day, as 2026-11-12";
    case "figure": {
      const [low = 0, high = 0] = ask.range.map((end) => fromSI(end, ask.askedIn));
      return `a number from ${tidy(low)} to ${tidy(high)}${ask.askedIn === "1" ? "" : ` ${UNITS[ask.askedIn].symbol}`}`;
    }
    default:
      return ask satisfies never;
  }
}

/** The name under which a figure may be given: its stem with the unit that it is asked in, or with any of its kind. */
const nameOf = (ask: NamedAsk): string =>
  ask.kind === "figure" && ask.askedIn !== ask.unit ? `${stemOf(ask.name)}_${ask.askedIn}` : ask.name;

function readFigure(ask: Extract<NamedAsk, { kind: "figure" }>, name: string, text: string): number {
  const value = text.trim() === "" ? Number.NaN : Number(text.replace(",", ".").replace("−", "-"));
  const unit = unitOf(name, ask);
  const [low, high] = ask.range;
  const inSI = unit !== undefined && Number.isFinite(value) ? toSI(value, unit) : undefined;
  if (inSI === undefined || inSI < low * (1 - ROUNDING) || inSI > high * (1 + ROUNDING))
    throw new Refused("usage", `${name}: expected ${takes(ask)}, found "${text}".`);
  return Math.min(Math.max(inSI, low), high);
}

function unitOf(name: string, ask: Extract<NamedAsk, { kind: "figure" }>): UnitId | undefined {
  if (name === ask.name) return ask.unit;
  const id = name.slice(stemOf(ask.name).length + 1);
  const unit = Object.keys(UNITS).find((each) => each === id) as UnitId | undefined; // a key of UNITS is a unit's id
  return unit !== undefined && UNITS[unit].dimension === UNITS[ask.unit].dimension ? unit : undefined;
}

function readWord(question: RuleQuestion, word: string): readonly [string, boolean | number | string] {
  const at = word.indexOf("=");
  const [name, text] = [word.slice(0, Math.max(at, 0)), word.slice(at + 1)];
  const ask = question.asks.find(
    (each) =>
      each.name === name || (each.kind === "figure" && name !== "" && stemOf(each.name) === stemOf(name)),
  );
  if (ask === undefined) {
    const names = question.asks.map(nameOf).join(", ");
    throw new Refused("usage", `Expected name=answer with one of ${names}; found "${word}".`);
  }
  const refuse = (): never => {
    throw new Refused("usage", `${name}: expected ${takes(ask)}, found "${text}".`);
  };
  switch (ask.kind) {
    case "yes-no":
      return [ask.name, text === "yes" ? true : text === "no" ? false : refuse()];
    case "choice":
      return [ask.name, ask.options.some(({ value }) => value === text) ? text : refuse()];
    case "date":
      return [ask.name, isLocalDate(text) ? text : refuse()];
    case "figure":
      return [ask.name, readFigure(ask, name, text)];
    default:
      return ask satisfies never;
  }
}

function listAll({ io, options }: Given): number {
  const all = [...ruleQuestions.values()];
  if (options["json"] === true) {
    io.out(
      JSON.stringify(
        all.map(({ answer: _, ...question }) => question),
        null,
        2,
      ),
    );
    return EXIT.done;
  }
  for (const subject of RULE_SUBJECTS) {
    io.out(subject);
    for (const { id, title, pack } of all.filter((each) => each.subject === subject))
      io.out(`  ${id}: ${title} (${rulePacks.get(pack)?.title ?? pack})`);
  }
  return EXIT.done;
}

export const rulesCommand: Command = {
  words: ["rules"],
  usage: "rules <question> [name=answer …] | rules --list",
  about:
    "Asks what a rule of the air says: with no answers it names what it wants to know, and every step of what it says.",
  options: { list: { type: "boolean" } },
  async run(given) {
    const { io, options } = given;
    const [id, ...words] = given.words;
    if (options["list"] === true) return listAll(given);
    if (id === undefined)
      throw new Refused("usage", "Which question? witnessmark rules --list names them all.");
    const question = ruleQuestions.get(id);
    if (question === undefined)
      throw new Refused("usage", `There is no question "${id}". witnessmark rules --list names them all.`);
    const said: Said = Object.fromEntries(words.map((word) => readWord(question, word)));
    const { steps, holds, says, citations } = question.answer(said);
    const exit = holds === true ? EXIT.done : holds === false ? EXIT.stop : EXIT.open;
    if (options["json"] === true) {
      const { answer: _, ...about } = question;
      io.out(JSON.stringify({ question: about, said, answer: { steps, holds, says, citations } }, null, 2));
      return exit;
    }
    io.out(question.title);
    io.out(
      `  ${rulePacks.get(question.pack)?.title ?? question.pack}${question.about === undefined ? "" : `. ${question.about}`}`,
    );
    io.out(`  ${says}`);
    for (const step of steps) io.out(`  ${HOLDS[`${step.holds}`].padEnd(10)}${step.rule}: ${step.words}`);
    const open = question.asks.filter(({ name }) => said[name] === undefined);
    if (open.length > 0) io.out("  It wants to know, beside what was said:");
    for (const ask of open) io.out(`    ${nameOf(ask)}: ${ask.words} (${takes(ask)})`);
    for (const { title, locator, edition, status, note } of citations)
      io.out(
        `  Source: ${[title, locator, edition, status, note].filter((part) => part !== undefined && part !== "").join(", ")}`,
      );
    io.out("  The rule's own text and the authority come first: it may have been changed since.");
    return exit;
  },
};
