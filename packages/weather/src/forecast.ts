import { type Aspect, EVERYTHING, impossible, notUnderstood, type Problem, WHOLE_SKY } from "./aspect.ts";
import { crossChecks } from "./cross-checks.ts";
import { type DayTime, dayTimeOf } from "./day-time.ts";
import { foldElements } from "./elements.ts";
import { GroupList, problemOf, problemsOf } from "./group.ts";
import { readGroup } from "./groups/read-group.ts";
import { readHeader } from "./header.ts";
import { missingFrom, openOf } from "./missing.ts";
import type { Forecast, ForecastPeriod, PeriodKind } from "./report.ts";

interface PeriodHead {
  readonly kind: PeriodKind;
  readonly probability_percent?: 30 | 40;
  readonly from?: DayTime;
  readonly to?: DayTime;
}

const SPAN = /^(\d{4})\/(\d{4})$/u;
const spanOf = (token: string): readonly [DayTime, DayTime] | undefined => {
  const found = SPAN.exec(token);
  const [from, to] = [dayTimeOf(`${found?.[1] ?? ""}00`), dayTimeOf(`${found?.[2] ?? ""}00`)];
  return from === undefined || to === undefined || from.hour === 24 ? undefined : [from, to];
};

/** Whether an end lies before its start; over the end of a month the day begins anew. */
const endsBefore = (from: DayTime, to: DayTime): boolean => {
  const overMonth = from.day >= 28 && to.day <= 3;
  const hours = (to.day - from.day) * 24 + to.hour - from.hour;
  return !overMonth && hours <= 0;
};

const SPAN_SAYS = "no time from and to behind it: it may hold at any time";

/** Takes the words that begin a period; `undefined` when none begins here. */
function readPeriodHead(list: GroupList, period: number): PeriodHead | undefined {
  const { token } = list;
  const at = /^FM(\d{6})$/u.exec(token);
  if (at !== null) {
    const from = dayTimeOf(at[1] ?? "");
    const fault = impossible(
      "a day or a time that cannot be: the group may hold at any time",
      "validity",
      ...WHOLE_SKY,
    );
    list.take("forecast", from === undefined ? { fault } : {}, { period });
    return from === undefined ? { kind: "unclear" } : { kind: "FM", from };
  }
  const probability = /^PROB(30|40)$/u.exec(token)?.[1];
  const percent = probability === "30" ? 30 : probability === "40" ? 40 : undefined;
  const word = percent === undefined ? token : list.ahead(1);
  const change = word === "TEMPO" || word === "INTER" || word === "BECMG" ? word : undefined;
  if (percent === undefined && change === undefined) {
    const slip = /^FM[\dOIL/]{2,8}Z?$|^PROB\w*$|^T[EMP]{3,4}O$|^B[ECMG]{3,5}$/u.test(token);
    if (!slip && !SPAN.test(token)) return undefined;
    const says = slip
      ? "the beginning of a change, not understood"
      : "a time without the word that says how it changes";
    list.take(
      "forecast",
      { fault: notUnderstood(`${says}: it may hold at any time`, "validity", ...WHOLE_SKY) },
      { period },
    );
    if (slip && SPAN.test(list.token)) list.take("forecast", {}, { period });
    return { kind: "unclear" };
  }
  const words = percent !== undefined && change !== undefined ? 2 : 1;
  const kind: PeriodKind =
    percent === undefined
      ? (change ?? "unclear")
      : change === "TEMPO"
        ? "PROB TEMPO"
        : change === undefined
          ? "PROB"
          : "unclear";
  const odds: Pick<PeriodHead, "probability_percent"> =
    percent === undefined ? {} : { probability_percent: percent };
  const span = spanOf(list.ahead(words));
  if (span === undefined || endsBefore(...span)) {
    const wrong = SPAN.test(list.ahead(words));
    const says = span === undefined ? SPAN_SAYS : "it ends before it starts: it may hold at any time";
    list.take(
      "forecast",
      { count: wrong ? words + 1 : words, fault: impossible(says, "validity", ...WHOLE_SKY) },
      { period },
    );
    return { kind: "unclear", ...odds };
  }
  list.take("forecast", { count: words + 1 }, { period });
  return { kind, ...odds, from: span[0], to: span[1] };
}

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

export function decodeForecast(tokens: readonly string[]): Forecast {
  const list = new GroupList(tokens);
  const header = readHeader(list);
  const told: Problem[] = [...header.problems];
  const empty = list.done;
  const validity = empty || header.nil ? {} : readValidity(list, told);
  let nil = header.nil;
  let cancelled = false;
  while (list.token === "CNL" || list.token === "NIL") {
    if (list.token === "CNL") cancelled = true;
    else nil = true;
    list.take("header");
  }
  const ended = nil || cancelled;
  const { heads, remark } = ended ? { heads: [], remark: undefined } : readPeriods(list, validity);
  while (!list.done)
    list.take("forecast", {
      fault: notUnderstood("more text behind the end of the forecast: not used", ...EVERYTHING),
    });
  const nothing = list.groups.every(({ section, part }) => section !== "forecast" || part === undefined);
  const told0 = problemsOf(list.groups).map((problem) =>
    nothing && problem.says === "not understood"
      ? { ...problem, says: "not understood; no forecast content", affects: EVERYTHING }
      : problem,
  );
  told.push(...told0);
  const periods = heads.map((head, index): ForecastPeriod => {
    const groups = list.groups.filter(({ section, period }) => section === "forecast" && period === index);
    const elements = foldElements(groups);
    told.push(...crossChecks(groups, elements, index));
    const here = told.filter(({ period }) => period === undefined || period === index);
    if (stands(head.kind)) told.push(...missingFrom(elements, WHOLE_SKY, here, index));
    const open = openOf(told.filter(({ period }) => period === index));
    return {
      ...head,
      ...(stands(head.kind) ? endOf(heads, index, validity.validTo) : {}),
      text: groups.map(({ text }) => text).join(" "),
      elements,
      open,
    };
  });
  const why = nil ? "NIL" : cancelled ? "CNL" : undefined;
  if (why !== undefined) {
    const says =
      why === "NIL"
        ? "the forecast is missing"
        : "the forecast is cancelled: the earlier one may no longer be used, and there is none in its place";
    told.push(problemOf(why, { outcome: "missing", says, affects: EVERYTHING }));
  }
  const extremes = list.groups.flatMap(({ part }) =>
    part?.is === "temperature extreme" ? [part.extreme] : [],
  );
  const { station, issued } = header;
  const valid = validity.validFrom !== undefined || (nil ?? false);
  const open: readonly Aspect[] = openOf(told.filter(({ affects }) => affects.length > 0));
  return {
    kind: "forecast",
    ...(header.type === undefined ? { typeWordMissing: true } : {}),
    text: tokens.join(" "),
    tokens,
    groups: list.groups,
    problems: told,
    open,
    accepted: station !== undefined && issued !== undefined && valid,
    ...(station === undefined ? {} : { station }),
    ...(issued === undefined ? {} : { issued }),
    ...(header.corrected ? { corrected: true } : {}),
    ...(header.amended ? { amended: true } : {}),
    ...(nil ? { nil: true } : {}),
    ...(cancelled ? { cancelled: true } : {}),
    ...validity,
    periods,
    extremes,
    ...(remark === undefined ? {} : { remark }),
  };
}
