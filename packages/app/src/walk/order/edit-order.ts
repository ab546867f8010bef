import type { OrderedStop } from "@witnessmark/planner";

/** An order under edit, and the orders before it, so that every change can be taken back. */
export interface OrderEdit {
  readonly stops: readonly OrderedStop[];
  readonly before: readonly (readonly OrderedStop[])[];
}

export const beginEdit = (stops: readonly OrderedStop[]): OrderEdit => ({ stops, before: [] });

export const idsIn = (stops: readonly OrderedStop[]): readonly string[] =>
  stops.flatMap(({ steps }) => steps);

const changed = (edit: OrderEdit, stops: readonly OrderedStop[]): OrderEdit => ({
  stops: joined(stops),
  before: [...edit.before, edit.stops],
});

/** Another order as a whole: the planned one, or one that was found. */
export const replaced = (edit: OrderEdit, stops: readonly OrderedStop[]): OrderEdit => changed(edit, stops);

export const undone = ({ stops, before }: OrderEdit): OrderEdit => ({
  stops: before.at(-1) ?? stops,
  before: before.slice(0, -1),
});

/** A whole stop somewhere else. Nothing changes where that is no place of the list. */
export function stopMoved(edit: OrderEdit, from: number, to: number): OrderEdit {
  const stop = edit.stops[from];
  if (stop === undefined || to < 0 || to >= edit.stops.length || from === to) return edit;
  return changed(edit, edit.stops.toSpliced(from, 1).toSpliced(to, 0, stop));
}

/**
 * One step a place on, or back: past the edge of its stop it becomes the last, or the first, of the next stop where it
 * can be done there, else a stop of its own beyond it.
 *
 * @param servedAt whether a step can be done at a stance; its own is always one
 */
export function stepMoved(
  edit: OrderEdit,
  id: string,
  way: 1 | -1,
  servedAt: (id: string, stance: string) => boolean,
): OrderEdit {
  const at = edit.stops.findIndex(({ steps }) => steps.includes(id));
  const stop = edit.stops[at];
  if (stop === undefined) return edit;
  const place = stop.steps.indexOf(id);
  const other = stop.steps[place + way];
  if (other !== undefined) {
    const steps = stop.steps.with(place, other).with(place + way, id);
    return changed(edit, edit.stops.with(at, { ...stop, steps }));
  }
  const next = edit.stops[at + way];
  if (next === undefined) return edit;
  const rest = edit.stops.with(at, { ...stop, steps: stop.steps.filter((each) => each !== id) });
  const alone = { stance: stop.stance, steps: [id] };
  if (!servedAt(id, next.stance)) return changed(edit, rest.toSpliced(way > 0 ? at + 2 : at - 1, 0, alone));
  const steps = way > 0 ? [id, ...next.steps] : [...next.steps, id];
  return changed(edit, rest.with(at + way, { ...next, steps }));
}

/** Without stops at which nothing is done, and with neighbours at one stance made one. */
function joined(stops: readonly OrderedStop[]): readonly OrderedStop[] {
  const row: OrderedStop[] = [];
  for (const stop of stops) {
    const before = row.at(-1);
    if (stop.steps.length === 0) continue;
    if (before?.stance === stop.stance)
      row[row.length - 1] = { ...before, steps: [...before.steps, ...stop.steps] };
    else row.push(stop);
  }
  return row;
}
