import { z } from "zod";
import { oneOf } from "../faults/shown.ts";

type RawIssue = Parameters<z.core.$ZodErrorMap>[0];

const TYPES: Readonly<Record<string, string>> = {
  string: "text",
  number: "a number",
  int: "a whole number",
  boolean: "true or false",
  array: "a list",
  tuple: "a list",
  object: "keys and values",
};

/** What the schema wanted, as a noun phrase. A schema's own `error` text goes first; this is for all the others. */
export function expectedText(issue: RawIssue): string | undefined {
  switch (issue.code) {
    case "invalid_type":
      return TYPES[issue.expected] ?? issue.expected;
    case "invalid_value":
      return issue.values.length === 1 ? `\`${String(issue.values[0])}\`` : oneOf(issue.values.map(String));
    case "too_small":
      return bound(issue, issue.minimum, issue.inclusive === false ? "more than" : "at least");
    case "too_big":
      return bound(issue, issue.maximum, issue.inclusive === false ? "less than" : "at most");
    case "invalid_format":
      return issue.format === "date" ? "a date of the calendar, as 2026-11-12" : undefined;
    case "invalid_union":
      return Array.isArray(issue["options"]) ? oneOf(issue["options"].map(String)) : undefined;
    default:
      return undefined;
  }
}

function bound(issue: RawIssue, limit: number | bigint, how: string): string {
  if (issue.code !== "too_small" && issue.code !== "too_big") return "";
  if (issue.inst instanceof z.ZodTuple) return `a list of ${issue.inst.def.items.length}`;
  if (issue.origin === "array") return `a list of ${how} ${limit}`;
  if (issue.origin === "string") return `text of ${how} ${limit} characters`;
  return `a number, ${how} ${limit}`;
}
