import type { KnownEvent } from "../event.ts";
import { hlcTime_ms } from "../hlc.ts";
import type { CounterReading } from "../record-state.ts";
import { type Draft, originOf } from "./draft.ts";

type Event<T extends KnownEvent["type"]> = Extract<KnownEvent, { type: T }>;

/** The moment that a person said; the stamp of the event where what they said is no time. */
export function saidMoment_ms(at: string, event: KnownEvent): number {
  const said_ms = Date.parse(at);
  return Number.isNaN(said_ms) ? hlcTime_ms(event.hlc) : said_ms;
}

export function foldDone(draft: Draft, event: Event<"timedItem.done">): void {
  draft.listIn("timedDone", event.body.item).push({ ...originOf(event), ...event.body });
}

export function foldCountersRead(draft: Draft, event: Event<"counters.read">): void {
  const at_ms = saidMoment_ms(event.body.at, event);
  for (const [counter, shown] of Object.entries(event.body.counters)) {
    addReading(draft, counter, { ...originOf(event), at: event.body.at, at_ms, shown });
  }
}

/** The new meter goes on from what the old one showed last. */
export function foldReplaced(draft: Draft, event: Event<"counter.replaced">): void {
  const { counter, at, showed, shows } = event.body;
  const said = { ...originOf(event), at, at_ms: saidMoment_ms(at, event) };
  addReading(draft, counter, { ...said, shown: showed });
  const total = (draft.state.counters.get(counter)?.at(-1)?.total ?? showed) - shows;
  addReading(draft, counter, { ...said, shown: shows }, total);
}

/** @param offset what earlier meters had counted, when the meter was changed */
function addReading(
  draft: Draft,
  counter: string,
  said: Omit<CounterReading, "total" | "backwards">,
  offset?: number,
): void {
  const readings = draft.listIn("counters", counter);
  const last = readings.at(-1);
  const carried = offset ?? (last === undefined ? 0 : last.total - last.shown);
  readings.push({
    ...said,
    total: said.shown + carried,
    backwards: offset === undefined && last !== undefined && said.shown < last.shown,
  });
}
