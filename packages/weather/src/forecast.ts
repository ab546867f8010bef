import { EVERYTHING, impossible, notUnderstood, type Problem, WHOLE_SKY } from "./aspect.ts";
import { crossChecks } from "./cross-checks.ts";
import type { DayTime } from "./day-time.ts";
import { foldElements } from "./elements.ts";
import { endsBefore, type PeriodHead, readPeriodHead, spanOf } from "./forecast-periods.ts";
import { GroupList, problemOf, problemsOf } from "./group.ts";
import { readGroup } from "./groups/read-group.ts";
import { readHeader } from "./header.ts";
import { missingFrom, openOf } from "./missing.ts";
import type { Forecast, ForecastPeriod, PeriodKind } from "./report.ts";

/** Words on amendments and on the next forecast, which stand at the end and are no weather. */
const REMARK = /^(?:RMK|NXT|LAST|FCST|NO)$/u;
const AMENDMENTS = /^AMD (?:LTD TO|NOT SKED)|^NO AMD|^LAST NO AMD/u;

/** Takes a remark to the end of the forecast. */
function readRemark(list: GroupList): string | undefined {
  const rest = list.tokens.slice(list.at).join(" ");
  const amendments = AMENDMENTS.test(rest);
  if (!amendments && !REMARK.test(list.token) && list.token !== "AMD") return undefined;
  const fault = notUnderstood("remark of the forecaster, not understood: read it", "remarks");
  list.take("remarks", { count: list.tokens.length - list.at, ...(amendments ? {} : { fault }) });
  return rest;
}

interface Validity {
  readonly validFrom?: DayTime;
  readonly validTo?: DayTime;
}
function readValidity(list: GroupList, problems: Problem[]): Validity {
  if (!/^\d{3,5}\/\d{3,5}$/u.test(list.token)) {
    problems.push(
      problemOf(list.token, {
        outcome: "missing",
        says: "no time of validity where it is expected",
        affects: ["validity"],
      }),
    );
    return {};
  }
  const span = spanOf(list.token);
  const fault =
    span === undefined
      ? impossible("a validity whose days or hours cannot be", "validity")
      : endsBefore(...span)
        ? impossible("validity ends before it starts", "validity")
        : undefined;
  list.take("header", fault === undefined ? {} : { fault });
  return span === undefined || fault !== undefined ? {} : { validFrom: span[0], validTo: span[1] };
}

function readPeriods(
  list: GroupList,
  validity: Validity,
): { heads: PeriodHead[]; remark: string | undefined } {
  const heads: PeriodHead[] = [
    { kind: "initial", ...(validity.validFrom === undefined ? {} : { from: validity.validFrom }) },
  ];
  let seen = new Set<string>();
  let remark: string | undefined;
  while (!list.done && remark === undefined) {
    const head = readPeriodHead(list, heads.length);
    if (head !== undefined) {
      heads.push(head);
      seen = new Set();
      continue;
    }
    remark = readRemark(list);
    if (remark !== undefined) break;
    const read = readGroup({ tokens: list.tokens, at: list.at, section: "forecast", seen });
    list.take("forecast", read, { period: heads.length - 1 });
    if (read.part !== undefined) seen.add(read.part.is);
  }
  return { heads, remark };
}

/** The end of what stands until the next such: the beginning of the next FM, or the end of the forecast. */
function endOf(
  heads: readonly PeriodHead[],
  index: number,
  validTo: DayTime | undefined,
): Pick<PeriodHead, "to"> {
  const next = heads.slice(index + 1).find(({ kind }) => kind === "FM");
  const to = next === undefined ? validTo : next.from;
  return to === undefined ? {} : { to };
}

const stands = (kind: PeriodKind): boolean => kind === "initial" || kind === "FM";

/** A forecast of which nothing was understood says nothing at all. */
function groupProblems(list: GroupList): readonly Problem[] {
  const nothing = list.groups.every(({ section, part }) => section !== "forecast" || part === undefined);
  return problemsOf(list.groups).map((problem) =>
    nothing && problem.says === "not understood"
      ? { ...problem, says: "not understood; no forecast content", affects: EVERYTHING }
      : problem,
  );
}

/** What a period says, and what it leaves open; its own problems are added to those told. */
function periodOf(
  list: GroupList,
  heads: readonly PeriodHead[],
  index: number,
  validTo: DayTime | undefined,
  told: Problem[],
): ForecastPeriod {
  const head = heads[index] ?? { kind: "unclear" };
  const groups = list.groups.filter(({ section, period }) => section === "forecast" && period === index);
  const elements = foldElements(groups);
  told.push(...crossChecks(groups, elements, index));
  const here = told.filter(({ period }) => period === undefined || period === index);
  if (stands(head.kind)) told.push(...missingFrom(elements, WHOLE_SKY, here, index));
  return {
    ...head,
    ...(stands(head.kind) ? endOf(heads, index, validTo) : {}),
    text: groups.map(({ text }) => text).join(" "),
    elements,
    open: openOf(told.filter(({ period }) => period === index)),
  };
}

/** A forecast that is not there, or no longer. */
function absence(nil: boolean, cancelled: boolean): readonly Problem[] {
  if (!nil && !cancelled) return [];
  const says = nil
    ? "the forecast is missing"
    : "the forecast is cancelled: the earlier one may no longer be used, and there is none in its place";
  return [problemOf(nil ? "NIL" : "CNL", { outcome: "missing", says, affects: EVERYTHING })];
}

export function decodeForecast(tokens: readonly string[]): Forecast {
  const list = new GroupList(tokens);
  const header = readHeader(list);
  const told: Problem[] = [...header.problems];
  const validity = list.done || header.nil ? {} : readValidity(list, told);
  let nil = header.nil ?? false;
  let cancelled = false;
  while (list.token === "CNL" || list.token === "NIL") {
    if (list.token === "CNL") cancelled = true;
    else nil = true;
    list.take("header");
  }
  const { heads, remark } = nil || cancelled ? { heads: [], remark: undefined } : readPeriods(list, validity);
  while (!list.done)
    list.take("forecast", {
      fault: notUnderstood("more text behind the end of the forecast: not used", ...EVERYTHING),
    });
  told.push(...groupProblems(list));
  const periods = heads.map((_, index) => periodOf(list, heads, index, validity.validTo, told));
  told.push(...absence(nil, cancelled));
  const { station, issued } = header;
  return {
    kind: "forecast",
    ...(header.type === undefined ? { typeWordMissing: true } : {}),
    text: tokens.join(" "),
    tokens,
    groups: list.groups,
    problems: told,
    open: openOf(told),
    accepted: station !== undefined && issued !== undefined && (validity.validFrom !== undefined || nil),
    ...(station === undefined ? {} : { station }),
    ...(issued === undefined ? {} : { issued }),
    ...(header.corrected ? { corrected: true } : {}),
    ...(header.amended ? { amended: true } : {}),
    ...(nil ? { nil: true } : {}),
    ...(cancelled ? { cancelled: true } : {}),
    ...validity,
    periods,
    extremes: list.groups.flatMap(({ part }) => (part?.is === "temperature extreme" ? [part.extreme] : [])),
    ...(remark === undefined ? {} : { remark }),
  };
}
