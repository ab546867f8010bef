import type { FlightPlan } from "@witnessmark/ledger";
import { decodeReports, type Report } from "@witnessmark/weather";
import { ROLES, type Role } from "./plan-field.ts";

/** A report of a pasted text, and the fields of the flight that it is for. */
export interface SortedReport {
  readonly roles: readonly Role[];
  readonly kind: "metar" | "taf";
  readonly text: string;
}

export interface Sorted {
  readonly taken: readonly SortedReport[];
  /** What of the text found no place, and why; sentences for a person. */
  readonly left: readonly string[];
}

const NAMES = { metar: "METAR", taf: "TAF" } as const;

/**
 * Sorts a pasted or fetched text into the reports of the flight's fields. A report that does not say whose it is goes to
 * the field that stands open, where its own trouble is shown; one of another place goes nowhere.
 *
 * @param here the field that stands open
 */
export function sortReports(text: string, plan: Pick<FlightPlan, Role>, here: Role): Sorted {
  const { reports, before } = decodeReports(text);
  const taken: SortedReport[] = [];
  const left: string[] = [];
  if (before.length > 0 && reports.length > 0)
    left.push(`“${before.join(" ")}” stands before the first report and was left out.`);
  let found = 0;
  for (const report of reports) {
    const kind = report.kind === "observation" ? "metar" : "taf";
    const { station } = report;
    const roles = ROLES.filter((role) => plan[role] !== undefined && plan[role]?.code === station);
    if (roles.length === 0 && !looksLikeOne(report)) continue;
    found += 1;
    if (roles.length > 0) taken.push({ roles, kind, text: report.text });
    else if (station === undefined) taken.push({ roles: [here], kind, text: report.text });
    else left.push(`The ${NAMES[kind]} of ${station} is of no field of this flight and was left out.`);
  }
  if (found === 0) {
    left.push(
      "No report was found. Expected one such as “METAR ZZQN 120750Z 24014KT 9999 BKN022 05/03 Q1008”, or a TAF, or both.",
    );
  }
  return { taken, left };
}

/** Any words have four letters somewhere; a report has a group of weather, or says for when it is. */
const looksLikeOne = ({ accepted, issued, groups }: Report): boolean =>
  accepted ||
  issued !== undefined ||
  groups.some(({ section, outcome }) => outcome === "used" && (section === "body" || section === "forecast"));

/** The plan with the reports at their fields; of two of one kind for one field, the later in the text. */
export function withReports(
  plan: FlightPlan,
  taken: readonly SortedReport[],
  receivedAt: string,
): FlightPlan {
  let next = plan;
  for (const { roles, kind, text } of taken) {
    for (const role of roles) {
      const field = next[role];
      if (field !== undefined) next = { ...next, [role]: { ...field, [kind]: { text, receivedAt } } };
    }
  }
  return next;
}
