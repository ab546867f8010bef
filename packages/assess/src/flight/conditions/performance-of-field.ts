import type { Book } from "@witnessmark/book";
import { type AbortFigures, abortOf } from "./abort.ts";
import { type ClimbFigures, climbOf } from "./climb.ts";
import type { DistanceAnswer } from "./distances.ts";
import type { FieldFigures } from "./field-figures.ts";
import { derived, type Figure, type Missing, onceMissing } from "./figure.ts";
import type { PerformanceAsk } from "./read-performance.ts";
import { phaseOf } from "./role.ts";
import { type SpeedFigures, speedsOf } from "./speeds.ts";

export interface PerformanceFigures {
  /** At the departure, where the book has a table of it or somebody asks for a gradient. */
  readonly climb?: Figure<ClimbFigures>;
  /** Where the book has stall speeds. */
  readonly speeds?: Figure<SpeedFigures>;
  /** At the departure, where the book has speeds for it. */
  readonly abort?: Figure<AbortFigures>;
}

export interface PerformanceWanted {
  readonly isByInstruments: boolean;
  /** What the pilot asks for; a figure without a value is one that was mistyped. */
  readonly ownGradient?: Figure<number> | undefined;
}

type Found<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly missing: readonly Missing[] };

/** What a table answered, as a figure that holds as long as what it was asked with. */
function figure<T>(
  asked: Figure<unknown>,
  what: string,
  find: () => Found<T> | undefined,
): Figure<T> | undefined {
  const { value: _, ...rest } = asked;
  const found = derived({ ...rest, value: true }, what, find);
  if (found.value === undefined)
    return found.missing.length === rest.missing.length ? undefined : { ...rest, missing: found.missing };
  return found.value.ok
    ? { ...rest, value: found.value.value }
    : { ...rest, missing: onceMissing([...rest.missing, ...found.value.missing]) };
}

/** What the tables say of a field beside its distances, from what the distance there was asked with. */
export function performanceOfField(
  book: Book,
  { role, planned, runway, weather }: Pick<FieldFigures, "role" | "planned" | "runway" | "weather">,
  distance: Figure<DistanceAnswer>,
  asked: Figure<PerformanceAsk["at"]>,
  { isByInstruments, ownGradient }: PerformanceWanted,
): PerformanceFigures {
  const { performance } = book;
  if (performance === undefined || runway === undefined || asked.value === undefined) return {};
  const ask: PerformanceAsk = { performance, runway, at: asked.value };
  const { condition } = planned;
  const phase = phaseOf(role);
  const speeds = figure<SpeedFigures>(asked, "the speeds", () => {
    const winds = (weather.winds.value ?? []).map(({ wind }) => wind);
    const found = speedsOf({
      ...ask,
      phase,
      winds,
      landing: phase === "landing" ? distance.value : undefined,
    });
    return found?.ok === true ? { ok: true, value: found.speeds } : found;
  });
  const told = speeds === undefined ? {} : { speeds };
  if (phase === "landing") return told;
  const climb = figure<ClimbFigures>(asked, "the climb", () => {
    const found = climbOf({ ...ask, condition, isByInstruments, own_1: ownGradient?.value });
    return found?.ok === true ? { ok: true, value: found.climb } : found;
  });
  const takeOff = distance.value;
  const abort =
    takeOff === undefined
      ? undefined
      : figure<AbortFigures>(asked, "the point to stop", () => {
          const found = abortOf({ ...ask, condition, takeOff });
          return found?.ok === true ? { ok: true, value: found.abort } : found;
        });
  return {
    ...told,
    ...(climb === undefined
      ? {}
      : { climb: { ...climb, missing: onceMissing([...climb.missing, ...(ownGradient?.missing ?? [])]) } }),
    ...(abort === undefined ? {} : { abort }),
  };
}
