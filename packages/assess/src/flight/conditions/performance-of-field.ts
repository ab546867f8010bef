import type { Book } from "@witnessmark/book";
import { remembered } from "../remembered.ts";
import { whenAsked } from "../when-asked.ts";
import { type AbortFigures, abortOf } from "./abort.ts";
import { type ClimbFigures, climbOf } from "./climb.ts";
import type { DistanceAnswer } from "./distances.ts";
import type { FieldFigures } from "./field-figures.ts";
import { attempt, type Figure, type Missing, onceMissing } from "./figure.ts";
import type { PerformanceAsk } from "./read-performance.ts";
import { phaseOf } from "./role.ts";
import { type SpeedFigures, speedsOf } from "./speeds.ts";

export interface ClimbsOfField {
  /** At the departure, where the book has a table of it or somebody asks for a gradient. */
  readonly climb?: Figure<ClimbFigures>;
  /** Where one lands, and does not: at the landing mass, where the book has a table of it. */
  readonly goAround?: Figure<ClimbFigures>;
}

export interface PerformanceFigures extends ClimbsOfField {
  /** Where the book has stall speeds; looked up when somebody asks. */
  readonly speeds?: Figure<SpeedFigures> | undefined;
  /** At the departure, where the book has speeds for it; looked up when somebody asks. */
  readonly abort?: Figure<AbortFigures> | undefined;
}

/** What may stop a flight at once, and what at most warns when somebody asks. */
export interface PerformanceFound extends ClimbsOfField {
  readonly speeds: () => Figure<SpeedFigures> | undefined;
  readonly abort: () => Figure<AbortFigures> | undefined;
}

const none = (): undefined => undefined;

export interface PerformanceWanted {
  readonly isByInstruments: boolean;
  /** What the pilot asks for; a figure without a value is one that was mistyped. */
  readonly ownGradient?: Figure<number> | undefined;
}

type Found<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly missing: readonly Missing[] };

/** Without a value where the engine refused. */
type Answered<T> = Figure<Found<T> | undefined>;

/** Of each point at which the tables are asked: a report that leaves it where it was moves none of them. */
const rememberedSpeeds = remembered<Answered<SpeedFigures>>();
const rememberedClimb = remembered<Answered<ClimbFigures>>();
const rememberedGoAround = remembered<Answered<ClimbFigures>>();
const rememberedAbort = remembered<Answered<AbortFigures>>();

/** What a table answered, as a figure that holds as long as what it was asked with. */
function figure<T>(asked: Figure<unknown>, found: Answered<T>): Figure<T> | undefined {
  const { value: _, ...rest } = asked;
  if (found.value === undefined) {
    const missing = onceMissing([...rest.missing, ...found.missing]);
    return missing.length === rest.missing.length ? undefined : { ...rest, missing };
  }
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
): PerformanceFound {
  const { performance } = book;
  if (performance === undefined || runway === undefined || asked.value === undefined)
    return { speeds: none, abort: none };
  const at = asked.value;
  const ask: PerformanceAsk = { performance, runway, at };
  const { condition } = planned;
  const phase = phaseOf(role);
  const landing = phase === "landing" ? distance.value : undefined;
  const fieldWinds = weather.winds.value;
  const speeds = whenAsked(() =>
    figure(
      asked,
      rememberedSpeeds(at, [performance, runway, phase, fieldWinds, landing], () =>
        attempt(() => {
          const winds = (fieldWinds ?? []).map(({ wind }) => wind);
          const found = speedsOf({ ...ask, phase, winds, landing });
          return found?.ok === true ? { ok: true, value: found.speeds } : found;
        }, "the speeds"),
      ),
    ),
  );
  if (phase === "landing") {
    const goAround = figure(
      asked,
      rememberedGoAround(at, [performance, runway, condition, isByInstruments], () =>
        attempt(() => {
          const found = climbOf({ ...ask, kind: "go-around-gradient", planned, isByInstruments });
          return found?.ok === true ? { ok: true, value: found.climb } : found;
        }, "the go-around"),
      ),
    );
    return { speeds, abort: none, ...(goAround === undefined ? {} : { goAround }) };
  }
  const own_1 = ownGradient?.value;
  const climb = figure(
    asked,
    rememberedClimb(at, [performance, runway, condition, isByInstruments, own_1], () =>
      attempt(() => {
        const found = climbOf({ ...ask, planned, isByInstruments, own_1 });
        return found?.ok === true ? { ok: true, value: found.climb } : found;
      }, "the climb"),
    ),
  );
  const takeOff = distance.value;
  const abort = whenAsked(() =>
    takeOff === undefined || condition === undefined
      ? undefined
      : figure(
          asked,
          rememberedAbort(at, [performance, runway, condition, takeOff], () =>
            attempt(() => {
              const found = abortOf({ ...ask, condition, takeOff });
              return found?.ok === true ? { ok: true, value: found.abort } : found;
            }, "the point to stop"),
          ),
        ),
  );
  return {
    speeds,
    abort,
    ...(climb === undefined
      ? {}
      : { climb: { ...climb, missing: onceMissing([...climb.missing, ...(ownGradient?.missing ?? [])]) } }),
  };
}
