import { InputError } from "@witnessmark/engine";

/*
 * Hybrid logical clock, as text that sorts: 15 figures of milliseconds since 1970 UTC, a hyphen, 5 figures of counter.
 * Source: Kulkarni, Demirbas et al., "Logical Physical Clocks and Consistent Snapshots in Globally Distributed
 * Databases", University at Buffalo, technical report 2014-04.
 */

/** How far ahead of its own wall time another's stamp may draw a clock. */
export const DRIFT_BOUND_MS = 5 * 60_000;

const COUNTER_MAX = 99_999;
/** Leaves room below 15 figures for counters that run over. */
const WALL_MAX_MS = 999_999_999_000_000;

export interface Merged {
  /** The clock to go on with. */
  readonly clock: string | null;
  /** `false` when the other stamp was too far ahead: it is kept with its event, and this clock does not follow it. */
  readonly merged: boolean;
  /** The other stamp minus this device's wall time; negative when behind. */
  readonly ahead_ms: number;
}

/** Whether a text is a stamp of this clock. */
export const isHlc = (text: string): boolean => /^\d{15}-\d{5}$/.test(text);

/** The milliseconds since 1970 UTC in a stamp. @throws {InputError} when it is no stamp */
export function hlcTime_ms(hlc: string): number {
  if (!isHlc(hlc)) {
    throw new InputError("not-a-number", "hlc", {
      expected: "15 figures of milliseconds, a hyphen, 5 figures of counter",
      received: JSON.stringify(hlc),
    });
  }
  return Number(hlc.slice(0, 15));
}

/**
 * The stamp of a new event: after `clock`, and at wall time when that is later. A wrong wall clock is never refused:
 * one before 1970 counts as 1970, one past the year 33 000 as that.
 *
 * @param clock the last stamp made or merged here; `null` before the first
 * @param wall_ms this device's clock, milliseconds since 1970 UTC
 * @throws {InputError} `not-a-number` when `wall_ms` is none
 */
export function tick(clock: string | null, wall_ms: number): string {
  const wall = wholeWall_ms(wall_ms);
  if (clock === null) return stamp(wall, 0);
  const last = hlcTime_ms(clock);
  if (wall > last) return stamp(wall, 0);
  const counter = Number(clock.slice(16)) + 1;
  return counter > COUNTER_MAX ? stamp(last + 1, 0) : stamp(last, counter);
}

/**
 * Takes in another's stamp, so that what is made next sorts after it. Never draws the clock past own wall time plus
 * the bound: one phone with a clock of next year would otherwise take every other with it.
 *
 * @param bound_ms 0 or more
 */
export function merge(
  clock: string | null,
  remote: string,
  wall_ms: number,
  bound_ms: number = DRIFT_BOUND_MS,
): Merged {
  const ahead_ms = hlcTime_ms(remote) - wholeWall_ms(wall_ms);
  if (ahead_ms > bound_ms) return { clock, merged: false, ahead_ms };
  return { clock: clock === null || remote > clock ? remote : clock, merged: true, ahead_ms };
}

const stamp = (time_ms: number, counter: number): string =>
  `${String(time_ms).padStart(15, "0")}-${String(counter).padStart(5, "0")}`;

function wholeWall_ms(wall_ms: number): number {
  if (Number.isNaN(wall_ms)) {
    throw new InputError("not-a-number", "wall_ms", {
      expected: "milliseconds since 1970 UTC",
      received: "NaN",
    });
  }
  return Math.floor(Math.min(Math.max(wall_ms, 0), WALL_MAX_MS));
}
