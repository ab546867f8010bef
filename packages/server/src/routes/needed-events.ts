import { setImmediate } from "node:timers/promises";
import { type LedgerEvent, LongPast } from "@witnessmark/ledger";
import type { KeptEvent, OperatorStore, Page } from "@witnessmark/store";
import { EVENTS_MOST_B } from "../guard/limits.ts";
import { PAGE_EVENTS } from "../protocol.ts";

/** Of the newest so many events nothing is left out: a season of an aircraft that flies every day. */
const WHOLE_EVENTS = 10_000;
/** So many are looked through for one answer at most, so that none takes long. */
const LOOKED_THROUGH = 10_000;
/** What is known of so many ledgers is kept, so that the next page need not find it out again. */
const KNOWN_MOST = 4;

export interface NeededAsked {
  readonly after: number;
  /** The head where it is left out, or beyond it. */
  readonly upTo: number | undefined;
}

/** As an answer of protocol.ts, with the events as they were kept. */
export interface NeededPage extends Page {
  readonly upTo: number;
  readonly to: number;
  readonly wholeFrom: number;
}

export interface NeededParts {
  readonly wholeEvents?: number;
  readonly makePast?: () => LongPast;
}

/** Finds what a phone needs that has nothing yet of a long ledger. Memory grows with walks and checks, not with events. */
export function neededEvents(
  own: OperatorStore,
  { wholeEvents = WHOLE_EVENTS, makePast = () => new LongPast() }: NeededParts = {},
): (aircraft: string, asked: NeededAsked) => Promise<NeededPage> {
  /** A cache: any process comes to the same by looking through the ledger. */
  const known = new Map<string, Promise<LongPast>>();

  async function look(aircraft: string, upTo: number): Promise<LongPast> {
    const past = makePast();
    for (let after = 0; after < upTo; ) {
      const { events } = await page(own, aircraft, after, upTo);
      for (const { text, ledgerSeq } of events) {
        past.see(asEvent(text));
        after = ledgerSeq;
      }
      if (events.length === 0) break;
      await setImmediate(); // others are answered in between
    }
    return past;
  }

  function pastOf(aircraft: string, epoch: string, upTo: number): Promise<LongPast> {
    const key = JSON.stringify([aircraft, epoch, upTo]);
    const found = known.get(key) ?? look(aircraft, upTo);
    known.delete(key);
    known.set(key, found);
    found.catch(() => known.delete(key)); // whoever asked is told
    const [oldest] = known.keys();
    if (known.size > KNOWN_MOST && oldest !== undefined) known.delete(oldest);
    return found;
  }

  return async (aircraft, { after, upTo: asked }) => {
    const { epoch, head } = await own.page(aircraft, { after: 0, limit: 1, most_B: 1 });
    const upTo = Math.min(asked ?? head, head);
    const wholeFrom = Math.max(1, upTo - wholeEvents + 1);
    const past = await pastOf(aircraft, epoch, upTo);
    const needed: KeptEvent[] = [];
    let to = Math.min(after, upTo);
    const stop = Math.min(upTo, to + LOOKED_THROUGH);
    for (let size_B = 0; to < stop; ) {
      const { events } = await page(own, aircraft, to, stop);
      if (events.length === 0) break;
      for (const kept of events) {
        if (kept.ledgerSeq >= wholeFrom || past.isNeeded(asEvent(kept.text))) {
          size_B += Buffer.byteLength(kept.text);
          const isFull = needed.length === PAGE_EVENTS || (needed.length > 0 && size_B > EVENTS_MOST_B);
          if (isFull) return { epoch, head, upTo, to, wholeFrom, events: needed };
          needed.push(kept);
        }
        to = kept.ledgerSeq;
      }
      await setImmediate();
    }
    return { epoch, head, upTo, to, wholeFrom, events: needed };
  };
}

const page = (own: OperatorStore, aircraft: string, after: number, upTo: number) =>
  own.page(aircraft, { after, limit: Math.min(PAGE_EVENTS, upTo - after), most_B: EVENTS_MOST_B });

/** What is kept was read as an event when it came in; see sift.ts. */
const asEvent = (text: string): LedgerEvent => JSON.parse(text) as LedgerEvent;
