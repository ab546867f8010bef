import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { isList, isMap, own } from "../differences.ts";
import type { Plain } from "../edit-text.ts";
import { plainOf, valueAt } from "../plain-of.ts";
import type { BookField } from "./field.ts";
import { SECTIONS } from "./sections.ts";

/** What is shown in a way of its own: drawn, or written as text. */
const ELSEWHERE = new Set(["witnessmark", "revision", "issued", "order", "last"]);

const pathsOf = (value: Plain, way: string): readonly string[] => {
  if (isList(value)) return [...new Set(value.flatMap((item) => pathsOf(item, way)))];
  if (!isMap(value)) return [way];
  return Object.entries(value).flatMap(([key, each]) => pathsOf(each, `${way}.${key}`));
};

const fieldsOf = (fields: readonly BookField[], way: string): readonly string[] =>
  fields.flatMap((field) => {
    const here = field.key === "" ? way : `${way}.${field.key}`;
    if (field.is === "part" || field.is === "rows") return fieldsOf(field.fields, here);
    if (field.is !== "kinds") return [here];
    return [
      `${here}.${field.by}`,
      ...Object.values(field.kinds).flatMap((kind) => fieldsOf(kind.fields, here)),
    ];
  });

describe("the pages of a book", () => {
  it.each(["zz-skr", "zz-dun", "zz-brk"])("show everything that %s says", (name) => {
    const text = readFileSync(new URL(`../../../../../books/${name}.yaml`, import.meta.url), "utf8");
    const read = plainOf(text, name);
    if (!read.ok) throw new Error(read.fault.found);
    const shown = new Set(
      SECTIONS.flatMap(({ path, fields }) => fieldsOf(fields, path.length === 0 ? "" : `.${path.join(".")}`)),
    );
    const written = Object.entries(read.plain)
      .filter(([key]) => !ELSEWHERE.has(key))
      .flatMap(([key, value]) => pathsOf(value, `.${key}`));
    expect([...new Set(written)].filter((way) => !shown.has(way)).toSorted()).toEqual([
      ".aircraft.registration", // the aircraft itself: another one has a book of its own
      ".fuel.order", // in the text
    ]);
  });

  it("have ids of their own, and blanks that can be read", () => {
    expect(new Set(SECTIONS.map(({ id }) => id)).size).toBe(SECTIONS.length);
    for (const { blank, fields, one } of SECTIONS) {
      if (one === undefined || !isMap(blank)) continue;
      const keys = new Set(fields.map(({ key }) => key));
      expect(Object.keys(blank).filter((key) => !keys.has(key))).toEqual([]);
      expect(fields.some(({ key }) => own(blank, key) !== undefined && valueAt(blank, [key]) !== null)).toBe(
        true,
      );
    }
  });
});
