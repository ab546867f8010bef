import { band, limitWords } from "@witnessmark/assess";
import type { Book, Check, Fault } from "@witnessmark/book";
import { differenceFromSI, differenceToSI, fromSI, roundToSafeSide, withSymbol } from "@witnessmark/engine";
import type { Read } from "@witnessmark/ledger";
import { below, type Chance } from "@witnessmark/planner";
import { entryUnit, temperatureText } from "../../walk/reading-view.ts";
import { figure } from "../../words/figures.ts";

/** One of several things that may be wrong at a place. */
export interface Choice {
  readonly words: string;
  /** It is one of this check's own faults. */
  readonly isOwn: boolean;
}

/** One question about one check, made from its book. */
export type Card = { readonly check: Check; readonly place: string } & (
  | {
      /** What is looked for here? Its own faults among those of other checks. */
      readonly kind: "look-for";
      readonly choices: readonly Choice[];
    }
  | {
      /** The gauge shows this, or so large is the fault: right or not? */
      readonly kind: "judge";
      readonly found: string;
      readonly isRight: boolean;
      /** What the book says of it. */
      readonly because: string;
    }
);

/** How many things to choose from. */
const CHOICES = 5;
const OWN_MOST = 2;

/**
 * A card for a check: of its reading or of a size where it has one, else of its faults. `undefined` for a check of which
 * the book tells neither a fault nor a limit.
 */
export function cardOf(book: Book, check: Check, chance: Chance): Card | undefined {
  const place = book.points.get(check.point)?.name ?? check.point;
  const judged = readingCard(book, check, chance) ?? sizeCard(check, chance);
  const lookFor = lookForCard(book, check, chance);
  // where both can be asked, one is asked as often as the other
  const card = judged !== undefined && (lookFor === undefined || chance() < 0.5) ? judged : lookFor;
  return card === undefined ? undefined : { ...card, check, place };
}

type Asked = Card extends infer Each ? (Each extends Card ? Omit<Each, "check" | "place"> : never) : never;

function lookForCard(book: Book, check: Check, chance: Chance): Asked | undefined {
  if (check.faults.length === 0) return undefined;
  const own = some(check.faults, OWN_MOST, chance).map(({ name }) => ({ words: name, isOwn: true }));
  const known = new Set(check.faults.map(({ name }) => plainOf(name)));
  const strange = strangeFaults(book, check, known);
  const others = some(strange, CHOICES - own.length, chance).map((words) => ({ words, isOwn: false }));
  if (others.length < 2) return undefined;
  return { kind: "look-for", choices: some([...own, ...others], CHOICES, chance) };
}

/** Faults of other checks: of those done in the same way, where there are enough of them to choose from. */
function strangeFaults(book: Book, check: Check, known: ReadonlySet<string>): readonly string[] {
  const namesOf = (checks: readonly Check[]) => [
    ...new Set(
      checks
        .filter(({ id }) => id !== check.id)
        .flatMap(({ faults }) => faults.map(({ name }) => name))
        .filter((name) => !known.has(plainOf(name))),
    ),
  ];
  const alike = namesOf(book.checks.filter(({ method }) => method === check.method));
  return alike.length < CHOICES ? namesOf(book.checks) : alike;
}

const plainOf = (words: string): string => words.toLowerCase();

/** Days on which a gauge may be read. */
const DAYS: readonly Read[] = [-8, 2, 11, 19, 31].map((value) => ({ value, unit: "degC" }));

/** A figure on either side of the limit, by so much that this gauge tells it apart. */
function readingCard(book: Book, check: Check, chance: Chance): Asked | undefined {
  const { reading } = check;
  const gauge = reading === undefined ? undefined : book.gauges.get(reading.gauge);
  if (reading === undefined || gauge === undefined) return undefined;
  const day = reading.limit.by === "fixed" ? undefined : DAYS[below(chance, DAYS.length)];
  const limits = band(check, book, day);
  const limit = limitWords(reading, gauge, day);
  if (limits === undefined || !limit.known) return undefined;
  const { low, high } = limits;
  const entry = entryUnit(reading, gauge, undefined);
  const step_1 = 10 ** -entry.decimals;
  const away = Math.max(
    2 * differenceFromSI(differenceToSI(gauge.accuracy.value, gauge.accuracy.unit), entry.unit),
    2 * step_1,
  );
  const isRight = chance() < 0.5;
  const atLow = low !== undefined && (high === undefined || chance() < 0.5);
  const endSI = atLow ? low : high;
  if (endSI === undefined) return undefined;
  const end = fromSI(endSI, entry.unit);
  const inward = atLow ? 1 : -1;
  const value = roundToSafeSide(
    end + (isRight ? inward : -inward) * away,
    step_1,
    isRight === atLow ? "up" : "down",
  );
  const [from, to] = reading.scale.map(({ valueSI }) => fromSI(valueSI, entry.unit));
  if (from === undefined || to === undefined || value < from || value > to) return undefined;
  const other = atLow ? high : low;
  if (isRight && other !== undefined && (fromSI(other, entry.unit) - value) * inward <= 0) return undefined;
  const at = day === undefined ? "" : ` at ${temperatureText(day)}`;
  return {
    kind: "judge",
    found: `The gauge shows ${withSymbol(figure(value, entry.decimals), entry.unit)}${at}.`,
    isRight,
    because: `It should be ${limit.words}.`,
  };
}

/** A fault of a size that the book allows, or does not. */
function sizeCard(check: Check, chance: Chance): Asked | undefined {
  const sized = check.faults.filter((fault): fault is Fault & { measure: NonNullable<Fault["measure"]> } => {
    return fault.measure !== undefined && fault.measure.allowed.value > 0;
  });
  const fault = sized[below(chance, sized.length)];
  if (fault === undefined) return undefined;
  const { allowed, upTo, of } = fault.measure;
  const isRight = chance() < 0.5;
  const allowedHere = fromSI(allowed.valueSI, upTo.unit);
  const size = Math.round((isRight ? allowedHere * 0.6 : (allowedHere + upTo.value) / 2) * 10) / 10;
  if (isRight ? size > allowedHere || size <= 0 : size <= allowedHere) return undefined;
  return {
    kind: "judge",
    found: `${fault.name}: ${of}, ${withSymbol(figure(size, Number.isInteger(size) ? 0 : 1), upTo.unit)}.`,
    isRight,
    because: `The book allows ${withSymbol(figure(allowedHere, Number.isInteger(allowedHere) ? 0 : 1), upTo.unit)}.`,
  };
}

/** So many of a list at most, in an order of chance. */
function some<T>(list: readonly T[], most: number, chance: Chance): readonly T[] {
  return list
    .map((item) => ({ item, key: chance() }))
    .toSorted((a, b) => a.key - b.key)
    .slice(0, most)
    .map(({ item }) => item);
}
