import { toSI, type Wind } from "@witnessmark/engine";
import type { PlannedField, Read } from "@witnessmark/ledger";
import { type ConditionFault, typedSI, type Wanted } from "./faults.ts";
import type { Origin } from "./figure.ts";
import { TYPED_COUNTS_MS } from "./report-figures.ts";
import type { FieldRole } from "./role.ts";

const degC = (value: number): number => toSI(value, "degC");

/** What can be: wider than any place has seen, narrow enough to tell a wrong unit. */
const WANTED = {
  windFrom: {
    dimension: "angle",
    name: "wind direction",
    range: [0, 2 * Math.PI + 1e-9],
    unit: "deg",
    step: 1,
  },
  windSpeed: { dimension: "speed", name: "wind speed", range: [0, toSI(120, "kt")], unit: "kt", step: 1 },
  windGust: { dimension: "speed", name: "gust", range: [0, toSI(150, "kt")], unit: "kt", step: 1 },
  oat: { dimension: "temperature", name: "temperature", range: [degC(-70), degC(58)], unit: "degC", step: 1 },
  dewPoint: {
    dimension: "temperature",
    name: "dew point",
    range: [degC(-70), degC(45)],
    unit: "degC",
    step: 1,
  },
  qnh: { dimension: "pressure", name: "altimeter setting", range: [85_000, 109_000], unit: "hPa", step: 1 },
  visibility: { dimension: "length", name: "visibility", range: [0, 200_000], unit: "m", step: 1 },
  ceiling: { dimension: "length", name: "ceiling", range: [0, toSI(60_000, "ft")], unit: "ft", step: 1 },
} as const satisfies Record<string, Wanted>;

type Part = keyof typeof WANTED;

/** A value that was typed: in SI, or why it cannot be used. */
export type TypedPart<T> = { readonly value: T } | { readonly says: string };

/** What a pilot typed of a field, in SI. What is absent was not typed. */
export interface TypedFigures {
  readonly origin: Origin;
  readonly age_ms: number;
  readonly countsUntil_ms: number;
  readonly tooOld: boolean;
  readonly wind?: TypedPart<Wind>;
  readonly oat_K?: TypedPart<number>;
  readonly dewPoint_K?: TypedPart<number>;
  readonly qnh_Pa?: TypedPart<number>;
  readonly visibility_m?: TypedPart<number>;
  readonly ceiling_m?: TypedPart<number>;
  readonly faults: readonly ConditionFault[];
}

/** Clocks differ; further ahead than this a time is a slip. */
const AHEAD_MS = 5 * 60_000;

type Typed = NonNullable<PlannedField["typed"]>;

function windOf(
  typed: Typed,
  read: (part: Part, given: Read) => TypedPart<number>,
): TypedPart<Wind> | undefined {
  const { windFrom, windVariable, windSpeed, windGust } = typed;
  const parts = [windFrom, windVariable, windSpeed, windGust];
  if (parts.every((part) => part === undefined)) return undefined;
  if (windSpeed === undefined) return { says: "wind: a direction or a gust without the speed of the wind" };
  const speed = read("windSpeed", windSpeed);
  const gust = windGust === undefined ? undefined : read("windGust", windGust);
  const from = windFrom === undefined ? undefined : read("windFrom", windFrom);
  for (const one of [speed, gust, from]) if (one !== undefined && "says" in one) return one;
  if ("says" in speed || (gust !== undefined && "says" in gust) || (from !== undefined && "says" in from))
    return { says: "wind: not understood" };
  if (gust !== undefined && gust.value < speed.value)
    return { says: "gust: expected at least the steady wind" };
  return {
    value: {
      // variable, or without a direction: it may come from anywhere
      direction:
        from === undefined || windVariable === true
          ? { kind: "variable" }
          : { kind: "from", from_rad: from.value % (2 * Math.PI) },
      speed_mPerS: speed.value,
      ...(gust === undefined ? {} : { gust_mPerS: gust.value }),
    },
  };
}

/** What was typed for a field; undefined when nothing was. A time that cannot be is a fault, and nothing is used. */
export function typedOf(
  planned: PlannedField,
  role: FieldRole,
  now_ms: number,
): TypedFigures | { readonly unusable: ConditionFault } | undefined {
  const { typed } = planned;
  if (typed === undefined) return undefined;
  const at_ms = Date.parse(typed.observedAt);
  const where = (part: string): ConditionFault["where"] => ({ kind: "typed", role, part });
  if (!Number.isFinite(at_ms) || at_ms > now_ms + AHEAD_MS)
    return { unusable: { where: where("observedAt"), says: "what was typed is dated ahead of now" } };
  const faults: ConditionFault[] = [];
  const read = (part: Part, given: Read): TypedPart<number> => {
    const found = typedSI(given, WANTED[part]);
    if ("says" in found) faults.push({ where: where(part), says: found.says });
    return found;
  };
  const one = <Name extends string>(name: Name, part: Part): { readonly [N in Name]?: TypedPart<number> } => {
    const given = typed[part];
    // the key is the name that was asked for
    return (given === undefined ? {} : { [name]: read(part, given) }) as { [N in Name]?: TypedPart<number> };
  };
  const wind = windOf(typed, read);
  if (wind !== undefined && "says" in wind && faults.length === 0)
    faults.push({ where: where("windSpeed"), says: wind.says });
  return {
    origin: { kind: "typed", at_ms },
    age_ms: now_ms - at_ms,
    countsUntil_ms: at_ms + TYPED_COUNTS_MS,
    tooOld: now_ms > at_ms + TYPED_COUNTS_MS,
    ...(wind === undefined ? {} : { wind }),
    ...one("oat_K", "oat"),
    ...one("dewPoint_K", "dewPoint"),
    ...one("qnh_Pa", "qnh"),
    ...one("visibility_m", "visibility"),
    ...one("ceiling_m", "ceiling"),
    faults,
  };
}
