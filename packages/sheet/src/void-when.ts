import type { Assessment, Verdict } from "@witnessmark/assess";
import { clockText } from "./local-time.ts";

const HAPPENINGS = [
  "fuelled again",
  "rain, frost or ice on it",
  "loaded otherwise",
  "left alone",
  "worked on",
  "towed",
] as const;

const ROLES = ["departure", "destination", "alternate"] as const;

/** What of a field's weather runs out, by the assessment's own word; where there is no report, what was typed. */
function runsOut(
  { verdicts, flight }: Assessment,
  role: (typeof ROLES)[number],
): { readonly what: "report" | "weather"; readonly code: string; readonly at_ms: number } | undefined {
  const code = flight?.plan?.[role]?.code;
  const ends = (id: string): number | undefined =>
    verdicts.find((verdict: Verdict) => verdict.id === id)?.holdsUntil_ms;
  const report_ms = ends(`weather:${role}:report`);
  const at_ms = report_ms ?? ends(`wind:${role}:crosswind`);
  if (code === undefined || at_ms === undefined) return undefined;
  return { what: report_ms === undefined ? "weather" : "report", code, at_ms };
}

/** What makes the sheet void at once: what happens to the aircraft, and reports that are then too old. */
export function voidWhen(assessment: Assessment, east_min: number): readonly string[] {
  const together = new Map<string, string[]>();
  for (const role of ROLES) {
    const found = runsOut(assessment, role);
    if (found === undefined) continue;
    const key = `${found.what} ${clockText(found.at_ms, east_min)}`;
    const codes = together.get(key) ?? [];
    if (!codes.includes(found.code)) together.set(key, [...codes, found.code]);
  }
  const reports = [...together].map(([key, codes]) => {
    const [what = "report", clock = ""] = key.split(" ");
    return `${what} of ${codes.join(", ")} past ${clock}`;
  });
  return [...HAPPENINGS, ...reports];
}
