import { EVERYTHING, impossible, notUnderstood, type Problem } from "./aspect.ts";
import { type DayTime, dayTimeOf } from "./day-time.ts";
import { type GroupList, problemOf } from "./group.ts";

export interface Header {
  readonly type?: "METAR" | "SPECI" | "TAF";
  readonly station?: string;
  /** Time of the observation, or of the issue of a forecast. */
  readonly issued?: DayTime;
  readonly auto?: true;
  readonly corrected?: true;
  readonly amended?: true;
  /** The report that should have been made is missing. */
  readonly nil?: true;
  readonly problems: readonly Problem[];
}

const TYPES = new Set(["METAR", "SPECI", "TAF"]);
const STATION = /^[A-Z][A-Z0-9]{3}$/u;
/** Words of four letters that are no station. */
const NO_STATION = new Set(["AUTO", "METAR", "LAST", "NEXT", "CAVO", "SPEC"]);
export const isStation = (token: string): boolean => STATION.test(token) && !NO_STATION.has(token);
export const isType = (token: string): boolean => TYPES.has(token);
export const isTime = (token: string): boolean => /^\d{6}Z$/u.test(token);
/** A time with a slip in it. */
const isNearlyTime = (token: string): boolean => /^[\dOIL]{3,9}Z$|^\d{6}$/u.test(token);

const NUMBERS = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"];

function faultOfTime(token: string): string {
  const digits = token.replace(/Z$/u, "");
  if (!token.endsWith("Z")) return "time group without its Z; time unknown";
  if (!/^\d+$/u.test(digits)) return "a letter in the time group; time unknown";
  if (digits.length !== 6)
    return `time group has ${NUMBERS[digits.length] ?? "too many"} digits; time unknown`;
  if (digits.slice(2, 4) === "24") return "hour 24 is only legal at the end of a TAF period";
  return "a day or a time that cannot be; time unknown";
}

type Flags = { auto?: true; corrected?: true; amended?: true; nil?: true };
function flagOf(token: string): keyof Flags | undefined {
  if (token === "AUTO") return "auto";
  if (token === "COR" || /^CC[A-Z]$/u.test(token)) return "corrected";
  if (token === "AMD") return "amended";
  if (token === "NIL") return "nil";
  return undefined;
}

/** Reads type, station, time and the words round them. */
export function readHeader(list: GroupList): Header {
  const problems: Problem[] = [];
  const flags: Flags = {};
  const takeFlags = (): void => {
    for (let flag = flagOf(list.token); flag !== undefined; flag = flagOf(list.token)) {
      flags[flag] = true;
      list.take("header");
    }
  };
  let type: Header["type"];
  while (list.token === "METAR" || list.token === "SPECI" || list.token === "TAF") {
    if (type !== undefined && type !== list.token)
      list.take("header", { fault: notUnderstood("a second type of report", "validity") });
    else {
      type = list.token;
      list.take("header");
    }
  }
  takeFlags();
  let station: string | undefined;
  let before = type ?? "";
  if (isStation(list.token)) {
    station = list.token;
    before = station;
    list.take("header");
  } else if (!list.done && (isTime(list.ahead(1)) || isNearlyTime(list.ahead(1)))) {
    list.take("header", { fault: notUnderstood("not a station; expected four letters", "validity") });
  } else if (!list.done) {
    problems.push(
      problemOf(list.token, { ...notUnderstood("no station before it", "validity"), outcome: "missing" }),
    );
  }
  let issued: DayTime | undefined;
  if (isTime(list.token) || isNearlyTime(list.token)) {
    const time = isTime(list.token) ? dayTimeOf(list.token.slice(0, 6)) : undefined;
    if (time === undefined || time.hour === 24)
      list.take("header", { fault: impossible(faultOfTime(list.token), "validity") });
    else {
      issued = time;
      list.take("header");
    }
  } else {
    const affects = list.done ? EVERYTHING : (["validity"] as const);
    problems.push(
      problemOf(before, { outcome: "missing", says: "no time group: age unknown, not usable", affects }),
    );
  }
  takeFlags();
  return {
    ...(type === undefined ? {} : { type }),
    ...(station === undefined ? {} : { station }),
    ...(issued === undefined ? {} : { issued }),
    ...flags,
    problems,
  };
}
