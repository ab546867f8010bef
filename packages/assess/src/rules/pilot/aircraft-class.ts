import type { AircraftClass, Book } from "@witnessmark/book";

/** What rules of recency compare: the class, what drives it, and the type where a rating for it is asked. */
export interface KindOfAircraft {
  readonly class: AircraftClass;
  /** Undefined where nobody said. */
  readonly engine: "piston" | "turboprop" | undefined;
}

/** How a class is said, and offered; what a person writes in these words is understood. */
export const CLASS_WORDS: Readonly<Record<AircraftClass, string>> = {
  "single-engine-land": "single-engine, land",
  "multi-engine-land": "multi-engine, land",
  "single-engine-sea": "single-engine, sea",
  "multi-engine-sea": "multi-engine, sea",
  "touring-motor-glider": "touring motor glider",
  glider: "glider",
};

/** The class of the book's aircraft: as it says, else a glider or a land plane with as many engines as it has. */
export const classOfBook = ({ aircraft }: Pick<Book, "aircraft">): AircraftClass =>
  aircraft.class ??
  (aircraft.engine === "none"
    ? "glider"
    : aircraft.engines === 1
      ? "single-engine-land"
      : "multi-engine-land");

const SHORT: Readonly<Record<string, KindOfAircraft>> = {
  asel: { class: "single-engine-land", engine: undefined },
  amel: { class: "multi-engine-land", engine: undefined },
  ases: { class: "single-engine-sea", engine: undefined },
  ames: { class: "multi-engine-sea", engine: undefined },
  tmg: { class: "touring-motor-glider", engine: "piston" },
};

const one = <T>(found: readonly (readonly [boolean, T])[]): T | undefined => {
  const are = found.flatMap(([is, what]) => (is ? [what] : []));
  return are.length === 1 ? are[0] : undefined;
};

/**
 * The class that a person's words mean: `single-engine piston, land`, `SEP (land)`, `airplane-multi-engine-land`, `ASEL`.
 * Undefined where they leave the engines, or land or sea, unsaid, or say two things: a class is never guessed.
 */
export function classSaid(words: string): KindOfAircraft | undefined {
  const said = words.toLowerCase().split(/[^a-z0-9]+/);
  const has = (...any: readonly string[]): boolean => any.some((word) => said.includes(word));
  const short = Object.entries(SHORT).filter(([word]) => said.includes(word));
  if (short.length === 1) return short[0]?.[1];
  if (has("touring") && has("glider")) return { class: "touring-motor-glider", engine: "piston" };
  if (has("glider", "gliders", "sailplane", "sailplanes")) return { class: "glider", engine: undefined };
  const engines = one([
    [has("single", "sep", "set", "sel", "ses"), "single"] as const,
    [has("multi", "twin", "mep", "met", "mel", "mes"), "multi"] as const,
  ]);
  const from = one([
    [has("land", "sel", "mel"), "land"] as const,
    [has("sea", "float", "floats", "water", "ses", "mes"), "sea"] as const,
  ]);
  if (engines === undefined || from === undefined) return undefined;
  const engine = one([
    [has("piston", "sep", "mep"), "piston"] as const,
    [has("turboprop", "turbine", "set", "met"), "turboprop"] as const,
  ]);
  return { class: `${engines}-engine-${from}`, engine };
}

const plain = (words: string): string => words.toLowerCase().replace(/[^a-z0-9]+/g, " ");

/**
 * Whether what was flown elsewhere counts for the book's aircraft: the same category and class, and the type where a
 * rating for it is asked; in Europe piston and turboprop are classes of their own. In doubt `unknown`.
 *
 * @source 14 CFR 61.57(a)(1)(ii), (b)(1)(ii); FCL.060(b)(1), FCL.725
 */
export function isSameKind(
  words: string,
  book: Pick<Book, "aircraft">,
  rules: "us" | "europe",
): boolean | "unknown" {
  const said = classSaid(words);
  if (said === undefined) return "unknown";
  if (said.class !== classOfBook(book)) return false;
  const { engine, typeRating } = book.aircraft;
  const isOfType = typeRating !== undefined && plain(words).includes(plain(typeRating));
  const isGlider = said.class === "touring-motor-glider" || said.class === "glider";
  if (rules === "europe" && !isGlider && !isOfType) {
    if (said.engine === undefined) return "unknown";
    if (said.engine !== engine) return false;
  }
  // a type that is asked for and not named may still be it
  return typeRating === undefined || isOfType ? true : "unknown";
}

/** Whether an approach flown elsewhere was in the same category: aeroplanes count for aeroplanes. @source 14 CFR 61.57(c)(1) */
export function isSameCategory(words: string, book: Pick<Book, "aircraft">): boolean | "unknown" {
  const said = classSaid(words);
  if (said === undefined) return "unknown";
  return (said.class === "glider") === (classOfBook(book) === "glider");
}
