import type { Flight } from "@witnessmark/assess";
import type { FlightPlan } from "@witnessmark/ledger";
import { decodeReports, type Report, readReport } from "@witnessmark/weather";
import { momentShort } from "../../words/dates.ts";
import { codeOf, fieldAt, ROLES, type Role } from "./plan-field.ts";

/** A report of a pasted text, and the fields of the flight that it is for. */
export interface SortedReport {
  readonly roles: readonly Role[];
  readonly kind: "metar" | "taf";
  readonly text: string;
}

/** What of a text found no place, and why: a sentence for a person. */
export interface LeftOut {
  readonly text: string;
  readonly says: string;
}

export interface Sorted {
  readonly taken: readonly SortedReport[];
  readonly left: readonly LeftOut[];
}

/** The fields of a flight: those of its plan, else those that its own words name; a runway is not asked for. */
export type Places = Pick<Flight, "from" | "to" | "plan">;

/** A report that stands at a field, or would. */
interface Standing {
  readonly text: string;
  /** Observed or issued; absent where nothing of it can be used, for which `why` is the reason. */
  readonly at_ms?: number;
  readonly why?: string;
}

/** A report of the text, and the fields that it is of. */
interface Found extends Standing {
  readonly kind: SortedReport["kind"];
  readonly name: string;
  readonly roles: readonly Role[];
}

const NAMES = { metar: "METAR", taf: "TAF" } as const;
const NONE_FOUND =
  "No report was found. Expected one such as “METAR ZZQN 120750Z 24014KT 9999 BKN022 05/03 Q1008”, or a TAF, or both.";

/**
 * Sorts a pasted or fetched text into the reports of the flight's fields. A report that does not say whose it is goes to
 * the field that stands open, where its own trouble is shown; one of another place goes nowhere. Of two of one kind for
 * one field, that of the plan among them, the later observed or issued stands, whichever came first.
 *
 * @param here the field that stands open
 * @param received_ms when the text came
 */
export function sortReports(text: string, places: Places, here: Role, received_ms: number): Sorted {
  const { reports, before } = decodeReports(text);
  const left: LeftOut[] = [];
  if (before.length > 0 && reports.length > 0) {
    const words = before.join(" ");
    left.push({ text: words, says: `“${words}” stands before the first report and was left out.` });
  }
  const placed = reports.map((report) => placeOf(report, places, here, received_ms));
  if (placed.every((one) => one === "none")) return { taken: [], left: [{ text, says: NONE_FOUND }] };
  const found: Found[] = [];
  for (const [index, one] of placed.entries()) {
    const words = reports[index]?.text ?? "";
    if (one === "none") left.push({ text: words, says: `“${words}” is no report and was left out.` });
    else if ("says" in one) left.push(one);
    else found.push(one);
  }
  const standing = (role: Role, kind: Found["kind"]): Standing | undefined =>
    found
      .filter((one) => one.kind === kind && one.roles.includes(role))
      .reduce<Standing | undefined>(laterOf, plannedAt(places, role, kind));
  const taken: SortedReport[] = [];
  for (const one of found) {
    const { kind, text: words } = one;
    const roles = one.roles.filter((role) => standing(role, kind) === one);
    if (roles.length > 0) taken.push({ roles, kind, text: words });
    else {
      const [role] = one.roles;
      const other = role === undefined ? undefined : standing(role, kind);
      left.push({ text: words, says: staysSays(one, other, received_ms) });
    }
  }
  return { taken, left };
}

/** Of two the later; one of which nothing can be used gives way to any other. */
const laterOf = (sofar: Standing | undefined, next: Standing): Standing =>
  sofar?.at_ms !== undefined && !(next.at_ms !== undefined && next.at_ms >= sofar.at_ms) ? sofar : next;

function staysSays({ name, at_ms, why }: Found, other: Standing | undefined, now_ms: number): string {
  const stays = other?.at_ms === undefined ? "the other" : `the one of ${momentShort(other.at_ms, now_ms)}`;
  return at_ms === undefined
    ? `The ${name} cannot be used (${why ?? "it says nothing of use"}): ${stays} stays.`
    : `The ${name} of ${momentShort(at_ms, now_ms)} is older than what is there: ${stays} stays and counts.`;
}

/** The fields of a report; "none" where the words are no report, else why it has none. */
function placeOf(report: Report, places: Places, here: Role, received_ms: number): Found | LeftOut | "none" {
  const { station, text } = report;
  const kind = report.kind === "observation" ? "metar" : "taf";
  const kindName = NAMES[kind];
  const roles = ROLES.filter((role) => station !== undefined && codeOf(places, role) === station);
  if (roles.length === 0 && !looksLikeOne(report)) return "none";
  if (roles.length > 0) {
    const name = `${kindName} of ${station}`;
    return { kind, name, roles, ...standingOf(kind, text, station ?? "", received_ms) };
  }
  if (station !== undefined)
    return { text, says: `The ${kindName} of ${station} is of no field of this flight and was left out.` };
  const code = codeOf(places, here);
  if (code === undefined)
    return { text, says: `A ${kindName} that does not say of which field it is was left out.` };
  const name = `${kindName} without a field`;
  return { kind, name, roles: [here], ...standingOf(kind, text, code, received_ms) };
}

/** A report of a field with its time, as the figures will read it. */
function standingOf(kind: Found["kind"], text: string, station: string, received_ms: number): Standing {
  const ask = { station, received_ms, now_ms: received_ms };
  const { problems, ...read } =
    kind === "metar"
      ? readReport(text, { ...ask, kind: "observation" })
      : readReport(text, { ...ask, kind: "forecast" });
  const { placed } = read;
  if (placed !== undefined && placed.report.nil !== true)
    return { text, at_ms: placed.kind === "observation" ? placed.observed_ms : placed.issued_ms };
  const [first] = problems;
  return {
    text,
    ...(first === undefined ? {} : { why: [first.group, first.says].filter(Boolean).join(": ") }),
  };
}

function plannedAt({ plan }: Places, role: Role, kind: Found["kind"]): Standing | undefined {
  const planned = plan?.[role];
  const report = planned?.[kind];
  return planned === undefined || report === undefined
    ? undefined
    : standingOf(kind, report.text, planned.code, Date.parse(report.receivedAt));
}

/** Any words have four letters somewhere; a report has a group of weather, or says for when it is. */
const looksLikeOne = ({ accepted, issued, groups }: Report): boolean =>
  accepted ||
  issued !== undefined ||
  groups.some(({ section, outcome }) => outcome === "used" && (section === "body" || section === "forecast"));

/** The plan with the reports at their fields, each of which is there from then on, with a runway or without. */
export function withReports(
  plan: FlightPlan,
  places: Places,
  taken: readonly SortedReport[],
  receivedAt: string,
): FlightPlan {
  let next = plan;
  for (const { roles, kind, text } of taken) {
    for (const role of roles) {
      const code = codeOf(places, role);
      if (code === undefined) continue;
      next = { ...next, [role]: { ...(next[role] ?? fieldAt(code)), [kind]: { text, receivedAt } } };
    }
  }
  return next;
}

/** The reports of a flight's fields: what was told of them stands as long as they are the same. */
export const reportsText = (places: Places): string =>
  JSON.stringify(
    ROLES.map((role) => [
      codeOf(places, role),
      places.plan?.[role]?.metar?.text,
      places.plan?.[role]?.taf?.text,
    ]),
  );
