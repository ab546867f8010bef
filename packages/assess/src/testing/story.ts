import type { Book, HappeningKind, WalkKind } from "@witnessmark/book";
import type { UnitId } from "@witnessmark/engine";
import {
  type AircraftState,
  type Answer,
  type Author,
  type CouldNotReason,
  type Decision,
  type EventDraft,
  fold,
  type LedgerEvent,
  merge,
  type Read,
  tick,
  wallTime,
} from "@witnessmark/ledger";

/** Thursday 8 May 2031; times of a story are local, one hour east of UTC. */
const DAY_MS = Date.UTC(2031, 4, 8);
const ZONE_MIN = 60;
const A_MOMENT_MS = 20_000;

const hex = (count: number): string => count.toString(16).padStart(12, "0");

/** `07:40`, `Sunday` as a day offset: local time on the story's day, or so many days from it. */
export const at = (time: string, days = 0): number => {
  const [hours = 0, minutes = 0, seconds = 0] = time.split(":").map(Number);
  return DAY_MS + days * 86_400_000 + (hours * 3600 + minutes * 60 + seconds) * 1000 - ZONE_MIN * 60_000;
};

/** The same as text, as an event has it. */
export const atText = (time: string, days = 0): string => wallTime(at(time, days), ZONE_MIN);

/** What happened to one aircraft, told step by step, as events and as the state that they fold to. */
export class Story {
  readonly events: LedgerEvent[] = [];
  readonly #phones: Phone[] = [];
  readonly book: Book;
  now_ms: number;
  #count = 0;

  constructor(book: Book, start = "07:00") {
    this.book = book;
    this.now_ms = at(start);
    this.phone("Ada").tell({
      type: "book.adopted",
      body: {
        sha256: book.sha256,
        revision: book.revision,
        registration: "ZZ-TST",
        type: "Test",
        text: "an invented book",
      },
    });
  }

  id(): string {
    this.#count += 1;
    return `01900000-0000-7000-8000-${hex(this.#count)}`;
  }

  /** A person's phone; the same one for the same name. */
  phone(name: string, wrong_ms = 0): Phone {
    const known = this.#phones.find((phone) => phone.author.name === name);
    if (known !== undefined) return known;
    const made = new Phone(this, name, wrong_ms);
    this.#phones.push(made);
    return made;
  }

  get ada(): Phone {
    return this.phone("Ada");
  }

  /** Goes on at this time of the story's day, or so many days from it. */
  at(time: string, days = 0): this {
    this.now_ms = at(time, days);
    return this;
  }

  /** An event is seen by every phone that is in touch. */
  spread(event: LedgerEvent, from: Phone): void {
    this.events.push(event);
    if (from.isAlone) return;
    for (const phone of this.#phones) if (phone !== from && !phone.isAlone) phone.see(event);
  }

  get state(): AircraftState {
    return fold(this.events);
  }
}

export class Phone {
  readonly author: Author;
  readonly device: string;
  /** Out of touch: sees nothing and is seen by nobody. */
  isAlone = false;
  walk = "";
  readonly #story: Story;
  readonly #wrong_ms: number;
  #clock: string | null = null;
  #seq = 0;

  constructor(story: Story, name: string, wrong_ms: number) {
    this.#story = story;
    this.#wrong_ms = wrong_ms;
    this.device = story.id();
    this.author = { id: story.id(), name, role: "pilot" };
  }

  see({ hlc }: LedgerEvent): void {
    this.#clock = merge(this.#clock, hlc, this.#story.now_ms + this.#wrong_ms).clock;
  }

  /** Makes an event now, and lets a moment pass. @returns its id */
  tell(draft: EventDraft, signature?: string): string {
    const wall_ms = this.#story.now_ms + this.#wrong_ms;
    this.#clock = tick(this.#clock, wall_ms);
    this.#seq += 1;
    const id = this.#story.id();
    const event = {
      id,
      operator: "tests",
      aircraft: "ZZ-TST",
      device: this.device,
      deviceSeq: this.#seq,
      author: this.author,
      hlc: this.#clock,
      recordedAt: wallTime(wall_ms, ZONE_MIN),
      schemaVersion: 1,
      previousHash: null,
      hash: `${this.device.replaceAll("-", "")}${hex(this.#seq).padStart(32, "0")}`,
      ...(signature === undefined ? {} : { signature }),
      ...draft,
    } as LedgerEvent; // the parts of one member of the union, put together
    this.#story.spread(event, this);
    this.#story.now_ms += A_MOMENT_MS;
    return id;
  }

  start(kind: WalkKind = "first-of-day", bookSha256 = this.#story.book.sha256): string {
    this.walk = this.#story.id();
    this.tell({ type: "walk.started", body: { walk: this.walk, kind, bookSha256 } });
    return this.walk;
  }

  finish(): string {
    return this.tell({ type: "walk.finished", body: { walk: this.walk } });
  }

  abandon(): string {
    return this.tell({ type: "walk.abandoned", body: { walk: this.walk, why: "called away" } });
  }

  answer(check: string, answer: Answer = "as-it-should-be", reason?: CouldNotReason): string {
    return this.tell({
      type: "check.answered",
      body: { walk: this.walk, check, answer, ...(reason === undefined ? {} : { reason }) },
    });
  }

  read(check: string, value: number, unit: UnitId, temperature?: Read, gauge?: string): string {
    const asked = this.#story.book.checks.find(({ id }) => id === check)?.reading?.gauge;
    return this.tell({
      type: "reading.recorded",
      body: {
        walk: this.walk,
        check,
        gauge: gauge ?? asked ?? "none",
        read: { value, unit },
        ...(temperature === undefined ? {} : { temperature }),
      },
    });
  }

  interrupt(): string {
    const text = wallTime(this.#story.now_ms, ZONE_MIN);
    return this.tell({
      type: "walk.interrupted",
      body: { walk: this.walk, cause: "said", left: text, back: text },
    });
  }

  happen(happening: HappeningKind, when = wallTime(this.#story.now_ms, ZONE_MIN)): string {
    return this.tell({ type: "happening.recorded", body: { happening, at: when } });
  }

  remove(item: string, count = 1, stowedIn = "Cover bag"): string {
    return this.tell({ type: "groundGear.removed", body: { item, count, stowedIn, walk: this.walk } });
  }

  fit(item: string, count = 1): string {
    return this.tell({ type: "groundGear.fitted", body: { item, count } });
  }

  /** @returns the id of the discrepancy, not of the event */
  raise(parts: {
    readonly words?: string;
    readonly check?: string;
    readonly point?: string;
    readonly fault?: string;
    readonly measured?: Read;
  }): string {
    const discrepancy = this.#story.id();
    this.tell({ type: "discrepancy.raised", body: { discrepancy, words: "Something is wrong", ...parts } });
    return discrepancy;
  }

  close(discrepancy: string, how: "put-right" | "no-fault-found" = "put-right"): string {
    return this.tell({
      type: "discrepancy.closed",
      body: { discrepancy, how, words: "done", releasedBy: "C. Dow, order 118" },
    });
  }

  photo(check: string): string {
    return this.tell({
      type: "photo.attached",
      body: {
        subject: { kind: "check", id: check },
        sha256: "ab".repeat(32),
        mediaType: "image/jpeg",
        size_B: 1,
        width_px: 1,
        height_px: 1,
      },
    });
  }

  withdraw(event: string): string {
    return this.tell({ type: "event.withdrawn", body: { event, why: "the wrong one" } });
  }

  /** An event of a version to come. */
  fromTheFuture(type = "weather.fetched"): string {
    return this.tell({ type, body: {} } as unknown as EventDraft); // not one that this version knows, on purpose
  }

  /** @returns the decision as the state has it */
  sign(body: Extract<EventDraft, { type: "decision.signed" }>["body"], signature?: string): Decision {
    const event = this.tell({ type: "decision.signed", body }, signature);
    const made = this.#story.state.decisions.find((decision) => decision.event === event);
    if (made === undefined) throw new Error("the decision is not in the state");
    return made;
  }
}
