import { UNITS, type UnitId } from "@witnessmark/engine";
import * as z from "zod/mini";

/* What bodies are made of. Every part says in words what is expected: a person reads those words. */

/** All names of a union type as a runtime list; a name missing or misspelt does not compile. */
const names = <T extends string>(all: Readonly<Record<T, true>>): [T, ...T[]] =>
  Object.keys(all) as [T, ...T[]]; // the keys of a record over T are T, and no union here is empty

export const oneOf = <T extends string>(all: Readonly<Record<T, true>>) => {
  const list = names(all);
  return z.enum(list, { error: `one of ${list.join(", ")}` });
};

/** Well-formed text that every store can hold: databases refuse the character 0, hashes a lone surrogate. */
const isKeepable = (text: string): boolean => text.isWellFormed() && !text.includes("\0");

export const text = (min: number, max: number) => {
  const error = `text of ${min} to ${max} characters, without the character 0 or half a character`;
  return z
    .string({ error })
    .check(z.minLength(min, { error }), z.maxLength(max, { error }), z.refine(isKeepable, { error }));
};

export const matching = (pattern: RegExp, error: string) =>
  z.string({ error }).check(z.regex(pattern, { error }));

export const count = (min: number, max: number) => {
  const error = `a whole number from ${min} to ${max}`;
  return z.int({ error }).check(z.gte(min, { error }), z.lte(max, { error }));
};

export const finite = z.number({ error: "a number" });

/** Text of a name of something in the book: a check, an item, a gauge, a point. */
export const Name = text(1, 200);
export const Words = text(1, 4000);
export const Uuid = matching(
  /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/,
  "a UUID in lower case",
);
export const UuidV7 = matching(
  /^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/,
  "a UUID of version 7 in lower case",
);
export const Sha256 = matching(/^[0-9a-f]{64}$/, "a SHA-256 as 64 lower-case hexadecimal figures");

const WHEN = "a date and time with its offset, such as 2031-05-04T09:07:00+02:00";
export const When = z
  .string({ error: WHEN })
  .check(z.iso.datetime({ offset: true, error: WHEN }), z.maxLength(40, { error: WHEN }));

const UnitName = z.enum(Object.keys(UNITS) as [UnitId, ...UnitId[]], {
  error: "a unit such as bar, psi, degC or L",
}); // keys of a const object
export const ReadValue = z.strictObject({ value: finite, unit: UnitName });
