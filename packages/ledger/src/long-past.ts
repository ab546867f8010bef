import type { LedgerEvent } from "./event.ts";
import { isKnownEvent } from "./known.ts";
import { compareOrder, type OrderKey } from "./order.ts";

/** How many of the last answers to each check, and of the walks begun last, keep their walks whole. */
const LAST = 16;

interface Placed extends OrderKey {
  readonly walk: string;
}

/**
 * Tells which events of a long ledger a phone can do without and still come to the same verdicts: what was answered on
 * walks long past, and where those were interrupted. Everything else is needed: every reading, every discrepancy, what
 * was done about what runs out, ground gear, happenings, decisions, books, and what this version does not understand.
 *
 * A walk is long past when it was begun and ended, no check has one of its last sixteen answers from it, and it is not among the
 * sixteen begun last. Its answers are left out together or not at all, so that what asks for a look again, asks for
 * the same. The newest event of each device is always needed: where its chain ends and how far its clock has gone.
 *
 * First `see` every event, in any order; then ask `isNeeded` of each. More events than are needed never harm: a state
 * folded from them is as right.
 */
export class LongPast {
  /** Ids of what began and what ended each walk. */
  readonly #beginnings = new Map<string, string[]>();
  readonly #endings = new Map<string, string[]>();
  readonly #withdrawn = new Set<string>();
  readonly #lastAnswers = new Map<string, Placed[]>();
  readonly #lastBegun: Placed[] = [];
  readonly #newest = new Map<string, { readonly deviceSeq: number; readonly id: string }>();
  readonly #last: number;
  #kept: Set<string> | null = null;

  /** @param last fewer than sixteen, for tests with short histories */
  constructor(last = LAST) {
    this.#last = last;
  }

  see(event: LedgerEvent): void {
    this.#kept = null;
    const { id, device, deviceSeq, hlc } = event;
    if (deviceSeq > (this.#newest.get(device)?.deviceSeq ?? 0)) this.#newest.set(device, { deviceSeq, id });
    if (!isKnownEvent(event)) return;
    switch (event.type) {
      case "event.withdrawn":
        this.#withdrawn.add(event.body.event);
        return;
      case "walk.started":
        listIn(this.#beginnings, event.body.walk).push(id);
        this.#among(this.#lastBegun, { hlc, device, deviceSeq, walk: event.body.walk });
        return;
      case "walk.finished":
      case "walk.abandoned":
        listIn(this.#endings, event.body.walk).push(id);
        return;
      case "check.answered": {
        const { walk, check } = event.body;
        this.#among(listIn(this.#lastAnswers, check), { hlc, device, deviceSeq, walk });
        return;
      }
      default:
        return;
    }
  }

  /** Puts it where it belongs among the latest, of which no more than so many are kept. */
  #among(latest: Placed[], one: Placed): void {
    let at = latest.length;
    for (let before = latest[at - 1]; before !== undefined && compareOrder(one, before) < 0; ) {
      at -= 1;
      before = latest[at - 1];
    }
    if (at === 0 && latest.length >= this.#last) return;
    latest.splice(at, 0, one);
    if (latest.length > this.#last) latest.shift();
  }

  /** Whether a phone cannot do without it. */
  isNeeded(event: LedgerEvent): boolean {
    if (!isKnownEvent(event)) return true;
    if (event.type !== "check.answered" && event.type !== "walk.interrupted") return true;
    if (this.#newest.get(event.device)?.id === event.id) return true;
    return this.#isKept(event.body.walk);
  }

  #isKept(walk: string): boolean {
    this.#kept ??= new Set(
      [...this.#lastBegun, ...[...this.#lastAnswers.values()].flat()].map((one) => one.walk),
    );
    if (this.#kept.has(walk)) return true;
    return !this.#stands(this.#beginnings.get(walk)) || !this.#stands(this.#endings.get(walk));
  }

  /** Whether one of them was said and, for all that is known, not taken back. */
  #stands(said: readonly string[] = []): boolean {
    return said.some((id) => !this.#withdrawn.has(id));
  }
}

function listIn<V>(lists: Map<string, V[]>, key: string): V[] {
  const found = lists.get(key);
  if (found !== undefined) return found;
  const made: V[] = [];
  lists.set(key, made);
  return made;
}
