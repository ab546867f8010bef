import { daysBetween } from "@witnessmark/engine";
import type { AircraftState, ComponentMove, Done, LocalDate } from "@witnessmark/ledger";
import { offsetOf_min } from "../words/local-time.ts";
import { localDayOf } from "./local-day.ts";
import { countedNow, totalWhenShown } from "./use-of-flight.ts";

/** The component of a place on the aircraft that is there now, or the last that was. */
export interface ComponentAboard {
  readonly serial: string;
  /** The day on which it was fitted, or on which it was removed and nothing put in its place. */
  readonly on: LocalDate;
  readonly isFitted: boolean;
  readonly ran: ComponentMove["ran"];
  readonly event: string;
  /**
   * What the aircraft's counter had counted when the component had counted nothing: its own count is the aircraft's
   * less this. Below zero for a component that ran elsewhere; undefined where that is not known.
   */
  readonly began: (counter: string) => number | undefined;
}

/** Undefined where nobody has written down which one is fitted: it is then taken for the one the aircraft came with. */
export function componentAboard(state: AircraftState, component: string): ComponentAboard | undefined {
  const moves = state.componentMoves.filter((move) => move.component === component);
  // by its day, and of one day as it was written down
  const last = moves.toSorted((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0)).at(-1);
  if (last === undefined) return undefined;
  return {
    serial: last.serial,
    on: last.on,
    isFitted: last.fitted,
    ran: last.ran,
    event: last.event,
    began: (counter) => {
      const ran = last.ran[counter];
      const then = last.fitted ? totalAtFitting(state, counter, last) : undefined;
      return ran === undefined || then === undefined ? undefined : then - ran;
    },
  };
}

/** What a component has run by now; undefined while it is not aboard, or a figure for it is not known. */
export function componentRan(
  state: AircraftState,
  aboard: ComponentAboard,
  counter: string,
): number | undefined {
  const [now, began] = [countedNow(state, counter), aboard.began(counter)];
  return now === undefined || began === undefined ? undefined : Math.max(0, now - began);
}

function totalAtFitting(state: AircraftState, counter: string, move: ComponentMove): number | undefined {
  const shown = move.counters?.[counter];
  if (shown !== undefined) return totalWhenShown(state, counter, shown, move.on);
  // the last reading before it went in: what was flown between is then counted against it, to the safe side
  const before = state.counters
    .get(counter)
    ?.findLast(({ at_ms, at }) => daysBetween(localDayOf(at_ms, offsetOf_min(at)), move.on) >= 0);
  return before?.total;
}

/** What was done to the component that is aboard: what was done to the one before it does not count for it. */
export const donesOfAboard = (dones: readonly Done[], aboard: ComponentAboard): readonly Done[] =>
  dones.filter(({ serial, on }) => (serial === undefined ? on >= aboard.on : serial === aboard.serial));
