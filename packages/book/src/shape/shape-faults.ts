import { z } from "zod";
import { didYouMean, nearest } from "../faults/did-you-mean.ts";
import type { Report } from "../faults/fault-list.ts";
import { type Path, pathText } from "../faults/path.ts";
import { oneOf, shown } from "../faults/shown.ts";
import type { BookSource } from "../schema/book-source.ts";
import { BookSource as BookSchema } from "../schema/book-source.ts";
import { expectedText } from "./expected-text.ts";

export type ShapeResult =
  | { readonly ok: true; readonly source: BookSource }
  | { readonly ok: false; readonly faultyPaths: readonly Path[] };

/** Holds plain data against the schema and reports everything that does not fit. */
export function checkShape(plain: unknown, report: Report): ShapeResult {
  const knownKeys = new Map<string, readonly string[]>();
  const result = BookSchema.safeParse(plain, {
    error: (issue) => {
      // Zod drops the schema from a finished issue; the keys it knows are needed for "did you mean".
      if (issue.code === "unrecognized_keys" && issue.inst instanceof z.ZodObject) {
        // at the top of the book there is no path yet
        knownKeys.set(JSON.stringify(issue.path ?? []), Object.keys(issue.inst.shape));
      }
      return expectedText(issue);
    },
  });
  if (result.success) return { ok: true, source: result.data };
  const issues = result.error.issues.flatMap(unfolded);
  /** Keys that are missing only because they are misspelt. */
  const misspelt = new Set<string>();
  for (const issue of issues) {
    if (issue.code !== "unrecognized_keys") continue;
    const path = plainPath(issue.path);
    const meant = reportUnknownKeys(
      issue.keys,
      path,
      knownKeys.get(JSON.stringify(issue.path)) ?? [],
      report,
    );
    for (const key of meant) misspelt.add(pathText([...path, key]));
  }
  for (const issue of issues) {
    const path = plainPath(issue.path);
    if (issue.code === "unrecognized_keys") continue;
    if (misspelt.has(pathText(path)) && valueAt(plain, path) === undefined) continue;
    reportMisfit(issue, path, plain, report);
  }
  return { ok: false, faultyPaths: issues.map(({ path }) => plainPath(path)) };
}

/** The issues of the one way of writing a value that was evidently meant, where it may be written in several. */
function unfolded(issue: z.core.$ZodIssue): readonly z.core.$ZodIssue[] {
  if (issue.code !== "invalid_union") return [issue];
  const meant = issue.errors.find((way) => way.length > 0 && way.every(({ path }) => path.length > 0));
  if (meant === undefined) return [issue];
  return meant.flatMap((inner) => unfolded({ ...inner, path: [...issue.path, ...inner.path] }));
}

function reportUnknownKeys(
  keys: readonly string[],
  path: Path,
  known: readonly string[],
  report: Report,
): readonly string[] {
  return keys.flatMap((key) => {
    const meant = nearest(key, known);
    report([...path, key], {
      expected: meant === undefined ? `one of the keys ${oneOf(known)}` : "a key that a book has here",
      found: `\`${key}\``,
      remedy: meant === undefined ? undefined : `did you mean \`${meant}\`?`,
      on: "key",
    });
    return meant === undefined ? [] : [meant];
  });
}

function reportMisfit(issue: z.core.$ZodIssue, path: Path, plain: unknown, report: Report): void {
  const value = valueAt(plain, path);
  const params: Readonly<Record<string, unknown>> =
    (issue.code === "custom" ? issue.params : undefined) ?? {};
  const { received, remedy } = params;
  report(path, {
    expected: issue.message,
    found: typeof received === "string" ? received : shown(value),
    remedy: typeof remedy === "string" ? remedy : remedyFor(issue, path, value),
  });
}

function remedyFor(issue: z.core.$ZodIssue, path: Path, value: unknown): string | undefined {
  const key = path.at(-1);
  if (value === undefined && typeof key === "string") {
    const only =
      issue.code === "invalid_value" && issue.values.length === 1 ? ` ${String(issue.values[0])}` : "";
    return `add \`${key}:${only}\``;
  }
  if (value === null) return "write the value after the colon, or take the key out";
  const wantsText = issue.code === "invalid_type" && issue.expected === "string";
  if (wantsText && (typeof value === "number" || typeof value === "boolean")) {
    return `put it in quotes: "${value}"`;
  }
  const wantsList =
    issue.code === "invalid_type" && (issue.expected === "array" || issue.expected === "tuple");
  if (wantsList && (typeof value === "string" || typeof value === "number")) {
    return `put it in brackets: [${String(value).replace(/[[\]]/g, "")}]`;
  }
  if (typeof value !== "string") return undefined;
  if (issue.code === "invalid_type" && (issue.expected === "number" || issue.expected === "int")) {
    return /^\s*-?\d+([.,]\d+)?\s*$/.test(value)
      ? `write ${value.trim().replace(",", ".")}, without quotes`
      : undefined;
  }
  if (issue.code === "invalid_value") return didYouMean(value, issue.values.map(String));
  if (issue.code === "invalid_union" && issue.inclusive !== false) {
    return didYouMean(value, (issue.options ?? []).map(String));
  }
  return undefined;
}

const plainPath = (path: readonly PropertyKey[]): Path =>
  path.map((step) => (typeof step === "number" ? step : String(step)));

function valueAt(plain: unknown, path: Path): unknown {
  let value: unknown = plain;
  for (const step of path) {
    if (typeof value !== "object" || value === null || !Object.hasOwn(value, step)) return undefined;
    value = Reflect.get(value, step);
  }
  return value;
}
