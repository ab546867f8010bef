import {
  doubtful,
  EVERYTHING,
  impossible,
  notObserved,
  notUnderstood,
  type Problem,
  WHOLE_OBSERVATION,
  WHOLE_SKY,
} from "./aspect.ts";
import { crossChecks } from "./cross-checks.ts";
import { type Elements, foldElements } from "./elements.ts";
import { type Group, GroupList, problemOf, problemsOf } from "./group.ts";
import { readGroup } from "./groups/read-group.ts";
import { type Header, readHeader } from "./header.ts";
import { missingFrom, openOf } from "./missing.ts";
import { remarkChecks, seaLevelPressure_Pa } from "./remark-checks.ts";
import { readRemark } from "./remarks/read-remark.ts";
import type { Remark } from "./remarks/remark.ts";
import type { Observation, Trend } from "./report.ts";

interface TrendHead {
  readonly change: Trend["change"];
  times: Omit<Trend, "change" | "elements">;
}

const clock = (digits: string): boolean => Number(digits.slice(0, 2)) <= 24 && Number(digits.slice(2)) <= 59;

/** FM0900, TL1700, AT1800 behind BECMG or TEMPO. */
function readTrendTime(list: GroupList, head: TrendHead, period: number): boolean {
  const found = /^(FM|TL|AT)(\d{4})$/u.exec(list.token);
  if (found === null) return false;
  const [, word, digits = ""] = found;
  const name = word === "FM" ? "from_UTC" : word === "TL" ? "until_UTC" : "at_UTC";
  if (!clock(digits) || head.times[name] !== undefined) {
    const fault = impossible("time of a trend that cannot be", ...WHOLE_SKY);
    list.take("trend", { fault }, { period });
    return true;
  }
  head.times = { ...head.times, [name]: digits };
  list.take("trend", {}, { period });
  return true;
}

/** Takes NOSIG; behind a change it contradicts it. */
function readQuiet(list: GroupList, period: number | undefined): boolean {
  if (list.token !== "NOSIG") return false;
  if (period === undefined) list.take("body");
  else
    list.take(
      "trend",
      { fault: doubtful("no significant change, behind a change", ...WHOLE_SKY) },
      { period },
    );
  return true;
}

/** Takes one group of weather; `seen` learns what it was about. */
function readOne(list: GroupList, period: number | undefined, seen: Set<string>): void {
  const section = period === undefined ? "body" : "trend";
  const read = readGroup({ tokens: list.tokens, at: list.at, section, seen });
  const stray =
    period !== undefined && read.part?.is === "runway state" && read.fault === undefined
      ? doubtful("runway state inside the trend, where it does not belong", "runway")
      : undefined;
  list.take(
    section,
    stray === undefined ? read : { ...read, fault: stray },
    period === undefined ? {} : { period },
  );
  for (const name of [read.part?.is, ...(read.fault?.affects ?? [])]) if (name !== undefined) seen.add(name);
}

/** Reads body and trends up to RMK; the trends begin with the first BECMG or TEMPO. Whether NOSIG is among them. */
function readBody(list: GroupList, heads: TrendHead[]): boolean {
  let quiet = false;
  let seen = new Set<string>();
  while (!list.done && list.token !== "RMK") {
    const { token } = list;
    if (token === "BECMG" || token === "TEMPO") {
      heads.push({ change: token, times: {} });
      list.take("trend", {}, { period: heads.length - 1 });
      seen = new Set();
      continue;
    }
    const head = heads.at(-1);
    const period = head === undefined ? undefined : heads.length - 1;
    if (head !== undefined && readTrendTime(list, head, heads.length - 1)) continue;
    if (readQuiet(list, period)) quiet = true;
    else readOne(list, period, seen);
  }
  return quiet;
}

function readRemarks(list: GroupList, header: Header): readonly Remark[] {
  if (list.done) return [];
  list.take("remarks");
  const { hour, minute } = header.issued ?? { hour: 0, minute: 0 };
  while (!list.done) {
    const place = { tokens: list.tokens, at: list.at, hour, minute };
    const reads = readRemark(place);
    const fault = reads.find((read) => read.fault !== undefined)?.fault;
    const remarks = reads.flatMap(({ remark }) => (remark === undefined ? [] : [remark]));
    const count = reads[0]?.count ?? 1;
    // a time of a remark that counts minutes from a report whose own time is unknown is not known either
    list.take("remarks", fault === undefined ? { count } : { count, fault }, { remarks });
  }
  return list.groups.flatMap(({ remarks }) => remarks ?? []);
}

/** What the station's sensors cannot tell, where that leaves an answer open. */
const sensorProblems = (remarks: readonly Remark[]): readonly Problem[] =>
  remarks.flatMap((remark) =>
    remark.is === "sensor" && remark.code === "PWINO"
      ? [problemOf(remark.code, notObserved(remark.says, "weather"))]
      : [],
  );

const inPeriod = (groups: readonly Group[], section: Group["section"], period?: number): readonly Group[] =>
  groups.filter((group) => group.section === section && group.period === period);

export function decodeObservation(tokens: readonly string[]): Observation {
  const list = new GroupList(tokens);
  const header = readHeader(list);
  const heads: TrendHead[] = [];
  const empty = list.done;
  const quiet = header.nil ? false : readBody(list, heads);
  const remarks = header.nil ? [] : readRemarks(list, header);
  while (!list.done)
    list.take("body", { fault: notUnderstood("more text behind NIL: not used", ...EVERYTHING) });
  const body = inPeriod(list.groups, "body");
  const elements: Elements = foldElements(body);
  const trends = heads.map(({ change, times }, index): Trend => {
    const groups = inPeriod(list.groups, "trend", index);
    return { change, ...times, elements: foldElements(groups) };
  });
  const seaLevel_Pa = seaLevelPressure_Pa(remarks, elements.pressure);
  const told: Problem[] = [
    ...header.problems,
    ...problemsOf(list.groups),
    ...crossChecks(body, elements),
    ...trends.flatMap((trend, index) =>
      crossChecks(inPeriod(list.groups, "trend", index), trend.elements, index),
    ),
    ...remarkChecks(elements, remarks, list.groups),
    ...sensorProblems(remarks),
  ];
  const missing =
    header.nil || empty
      ? []
      : missingFrom(
          elements,
          WHOLE_OBSERVATION,
          told.filter(({ period }) => period === undefined),
        );
  const problems = header.nil
    ? [
        ...told,
        problemOf("NIL", {
          outcome: "missing",
          says: "the report is missing; nothing was observed",
          affects: EVERYTHING,
        }),
      ]
    : [...told, ...missing];
  const { station, issued } = header;
  return {
    kind: "observation",
    type: header.type === "SPECI" ? "SPECI" : "METAR",
    ...(header.type === undefined ? { typeWordMissing: true } : {}),
    text: tokens.join(" "),
    tokens,
    groups: list.groups,
    problems,
    open: openOf(problems.filter(({ period }) => period === undefined)),
    accepted: station !== undefined && issued !== undefined,
    ...(station === undefined ? {} : { station }),
    ...(issued === undefined ? {} : { issued }),
    ...(header.auto ? { auto: true } : {}),
    ...(header.corrected ? { corrected: true } : {}),
    ...(header.amended ? { amended: true } : {}),
    ...(header.nil ? { nil: true } : {}),
    elements,
    ...(quiet ? { noSignificantChange: true } : {}),
    trends,
    remarks,
    ...(seaLevel_Pa === undefined ? {} : { seaLevelPressure_Pa: seaLevel_Pa }),
  };
}
