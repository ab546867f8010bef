import { readFileSync } from "node:fs";
import { join } from "node:path";

/** A case of reference/decoded: what went in, what must come out, and where that comes from. */
export interface PublishedCase {
  readonly id: string;
  readonly quantity: string;
  readonly inputs: Readonly<Record<string, unknown>>;
  readonly expected: Readonly<Record<string, unknown>>;
  readonly tolerance?: Readonly<Record<string, number>>;
  readonly status: string;
  readonly note?: string;
}

const FOLDER = join(import.meta.dirname, "../../../../reference/decoded");

export function casesOf(topic: string): readonly PublishedCase[] {
  // the files are ours and checked in: their shape is what the tests then use of them
  const file = JSON.parse(readFileSync(join(FOLDER, `weather-${topic}.json`), "utf8")) as {
    readonly cases: readonly PublishedCase[];
  };
  return file.cases;
}

export const textInput = ({ id, inputs }: PublishedCase, name: string): string => {
  const text = inputs[name];
  if (typeof text !== "string")
    throw new Error(`${id}: expected a text as ${name}, received ${String(text)}`);
  return text;
};
export const listInput = ({ id, inputs }: PublishedCase, name: string): readonly unknown[] => {
  const list = inputs[name];
  if (!Array.isArray(list)) throw new Error(`${id}: expected a list as ${name}, received ${String(list)}`);
  return list;
};
