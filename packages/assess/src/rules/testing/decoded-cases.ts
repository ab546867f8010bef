import { readFileSync } from "node:fs";
import { join } from "node:path";

/** A check value whose answer is no single number, as `reference/decoded/*.json` has it. */
export interface DecodedCase {
  readonly id: string;
  readonly inputs: Readonly<Record<string, unknown>>;
  readonly expected: Readonly<Record<string, unknown>>;
  readonly tolerance: Readonly<Record<string, number>>;
  readonly lowestInWindow?: {
    readonly prevailing: { readonly ceiling_ft: number; readonly visibility_SM: number };
    readonly withTemporary: { readonly ceiling_ft: number; readonly visibility_SM: number };
  };
}

const FOLDER = join(import.meta.dirname, "../../../../../reference/decoded");

/** @throws {Error} when the file is not there or has fewer cases than there should be: no case is lost silently */
export function decodedCases(file: string, count: number): readonly DecodedCase[] {
  // The shape of these files is this project's own, and each test reads the fields that it names.
  const { cases } = JSON.parse(readFileSync(join(FOLDER, file), "utf8")) as {
    readonly cases: readonly DecodedCase[];
  };
  if (cases.length !== count)
    throw new Error(`reference/decoded/${file}: ${cases.length} cases, expected ${count}`);
  return cases;
}

/** A number that a case must have. */
export function numberOf(one: DecodedCase, name: string, from: "inputs" | "expected" = "inputs"): number {
  const value = one[from][name];
  if (typeof value !== "number")
    throw new Error(`${one.id}, ${name}: expected a number, received ${String(value)}`);
  return value;
}

export function optionalNumber(one: DecodedCase, name: string): number | undefined {
  return one.inputs[name] === undefined ? undefined : numberOf(one, name);
}
