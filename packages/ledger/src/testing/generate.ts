import type { KnownEvent, Read } from "../event.ts";
import { wallTime } from "../wall-time.ts";
import { BOOK_LIKE_CHECKS, BOOK_LIKE_GEAR, type CheckLike } from "./book-like.ts";
import { keyFor, Phone, type Seal, sealAll } from "./phone.ts";
import { Random } from "./random.ts";

export interface HistoryOptions {
  readonly years: number;
  readonly flightsPerYear: number;
  /** The same seed makes the same history (signatures apart). */
  readonly seed: number;
  /** Default `hashed`. */
  readonly seal?: Seal;
  readonly checks?: readonly CheckLike[];
  readonly groundGear?: readonly {
    readonly item: string;
    readonly count: number;
    readonly stowedIn: string;
  }[];
  readonly aircraft?: string;
  readonly operator?: string;
  /** The book adopted at the beginning; left out, a stand-in of a few words. */
  readonly book?: {
    readonly sha256: string;
    readonly revision: number;
    readonly type: string;
    readonly text: string;
  };
  /** When the first flight is made, milliseconds since 1970 UTC; default 2031-01-01. */
  readonly start_ms?: number;
}

const STAND_IN_BOOK = { sha256: "b0".repeat(32), revision: 1, type: "Invented", text: "an invented book" };
const YEAR_MS = 365.25 * 86_400_000;
const ZONE_MIN = 60;

/**
 * The ledger of one aircraft flown for years, as two phones would have written it: walks of all kinds, readings,
 * ground gear, happenings, discrepancies and their closing, interruptions, corrections, decisions. Invented, for
 * tests and benches. In the order in which it was made, which is ledger order.
 */
export async function generateHistory(options: HistoryOptions): Promise<readonly KnownEvent[]> {
  const seal = options.seal ?? "hashed";
  const random = new Random(options.seed);
  const start_ms = options.start_ms ?? Date.UTC(2031, 0, 1, 6);
  const phones = [
    phoneOf("Ada", options, random, start_ms),
    phoneOf("Ben", options, random, start_ms),
  ] as const;
  const keys = [await keyFor(seal), await keyFor(seal)] as const;
  const teller = new Teller(options, random, phones, start_ms);
  teller.introduce([keys[0].key, keys[1].key]);
  const flights = Math.round(options.years * options.flightsPerYear);
  for (let flight = 0; flight < flights; flight += 1) {
    teller.fly(start_ms + Math.floor((flight / options.flightsPerYear) * YEAR_MS), flight);
  }
  const sealed = await Promise.all(
    phones.map((phone, at) => sealAll(phone, seal, keys[at]?.privateKey ?? null)),
  );
  return sealed
    .flat()
    .sort((a, b) => (a.hlc === b.hlc ? (a.device < b.device ? -1 : 1) : a.hlc < b.hlc ? -1 : 1));
}

const phoneOf = (name: string, options: HistoryOptions, random: Random, start_ms: number): Phone =>
  new Phone(random, start_ms, {
    operator: options.operator ?? "island-eye-clinic",
    aircraft: options.aircraft ?? "ZZ-SKR",
    author: { id: random.uuidv7(start_ms), name, role: "pilot" },
    wrong_ms: name === "Ada" ? 0 : 40_000,
    zone_min: ZONE_MIN,
  });

/** Tells a history flight by flight. */
class Teller {
  readonly #random: Random;
  readonly #phones: readonly [Phone, Phone];
  readonly #checks: readonly CheckLike[];
  readonly #gear: NonNullable<HistoryOptions["groundGear"]>;
  readonly #book: NonNullable<HistoryOptions["book"]>;
  /** Discrepancies that nobody closed yet. */
  #open: string[] = [];
  #now_ms: number;

  constructor(options: HistoryOptions, random: Random, phones: readonly [Phone, Phone], start_ms: number) {
    this.#random = random;
    this.#phones = phones;
    this.#checks = options.checks ?? BOOK_LIKE_CHECKS;
    this.#gear = options.groundGear ?? BOOK_LIKE_GEAR;
    this.#book = options.book ?? STAND_IN_BOOK;
    this.#now_ms = start_ms;
  }

  introduce(keys: readonly [PhoneKey, PhoneKey]): void {
    for (const [at, phone] of this.#phones.entries()) {
      const key = keys[at] ?? keys[0];
      this.#say(phone, { type: "device.introduced", body: { label: `phone ${at + 1}`, key } });
    }
    const { sha256, revision, type, text } = this.#book;
    const registration = this.#phones[0].about.aircraft;
    this.#say(this.#phones[0], {
      type: "book.adopted",
      body: { sha256, revision, registration, type, text },
    });
  }

  /** One flight: gear off, walk, decision, flight, gear on; not before this time. */
  fly(notBefore_ms: number, number: number): void {
    this.#now_ms = Math.max(this.#now_ms + 60_000, notBefore_ms);
    const phone = this.#phones[number % 2] ?? this.#phones[0];
    const isFirst = number % 3 !== 2;
    const walk = this.#random.uuidv7(this.#now_ms);
    this.#closeOne(phone);
    this.#happen(phone, this.#random.chance(0.7) ? "fuelled" : "unattended");
    this.#say(phone, {
      type: "walk.started",
      body: { walk, kind: isFirst ? "first-of-day" : "turnaround", bookSha256: this.#book.sha256 },
    });
    if (isFirst) {
      for (const { item, count, stowedIn } of this.#gear) {
        this.#wait(5, 15);
        this.#say(phone, { type: "groundGear.removed", body: { item, count, stowedIn, walk } });
      }
    }
    const asked = isFirst ? this.#checks : this.#checks.filter((_check, at) => at % 3 === number % 3);
    for (const check of asked) this.#check(phone, walk, check);
    this.#say(phone, { type: "walk.finished", body: { walk } });
    this.#decide(phone, walk, asked);
    this.#wait(3600, 7200);
    this.#happen(phone, "flown");
    if (isFirst) {
      for (const { item, count } of this.#gear) {
        this.#wait(5, 15);
        this.#say(phone, { type: "groundGear.fitted", body: { item, count } });
      }
    }
  }

  #check(phone: Phone, walk: string, { id: check, gauge }: CheckLike): void {
    this.#wait(3, 18);
    // Now and then the second phone takes a check; it has seen what the first made.
    const hand = this.#random.chance(0.04) ? this.#other(phone) : phone;
    const isRight = !this.#random.chance(0.004);
    if (gauge !== undefined) {
      const read: Read = {
        value: Math.round(gauge.usual * this.#random.between(0.97, 1.03) * 100) / 100,
        unit: gauge.unit,
      };
      this.#say(hand, { type: "reading.recorded", body: { walk, check, gauge: gauge.id, read } });
    }
    const couldNot = isRight && this.#random.chance(0.003);
    const answered = this.#say(hand, {
      type: "check.answered",
      body: couldNot
        ? { walk, check, answer: "could-not-check", reason: "too-dark" }
        : { walk, check, answer: isRight ? "as-it-should-be" : "not-right" },
    });
    if (this.#random.chance(0.002)) {
      this.#say(hand, { type: "event.withdrawn", body: { event: answered.id, why: "the wrong one" } });
      this.#say(hand, { type: "check.answered", body: { walk, check, answer: "as-it-should-be" } });
    } else if (!isRight) this.#raise(hand, walk, check);
    if (this.#random.chance(0.001)) this.#interrupt(hand, walk);
  }

  #raise(phone: Phone, walk: string, check: string): void {
    const discrepancy = this.#random.uuidv7(this.#now_ms);
    this.#open.push(discrepancy);
    this.#say(phone, {
      type: "discrepancy.raised",
      body: { discrepancy, words: "a weep at the seal", walk, check },
    });
    const subject = { kind: "discrepancy", id: discrepancy } as const;
    this.#say(phone, { type: "note.written", body: { subject, text: "as big as a coin, dry to the touch" } });
    const sha256 = discrepancy.replaceAll("-", "").repeat(2);
    const size = { size_B: 180_000, width_px: 1600, height_px: 1200 };
    this.#say(phone, { type: "photo.attached", body: { subject, sha256, mediaType: "image/jpeg", ...size } });
  }

  #closeOne(phone: Phone): void {
    const discrepancy = this.#open.shift();
    if (discrepancy === undefined) return;
    const body = {
      discrepancy,
      how: "put-right",
      words: "seal replaced",
      releasedBy: "C. Dow, order 118",
    } as const;
    this.#say(phone, { type: "discrepancy.closed", body });
    this.#happen(phone, "maintenance");
  }

  #interrupt(phone: Phone, walk: string): void {
    const left = wallTime(this.#now_ms, ZONE_MIN);
    this.#wait(200, 900);
    const back = wallTime(this.#now_ms, ZONE_MIN);
    this.#say(phone, { type: "walk.interrupted", body: { walk, cause: "away", left, back } });
  }

  #happen(phone: Phone, happening: "fuelled" | "unattended" | "maintenance" | "flown"): void {
    const at = wallTime(this.#now_ms, ZONE_MIN);
    this.#say(phone, { type: "happening.recorded", body: { happening, at } });
  }

  #decide(phone: Phone, walk: string, asked: readonly CheckLike[]): void {
    this.#wait(30, 120);
    const at = wallTime(this.#now_ms, ZONE_MIN);
    const open = this.#open.length;
    this.#say(phone, {
      type: "decision.signed",
      body: {
        decision: this.#random.uuidv7(this.#now_ms),
        walk,
        answer: "go",
        flight: { from: "ZZ01", to: "ZZ02", offBlocks: at },
        at,
        bookSha256: this.#book.sha256,
        assessmentSha256: "a5".repeat(32),
        counts: { clear: asked.length, caution: 0, stop: open, open: 0 },
        restsOn: asked.map(({ id }) => ({ verdict: `check:${id}`, status: "clear" })),
        heads: Object.fromEntries(this.#phones.map(({ device, made }) => [device, made.length])),
        reasons: this.#open.map((id) => ({
          verdict: `discrepancy:${id}`,
          words: "looked at with the mechanic",
          basis: "deferred by the mechanic",
        })),
      },
    });
  }

  #say(phone: Phone, draft: Parameters<Phone["make"]>[1]): ReturnType<Phone["make"]> {
    const event = phone.make(this.#now_ms, draft);
    this.#other(phone).see(this.#now_ms, event);
    return event;
  }

  #other(phone: Phone): Phone {
    return phone === this.#phones[0] ? this.#phones[1] : this.#phones[0];
  }

  #wait(least_s: number, most_s: number): void {
    this.#now_ms += Math.round(this.#random.between(least_s, most_s) * 1000);
  }
}

type PhoneKey = Awaited<ReturnType<typeof keyFor>>["key"];
