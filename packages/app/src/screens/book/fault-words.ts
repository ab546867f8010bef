import { type BookField, type BookPath, fieldOf, type Plain, spaced, valueAt } from "@witnessmark/book";
import { type Dimension, InputError, parseMeasure, UNITS, unitFromText } from "@witnessmark/engine";
import { article } from "../../words/article.ts";
import { capital } from "../../words/capital.ts";
import { countOf } from "../../words/figures.ts";
import { unitsOfField } from "./with-unit.ts";

/** A fault as it is told at its place. What was never put in is missing, and nothing is wrong with it. */
export interface ToldFault {
  readonly is: "missing" | "wrong";
  readonly text: string;
}

interface Found {
  /** `checks[3].reading.limit` */
  readonly path: string;
  readonly expected: string;
  readonly found: string;
  readonly remedy?: string | undefined;
}

/** A fault of a draft in words for a person: by the names that people gave, without the marks of the file. */
export function toldFault(fault: Found, plain: Plain | null): ToldFault {
  const path = pathOf(fault.path);
  const value = valueAt(plain ?? undefined, path);
  const field = fieldOf(path);
  if (isEmpty(value)) return { is: "missing", text: `${capital(wanted(field, plain, path))}.` };
  const text =
    (typeof value === "string" && field !== undefined && isMeasure(field)
      ? measureTrouble(value, field, plain, path)
      : undefined) ??
    (field?.is === "date" ? `“${plainText(value)}” is no date of the calendar.` : undefined) ??
    `Expected ${plainWords(fault.expected, plain)}, found ${plainWords(fault.found, plain)}.${
      fault.remedy === undefined ? "" : ` ${capital(plainWords(fault.remedy, plain))}.`
    }`.replace(/\?\.$/, "?");
  return { is: "wrong", text };
}

const plainText = (value: Plain | undefined): string => (typeof value === "object" ? "" : String(value));

/** What is told of several, counted: `two faults`; where nothing is wrong, `5 missing`; nothing of none. */
export function countText(faults: readonly Found[], plain: Plain | null): string {
  const wrong = faults.filter((fault) => toldFault(fault, plain).is === "wrong").length;
  if (wrong > 0) return countOf(wrong, "fault");
  return faults.length === 0 ? "" : `${faults.length} missing`;
}

/** `checks[3].how` as the steps to it. */
export const pathOf = (text: string): BookPath =>
  [...text.matchAll(/([A-Za-z][A-Za-z0-9]*)|\[(\d+)\]/g)].map(([, key, index]) =>
    key === undefined ? Number(index) : key,
  );

function isEmpty(value: Plain | undefined): boolean {
  if (value === undefined || value === null) return true;
  if (typeof value === "string") return value.trim() === "";
  return Array.isArray(value) && value.every(isEmpty);
}

const isMeasure = ({ is }: BookField): boolean =>
  is === "measure" || is === "gauge-measure" || is === "gauge-span";

/** Figures as a handbook has them, by the unit that a field takes. */
const EXAMPLES: Readonly<Record<string, string>> = {
  kg: "521 kg",
  m: "0.94 m",
  L: "68 L",
  "kg/L": "0.72 kg/L",
  kg·m: "40 kg·m",
  "m²": "0.6 m²",
  kt: "12 kt",
  ft: "2000 ft",
  "ft/min": "1500 ft/min",
  "L/min": "2 L/min",
  "°C": "15 °C",
  "%": "2 %",
  psi: "5 psi",
  bar: "120 bar",
  mm: "5 mm",
  h: "24 h",
  s: "5 s",
};
/** Where a mass or a volume will do. */
const EITHER: Readonly<Record<string, string>> = { kg: "3 kg or 4 L", "kg/h": "23 kg/h or 32 L/h" };

/** What is to be put in, as a noun: `a mass, such as 521 kg`. */
function wanted(field: BookField | undefined, plain: Plain | null, path: BookPath): string {
  switch (field?.is) {
    case "measure": {
      const example = field.or === undefined ? EXAMPLES[field.unit] : EITHER[field.unit];
      const what = dimensionWords([field.unit, ...(field.or === undefined ? [] : [field.or])]);
      const none = field.none === true ? "; or say that the manual gives none" : "";
      return `${what}${example === undefined ? "" : `, such as ${example}`}${none}`;
    }
    case "gauge-measure":
    case "gauge-span": {
      const [unit] = unitsOfField(field, plain, path);
      return unit === undefined ? "a figure; first choose the gauge, or its unit" : `a figure in ${unit}`;
    }
    case "date":
      return "a date";
    case "number":
      return "a number";
    case "choice":
    case "one-of":
    case "at":
      return "one to be chosen";
    case "choices":
    case "some-of":
      return "one or more to be chosen";
    case "rows":
      return `${article(field.one)}, or more`;
    default:
      return field?.key === "name" ? "a name" : "still to be put in";
  }
}

const WORDS: Readonly<Partial<Record<Dimension, string>>> = {
  area: "an area",
  length: "a length",
  ratio: "a share",
  angle: "an angle",
  "mass-flow": "a mass in an hour",
  "volume-flow": "a volume in an hour",
  "mass-moment": "a moment",
};

const nameOf = (dimension: Dimension): string => WORDS[dimension] ?? `a ${dimension.replaceAll("-", " ")}`;

const dimensionWords = (units: readonly string[]): string =>
  units
    .flatMap((text) => unitFromText(text) ?? [])
    .map((unit) => nameOf(UNITS[unit].dimension))
    .join(" or ");

/** Why a text is not what the field takes; nothing where it is, and something else is wrong. */
function measureTrouble(
  text: string,
  field: BookField,
  plain: Plain | null,
  path: BookPath,
): string | undefined {
  const [first, ...more] = unitsOfField(field, plain, path)
    .flatMap((each) => unitFromText(each) ?? [])
    .map((unit): Dimension => UNITS[unit].dimension);
  if (first === undefined) return undefined;
  try {
    parseMeasure(text, [first, ...more], "");
    return undefined;
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return `${whyNot(error, text)}. Write ${wanted(field, plain, path)}.`;
  }
}

function whyNot({ code }: InputError, text: string): string {
  const tail = text.replace(/^[-+−\d.,\s]+/u, "");
  const unit = unitFromText(tail);
  if (unit !== undefined) return `“${text}” is ${nameOf(UNITS[unit].dimension)}`;
  if (code === "unknown-unit") return `“${tail}” is no unit known here`;
  return code === "missing" ? `“${text}” has no unit` : `“${text}” is no figure`;
}

const MARKED = /`([^`]*)`/g;
const WAY = /^[a-z][A-Za-z]*(\.[a-z][A-Za-z]*)*$/;

/** Words of a fault without the marks of the file: an id as the name of what has it, a key as words. */
export const plainWords = (words: string, plain: Plain | null): string =>
  words
    .replaceAll(MARKED, (_, inner: string) => {
      const name = namedIn(plain, inner);
      if (name !== undefined) return `“${name}”`;
      const written = inner.replace(/:$/, "");
      return spaced(WAY.test(written) ? (written.split(".").at(-1) ?? written) : written);
    })
    .replaceAll(/\bthe ids? of (an?) /g, "$1 ")
    // axes of a table are named in its words without marks
    .replaceAll(/\b[a-z]+(?:[A-Z][a-z]+)+(?= [-−\d])/g, spaced)
    .replaceAll(/\boat(?= [-−\d])/g, spaced("oat"));

/** The name of the item that has an id, wherever in the book it stands. */
function namedIn(value: Plain | null, id: string): string | undefined {
  if (typeof value !== "object" || value === null) return undefined;
  if (!Array.isArray(value) && valueAt(value, ["id"]) === id) {
    const name = [valueAt(value, ["name"]), valueAt(value, ["title"])].find(
      (each) => typeof each === "string",
    );
    if (typeof name === "string" && name.trim() !== "") return name;
  }
  for (const each of Object.values(value) as readonly Plain[]) {
    const found = namedIn(each, id);
    if (found !== undefined) return found;
  }
  return undefined;
}
