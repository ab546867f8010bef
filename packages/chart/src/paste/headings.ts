import { type Dimension, UNITS, type UnitId, unitFromText } from "@witnessmark/engine";

/** The axes that a performance table can have, as a book names them. */
export type PastedAxisName = "mass" | "pressureAltitude" | "oat" | "headwind" | "slope";

interface AxisWords {
  readonly name: PastedAxisName;
  readonly dimension: Dimension;
  readonly example: string;
  readonly words: RegExp;
}

const AXES: readonly AxisWords[] = [
  { name: "mass", dimension: "mass", example: "kg", words: /\b(mass|weight|gw|tow|auw)\b/ },
  {
    name: "pressureAltitude",
    dimension: "length",
    example: "ft",
    words: /\b(pressure alt\w*|press\.? ?alt\w*|altitude|alt|pa|elevation|field height)\b/,
  },
  { name: "oat", dimension: "temperature", example: "°C", words: /\b(oat|temperature|temp|outside air)\b/ },
  { name: "headwind", dimension: "speed", example: "kt", words: /\b(head ?wind|tail ?wind|wind)\b/ },
  { name: "slope", dimension: "ratio", example: "%", words: /\b(slope|gradient of (?:the )?runway)\b/ },
];

/** What a heading names: an axis, or something else, with the unit that stands in it. */
export interface Heading {
  readonly text: string;
  readonly axis: PastedAxisName | undefined;
  readonly unit: UnitId | undefined;
  /** Tailwind: its values count the other way. */
  readonly turned: boolean;
}

/** Reads `Pressure altitude (ft)`, `OAT [°C]`, `Mass, kg`, `Weight lb`. */
export function readHeading(text: string): Heading {
  const plain = text.toLowerCase().replace(/[_\s]+/g, " ");
  const axis = AXES.find(({ words }) => words.test(plain));
  return {
    text,
    axis: axis?.name,
    unit: unitIn(text),
    turned: axis?.name === "headwind" && /tail ?wind/.test(plain),
  };
}

/** A corner may name what goes down and what goes across: `PA ft \ OAT °C`. */
export function readCorner(text: string): readonly Heading[] {
  const parts = text.split(/\s*(?:\\|→|\|)\s*|\s+(?:\/|vs\.?)\s+/);
  return parts.filter((part) => part.trim() !== "").map(readHeading);
}

function unitIn(text: string): UnitId | undefined {
  const bracketed = /[([]\s*([^)\]]+?)\s*[)\]]/.exec(text)?.[1];
  if (bracketed !== undefined) return unitOf(bracketed);
  const comma = text.split(",");
  if (comma.length > 1) {
    const unit = unitOf(comma.at(-1) ?? "");
    if (unit !== undefined) return unit;
  }
  // the last words: "US gal" before "gal"
  const words = text.trim().split(/[\s_]+/);
  for (let count = Math.min(2, words.length - 1); count > 0; count -= 1) {
    const unit = unitOf(words.slice(-count).join(" "));
    if (unit !== undefined) return unit;
  }
  return undefined;
}

const unitOf = (text: string): UnitId | undefined =>
  unitFromText(text) ?? unitFromText(text.toLowerCase()) ?? LOOSE.get(text.trim().toLowerCase());

/** As spreadsheets have it. */
const LOOSE: ReadonlyMap<string, UnitId> = new Map<string, UnitId>([
  ["feet", "ft"],
  ["metres", "m"],
  ["meters", "m"],
  ["knots", "kt"],
  ["kts", "kt"],
  ["pounds", "lb"],
  ["celsius", "degC"],
  ["fahrenheit", "degF"],
  ["º c", "degC"],
  ["ºc", "degC"],
  ["° c", "degC"],
  ["°f", "degF"],
  ["ºf", "degF"],
  ["° f", "degF"],
]);

/** The axis that is counted in a unit: each of them has a dimension of its own. */
export const axisIn = (unit: UnitId | undefined): PastedAxisName | undefined =>
  unit === undefined ? undefined : AXES.find(({ dimension }) => dimension === UNITS[unit].dimension)?.name;

export const dimensionOf = (name: PastedAxisName): Dimension =>
  AXES.find((axis) => axis.name === name)?.dimension ?? "ratio";

export const exampleUnitOf = (name: PastedAxisName): string =>
  AXES.find((axis) => axis.name === name)?.example ?? "";

/** How an axis is called in a sentence. */
export const axisWords = (name: PastedAxisName): string =>
  name === "pressureAltitude" ? "pressure altitude" : name === "oat" ? "outside air temperature" : name;

/** A unit as a book writes it. */
export const symbolOf = (unit: UnitId | undefined): string => (unit === undefined ? "" : UNITS[unit].symbol);

/** The order in which a book has its axes, outermost first. */
export const AXIS_ORDER: readonly PastedAxisName[] = AXES.map(({ name }) => name);
