import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { z } from "zod";

/**
 * An input: a number, a list of them, or a quantity to be computed first (`geopotentialAltitude_m` from a geometric
 * height).
 */
export type CaseInput =
  | number
  | readonly number[]
  | { readonly quantity: string; readonly inputs: CaseInputs };
export interface CaseInputs {
  readonly [name: string]: CaseInput;
}

/** `elevation_ft`: a stem in camelCase and a unit. */
const Name = z.string().regex(/^[a-z][A-Za-z0-9]*_[A-Za-z0-9]+$/);
const Figures = z.record(Name, z.number());
const Inputs: z.ZodType<CaseInputs> = z.lazy(() =>
  z.record(
    Name,
    z.union([
      z.number(),
      z.array(z.number()).min(1),
      z.strictObject({ quantity: z.string(), inputs: Inputs }),
    ]),
  ),
);

const Source = z.strictObject({
  title: z.string().min(3),
  edition: z.string().min(1).optional(),
  locator: z.string().min(1).optional(),
  url: z.url().optional(),
});

export const Case = z
  .strictObject({
    id: z.string().regex(/^[a-z0-9][A-Za-z0-9.-]*$/),
    /** The id of a registered quantity, or `conversion` for one value in other units. */
    quantity: z.string(),
    inputs: Inputs,
    expected: Figures,
    /** For each expected figure; zero where it is exact. */
    tolerance: z.record(Name, z.number().min(0)),
    source: Source,
    /** Where the expected figure comes from. */
    status: z.enum(["published", "common practice", "from memory"]),
    note: z.string().min(1).optional(),
    /** The printed figure is at fault: what comes out instead, and why. */
    disagrees: z.strictObject({ computed: Figures, why: z.string().min(20) }).optional(),
  })
  .superRefine((value, context) => {
    const names = Object.keys(value.expected);
    if (names.length === 0)
      context.addIssue({ code: "custom", message: "no expected figure", input: value.id });
    for (const [part, given] of Object.entries({
      tolerance: value.tolerance,
      computed: value.disagrees?.computed,
    })) {
      if (given === undefined || Object.keys(given).sort().join() === names.sort().join()) continue;
      context.addIssue({
        code: "custom",
        message: `${part} names other figures than expected does`,
        input: value.id,
      });
    }
  });
export type Case = z.infer<typeof Case>;

export const CaseFile = z.strictObject({ about: z.string().min(10), cases: z.array(Case).min(1) });

/** Whether an input is given as it is, and not as a quantity to be computed first. */
export const isGiven = (input: CaseInput): input is number | readonly number[] =>
  typeof input === "number" || Array.isArray(input);

/** A case and the file that it was read from. */
export interface FiledCase {
  readonly file: string;
  readonly about: string;
  readonly case: Case;
}

/**
 * Reads every `*.json` of a folder as a case file.
 *
 * @throws {Error} names the file and every fault in it; also for a folder without a file, or an id used twice
 */
export function readCases(folder: string): readonly FiledCase[] {
  const files = readdirSync(folder)
    .filter((name) => name.endsWith(".json"))
    .sort();
  if (files.length === 0) throw new Error(`${folder}: no case file (*.json) in it`);
  const filed = files.flatMap((file) => {
    const read = CaseFile.safeParse(JSON.parse(readFileSync(join(folder, file), "utf8")));
    if (!read.success) throw new Error(`${file}:\n${z.prettifyError(read.error)}`);
    return read.data.cases.map((one) => ({ file, about: read.data.about, case: one }));
  });
  const ids = new Set<string>();
  for (const { file, case: one } of filed) {
    if (ids.has(one.id)) throw new Error(`${file}: two cases have the id ${one.id}`);
    ids.add(one.id);
  }
  return filed;
}
