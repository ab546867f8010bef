import fc from "fast-check";
import type { LedgerEvent } from "../event.ts";
import type { EventDraft, UnsealedEvent } from "../make-event.ts";
import { type Phone, placeholderSeal } from "./phone.ts";
import { Scene } from "./scene.ts";

/*
 * Histories as several phones might make them: clocks wrong by hours and set in between, phones that do not see each
 * other for long, walks begun on one and ended on another, corrections of corrections, events of a later version.
 */

const PHONES = 3;
const HOURS_MS = 3_600_000;
const AT = "2031-05-04T09:07:00.000+02:00";
const CHECKS = ["oil-level", "fuel-cap.left", "fuel-cap.right", "pitot-tube.left", "brake.left"] as const;

const ACTS = [
  "start",
  "start",
  "answer",
  "answer",
  "answer",
  "answer",
  "read",
  "import",
  "interrupt",
  "interrupt",
  "finish",
  "abandon",
  "raise",
  "close",
  "fit",
  "remove",
  "happen",
  "note",
  "photo",
  "withdraw",
  "decide",
  "adopt",
  "archive",
  "restore",
  "later-version",
  "see",
  "see",
  "set-clock",
] as const; // what is here twice happens more often

interface Step {
  readonly phone: number;
  readonly act: (typeof ACTS)[number];
  /** Chooses among what the act can be about. */
  readonly pick: number;
  readonly wait_s: number;
}

export interface MadeHistory {
  /** In the order in which they were made, which no clock knows. */
  readonly events: readonly LedgerEvent[];
  /** Pairs of ids: the phone that made the second had seen, and followed, the first. */
  readonly causes: readonly (readonly [string, string])[];
}

export const arbitraryHistory: fc.Arbitrary<MadeHistory> = fc
  .record({
    clocks: fc.array(fc.integer({ min: -9, max: 9 }), { minLength: PHONES, maxLength: PHONES }),
    steps: fc.array(
      fc.record({
        phone: fc.nat(PHONES - 1),
        act: fc.constantFrom(...ACTS),
        pick: fc.nat(999),
        wait_s: fc.nat(400),
      }),
      { minLength: 1, maxLength: 60, size: "large" },
    ),
  })
  .map(({ clocks, steps }) => play(clocks, steps));

function play(clocks: readonly number[], steps: readonly Step[]): MadeHistory {
  const scene = new Scene(clocks.length + steps.length);
  const hands = clocks.map((hours, at) => ({
    phone: scene.phone(`P${at}`, hours * HOURS_MS),
    /** Ids that this phone's clock followed or made. */
    followed: new Set<string>(),
  }));
  const walks = [scene.id(), scene.id()];
  const discrepancies = [scene.id(), scene.id()];
  const imports = [scene.id(), scene.id()] as const;
  const made: LedgerEvent[] = [];
  const causes: (readonly [string, string])[] = [];

  for (const { phone: at, act, pick, wait_s } of steps) {
    const hand = hands[at];
    if (hand === undefined) continue;
    scene.wait(wait_s * 1000);
    if (act === "set-clock") hand.phone.setClock(((pick % 19) - 9) * HOURS_MS);
    else if (act === "see") look(scene, hand, hands[pick % PHONES]?.phone.made ?? []);
    else {
      const draft = draftOf(act, pick, { scene, walks, discrepancies, imports, made });
      const event = laterVersion(act, hand.phone.make(scene.now_ms, draft));
      for (const id of hand.followed) causes.push([id, event.id]);
      hand.followed.add(event.id);
      made.push(event);
    }
  }
  return { events: made, causes };
}

interface Hand {
  readonly phone: Phone;
  readonly followed: Set<string>;
}

function look(scene: Scene, hand: Hand, events: readonly UnsealedEvent[]): void {
  for (const event of events) if (hand.phone.see(scene.now_ms, event)) hand.followed.add(event.id);
}

const laterVersion = (act: Step["act"], event: UnsealedEvent): LedgerEvent => {
  const sealed = placeholderSeal(event);
  return act === "later-version" ? { ...sealed, type: "mood.noted", body: { mood: "sunny" } } : sealed;
};

interface Around {
  readonly scene: Scene;
  readonly walks: readonly string[];
  readonly discrepancies: readonly string[];
  readonly imports: readonly [string, string];
  readonly made: readonly LedgerEvent[];
}

const one = <T>(list: readonly [T, ...T[]], pick: number): T => list[pick % list.length] ?? list[0];

function draftOf(act: Exclude<Step["act"], "see" | "set-clock">, pick: number, around: Around): EventDraft {
  const { scene, made } = around;
  const walk = around.walks[pick % 2] ?? "";
  const discrepancy = around.discrepancies[pick % 2] ?? "";
  const check = one(CHECKS, pick >> 1);
  const item = one(["chocks", "covers"], pick >> 2);
  const count = 1 + (pick % 3);
  switch (act) {
    case "start":
      return { type: "walk.started", body: { walk, kind: "first-of-day", bookSha256: "b0".repeat(32) } };
    case "answer":
      return {
        type: "check.answered",
        body: { walk, check, answer: pick % 5 === 0 ? "not-right" : "as-it-should-be" },
      };
    case "read": {
      const read = { value: pick / 10, unit: "bar" } as const;
      return { type: "reading.recorded", body: { walk, check, gauge: "gauge", read } };
    }
    case "import": {
      // Few values and few moments, so that the same reading comes twice, and some are older than all others.
      const at = `2031-05-0${1 + (pick % 6)}T09:07:00.000+02:00`;
      const read = { value: pick % 3, unit: "bar" } as const;
      return {
        type: "reading.imported",
        body: { import: one(around.imports, pick), check, gauge: "gauge", at, read, by: "the old log" },
      };
    }
    case "interrupt":
      return { type: "walk.interrupted", body: { walk, cause: "said", left: AT, back: AT } };
    case "finish":
      return { type: "walk.finished", body: { walk } };
    case "abandon":
      return { type: "walk.abandoned", body: { walk, why: "rain" } };
    case "raise":
      return { type: "discrepancy.raised", body: { discrepancy, words: "a weep", walk, check } };
    case "close":
      return {
        type: "discrepancy.closed",
        body: { discrepancy, how: "put-right", words: "new seal", releasedBy: "C. Dow" },
      };
    case "fit":
      return { type: "groundGear.fitted", body: { item, count } };
    case "remove":
      return { type: "groundGear.removed", body: { item, count, stowedIn: "locker" } };
    case "happen":
      return { type: "happening.recorded", body: { happening: "fuelled", at: AT } };
    case "note":
      return { type: "note.written", body: { subject: { kind: "walk", id: walk }, text: `note ${pick}` } };
    case "photo": {
      const size = { size_B: 1000, width_px: 10, height_px: 10 };
      const subject = { kind: "check", id: check } as const;
      return {
        type: "photo.attached",
        body: { subject, sha256: "c1".repeat(32), mediaType: "image/png", ...size },
      };
    }
    case "withdraw": {
      // Anything made so far, also a withdrawal; all that one file brought in; or something that never arrives.
      const event =
        pick % 7 === 0 ? one(around.imports, pick) : (made[pick % (made.length + 1)]?.id ?? scene.id());
      return { type: "event.withdrawn", body: { event, why: "a slip" } };
    }
    case "decide":
      return { type: "decision.signed", body: decisionOf(scene.id(), walk) };
    case "adopt": {
      const book = { sha256: "b0".repeat(32), revision: pick, registration: "ZZ-SKR", type: "Invented" };
      return { type: "book.adopted", body: { ...book, text: "book" } };
    }
    case "archive":
      return { type: "aircraft.archived", body: { why: "sold" } };
    case "restore":
    case "later-version":
      return { type: "aircraft.restored", body: {} };
    default:
      return act satisfies never;
  }
}

const decisionOf = (decision: string, walk: string) =>
  ({
    decision,
    walk,
    answer: "go",
    flight: null,
    at: AT,
    bookSha256: "b0".repeat(32),
    assessmentSha256: "a5".repeat(32),
    counts: { clear: 1, caution: 0, stop: 0, open: 0 },
    restsOn: [{ verdict: "check:oil-level", status: "clear" }],
    heads: {},
    reasons: [],
  }) as const;
