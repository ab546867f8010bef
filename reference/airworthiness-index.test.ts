import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";

/** One known check value: the files of cases that it is run from, or why it is not run. */
type Known =
  | { readonly id: string; readonly in: readonly string[] }
  | { readonly id: string; readonly why: string };

const FOLDER = join(import.meta.dirname, "decoded");
const PACKAGES = join(import.meta.dirname, "../packages");
// the shape of these files is this project's own
const casesOf = (file: string) =>
  (JSON.parse(readFileSync(join(FOLDER, `${file}.json`), "utf8")) as { readonly cases: readonly Known[] })
    .cases;
const KNOWN = casesOf("airworthiness-index");
const FILES = [
  "airworthiness-asked",
  "airworthiness-pilot",
  "airworthiness-relief",
  "airworthiness-relief-rules",
  "airworthiness-timed",
  "calendar",
];

describe("every known check value on airworthiness, papers and recency", () => {
  it("is in the table once, and 234 are", () => {
    expect(KNOWN).toHaveLength(234);
    expect(new Set(KNOWN.map(({ id }) => id)).size).toBe(234);
  });

  it("is in each of the files that the table names, or has a reason why it is not run", () => {
    const held = new Map(
      FILES.map((file) => [`decoded/${file}`, new Set(casesOf(file).map(({ id }) => id))]),
    );
    for (const known of KNOWN) {
      if ("why" in known) {
        expect(known.why.length, known.id).toBeGreaterThan(20);
        expect(
          [...held.values()].some((ids) => ids.has(known.id)),
          known.id,
        ).toBe(false);
        continue;
      }
      expect(known.in.length, known.id).toBeGreaterThan(0);
      for (const file of known.in) expect(held.get(file)?.has(known.id), `${known.id} in ${file}`).toBe(true);
    }
  });

  it("and every case of those files stands in the table", () => {
    const ids = new Set(KNOWN.map(({ id }) => id));
    for (const file of FILES)
      for (const { id } of casesOf(file)) expect(ids.has(id), `${id} of ${file}`).toBe(true);
  });

  it("each file is read by a test beside the code", () => {
    const tests = readdirSync(PACKAGES, { recursive: true, encoding: "utf8" })
      .filter((name) => name.endsWith(".test.ts") && !name.includes("node_modules"))
      .map((name) => readFileSync(join(PACKAGES, name), "utf8"));
    for (const file of FILES) {
      const readers = tests.filter((text) => text.includes(`${file}.json`));
      expect(readers.length, file).toBeGreaterThan(0);
    }
  });
});
