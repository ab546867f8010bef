import { z } from "zod";
import { didYouMean } from "../faults/did-you-mean.ts";
import type { Report } from "../faults/fault-list.ts";
import type { Path } from "../faults/path.ts";
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
        knownKeys.set(JSON.stringify(issue.path), Object.keys(issue.inst.shape));
      }
      return expectedText(issue);
    },
  });
  if (result.success) return { ok: true, source: result.data };
  const faultyPaths: Path[] = [];
  for (const issue of result.error.issues.flatMap(unfolded)) {
    const path = plainPath(issue.path);
    faultyPaths.push(path);
    if (issue.code === "unrecognized_keys") {
      reportUnknownKeys(issue.keys, path, knownKeys.get(JSON.stringify(issue.path)) ?? [], report);
    } else {
      reportMisfit(issue, path, plain, report);
    }
  }
  return { ok: false, faultyPaths };
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
): void {
  for (const key of keys) {
    const meant = didYouMean(key, known);
    report([...path, key], {
      expected: meant === undefined ? `one of the keys ${oneOf(known)}` : "a key that a book has here",
      found: `\`${key}\``,
      remedy: meant,
      on: "key",
    });
  }
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
  if (value === undefined && typeof key === "string") return `add \`${key}:\``;
  if (value === null) return "write the value after the colon, or take the key out";
  const wantsText = issue.code === "invalid_type" && issue.expected === "string";
  if (wantsText && (typeof value === "number" || typeof value === "boolean")) {
    return `put it in quotes: "${value}"`;
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
