import { impossible, notUnderstood, WHOLE_SKY } from "./aspect.ts";
import { type DayTime, dayTimeOf } from "./day-time.ts";
import type { GroupList } from "./group.ts";
import { readGroup } from "./groups/read-group.ts";
import type { PeriodKind } from "./report.ts";

/** The words that begin a period of a forecast: how it changes, and when. */
export interface PeriodHead {
  readonly kind: PeriodKind;
  readonly probability_percent?: 30 | 40;
  readonly from?: DayTime;
  readonly to?: DayTime;
}

const SPAN = /^(\d{4})\/(\d{4})$/u;
/** ddhh/ddhh; hour 24 only at its end. */
export const spanOf = (token: string): readonly [DayTime, DayTime] | undefined => {
  const found = SPAN.exec(token);
  const [from, to] = [dayTimeOf(`${found?.[1] ?? ""}00`), dayTimeOf(`${found?.[2] ?? ""}00`)];
  return from === undefined || to === undefined || from.hour === 24 ? undefined : [from, to];
};

/** Whether an end lies before its start; over the end of a month the day begins anew. */
export const endsBefore = (from: DayTime, to: DayTime): boolean => {
  const overMonth = from.day >= 28 && to.day <= 3;
  const hours = (to.day - from.day) * 24 + to.hour - from.hour;
  return !overMonth && hours <= 0;
};

const ANY_TIME = "it may hold at any time";

/** FM091930 */
function readFrom(list: GroupList, period: number): PeriodHead | undefined {
  const digits = /^FM(\d{6})$/u.exec(list.token)?.[1];
  if (digits === undefined) return undefined;
  const from = dayTimeOf(digits);
  if (from !== undefined) {
    list.take("forecast", {}, { period });
    return { kind: "FM", from };
  }
  const fault = impossible(`a day or a time that cannot be: ${ANY_TIME}`, "validity", ...WHOLE_SKY);
  list.take("forecast", { fault }, { period });
  return { kind: "unclear" };
}

const SLIP =
  /^FM(?:[\dOIL/]{2,8}Z?)?$|^[A-Z]{1,3}\d{6}$|^PROB|^T[EMP]{2,5}O$|^TEMP|^B[ECMG]{3,5}|^INTE|\d{4}\/\d{4}/u;

/** Whether a word that no group knows stands before a time from and to. */
const leadsToTime = (list: GroupList): boolean =>
  SPAN.test(list.ahead(1)) &&
  readGroup({ tokens: [list.token], at: 0, section: "forecast", seen: new Set() }).part === undefined;

/** A beginning with a slip in it. What follows belongs to it, and not to the group before. */
function readUnclear(list: GroupList, period: number): PeriodHead | undefined {
  const bare = SPAN.test(list.token);
  if (!bare && !SLIP.test(list.token) && !leadsToTime(list)) return undefined;
  const says = bare
    ? "a time without the word that says how it changes"
    : "the beginning of a change, not understood";
  const fault = notUnderstood(`${says}: ${ANY_TIME}`, "validity", ...WHOLE_SKY);
  list.take("forecast", { count: !bare && SPAN.test(list.ahead(1)) ? 2 : 1, fault }, { period });
  return { kind: "unclear" };
}

/** How a change is worded, how many words that takes. */
function wordsOf(
  list: GroupList,
): (Omit<PeriodHead, "from" | "to"> & { readonly words: number }) | undefined {
  const { token } = list;
  if (token === "TEMPO" || token === "INTER" || token === "BECMG") return { kind: token, words: 1 };
  if (token !== "PROB30" && token !== "PROB40") return undefined;
  const odds = { probability_percent: token === "PROB30" ? 30 : 40 } as const;
  const next = list.ahead(1);
  if (next === "TEMPO") return { kind: "PROB TEMPO", ...odds, words: 2 };
  if (next === "INTER" || next === "BECMG") return { kind: "unclear", ...odds, words: 2 };
  return { kind: "PROB", ...odds, words: 1 };
}

/** Takes the words that begin a period; `undefined` when none begins here. */
export function readPeriodHead(list: GroupList, period: number): PeriodHead | undefined {
  const found = wordsOf(list);
  if (found === undefined) return readFrom(list, period) ?? readUnclear(list, period);
  const { words, ...head } = found;
  const span = spanOf(list.ahead(words));
  if (span !== undefined && !endsBefore(...span)) {
    const fault = notUnderstood(
      `odds of a change that no forecast gives: ${ANY_TIME}`,
      "validity",
      ...WHOLE_SKY,
    );
    list.take("forecast", { count: words + 1, ...(head.kind === "unclear" ? { fault } : {}) }, { period });
    return head.kind === "unclear" ? head : { ...head, from: span[0], to: span[1] };
  }
  const says = span === undefined ? "no time from and to behind it" : "it ends before it starts";
  const count = SPAN.test(list.ahead(words)) ? words + 1 : words;
  list.take(
    "forecast",
    { count, fault: impossible(`${says}: ${ANY_TIME}`, "validity", ...WHOLE_SKY) },
    { period },
  );
  return { ...head, kind: "unclear" };
}
