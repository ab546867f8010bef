import { EVERYTHING, notUnderstood, type Problem } from "./aspect.ts";
import { decodeForecast } from "./forecast.ts";
import { problemOf } from "./group.ts";
import { isTime } from "./header.ts";
import { decodeObservation } from "./observation.ts";
import type { Report } from "./report.ts";
import { splitReports } from "./split-reports.ts";
import { tokenise } from "./tokens.ts";

export interface Decoded {
  /** In the order of the text. */
  readonly reports: readonly Report[];
  /** What concerns the text as a whole; each report carries its own. */
  readonly problems: readonly Problem[];
  /** Tokens before the first report, which belong to none; told in `problems`. */
  readonly before: readonly string[];
}

/** A forecast says so, or has its validity where an observation has its wind. */
function isForecast(tokens: readonly string[]): boolean {
  if (tokens[0] === "TAF") return true;
  if (tokens[0] === "METAR" || tokens[0] === "SPECI") return false;
  const time = tokens.findIndex(isTime);
  return time >= 0 && tokens.slice(time + 1, time + 4).some((token) => /^\d{4}\/\d{4}$/u.test(token));
}

/**
 * Decodes every METAR, SPECI and TAF of a pasted or typed text. Never throws: what is not understood is told, with
 * what depends on it.
 */
export function decodeReports(text: string): Decoded {
  const { before, reports } = splitReports(tokenise(text));
  const problems: Problem[] = [];
  if (reports.length === 0)
    problems.push(problemOf("", { outcome: "missing", says: "no report", affects: EVERYTHING }));
  if (before.length > 0)
    problems.push(
      problemOf(before.join(" "), notUnderstood("before the first report, and part of none", "remarks")),
    );
  const decoded = reports.map((tokens) =>
    isForecast(tokens) ? decodeForecast(tokens) : decodeObservation(tokens),
  );
  for (const [index, report] of decoded.entries()) {
    if (index === 0) continue;
    const named = report.typeWordMissing ? 1 : 2;
    problems.push(
      problemOf(report.tokens.slice(0, named).join(" "), {
        outcome: "doubtful",
        says: `${index === 1 ? "second" : "another"} report found; split and decode both`,
        affects: [],
      }),
    );
  }
  return { reports: decoded, problems, before };
}
