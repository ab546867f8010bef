import { smallBookText } from "@witnessmark/book";
import {
  type Author,
  type EventDraft,
  type KnownEvent,
  makeEvents,
  newDeviceKey,
  newId,
} from "@witnessmark/ledger";
import { walkedLedger } from "./walked-ledger.ts";

const PILOT: Author = { id: "01900000-0000-7000-8000-000000000001", name: "Ada Example", role: "pilot" };
const MECHANIC: Author = { id: "01900000-0000-7000-8000-000000000002", name: "Bo Sample", role: "mechanic" };
const OWNER: Author = { id: "01900000-0000-7000-8000-000000000003", name: "Cy Instance", role: "owner" };

/** Of a picture that the ledger only names. */
export const PHOTO_SHA256 = "ab".repeat(32);

const ids = { dent: newId(), lamp: newId(), mistaken: newId(), walk: newId(), relief: newId() };

export interface RecordLedger {
  readonly events: readonly KnownEvent[];
  /** Ids of the discrepancies: a dent put right, a lamp still dark, one taken back. */
  readonly ids: typeof ids;
}

/**
 * Days of November 2026 of the small book's aircraft, one hour east of UTC: a dent found on the 2nd, relieved on the 4th
 * until the 10th, put right on the 7th; a lamp dark since the 5th; a discrepancy of the 3rd taken back on the 9th; an
 * annual inspection on the 6th, and the one of 2025 written down on the 9th; and the signed decision of `walkedLedger` on the 12th.
 */
export async function recordLedger(): Promise<RecordLedger> {
  const walked = await walkedLedger();
  const key = await newDeviceKey();
  const device = newId();
  let events: readonly KnownEvent[] = [];
  let clock: string | null = null;
  const on = async (day: number, author: Author, drafts: readonly EventDraft[]) => {
    const last = events.at(-1);
    const made = await makeEvents(
      {
        operator: "own",
        aircraft: "ZZ-SML",
        device,
        author,
        last: last === undefined ? null : { deviceSeq: last.deviceSeq, hash: last.hash },
        clock,
        now_ms: Date.UTC(2026, 10, day, 9, 0),
        zone_min: 60,
        newId,
        key: key.privateKey,
      },
      drafts,
    );
    events = [...events, ...made.events];
    clock = made.clock;
  };
  const { book } = walked;
  const { sha256, revision, aircraft } = book;
  const [check] = book.checks;
  if (check === undefined) throw new Error("the small book has no checks");
  const { dent, lamp, mistaken, walk, relief } = ids;
  await on(1, OWNER, [
    { type: "device.introduced", body: { label: "The hangar's tablet", key: key.key } },
    {
      type: "book.adopted",
      body: { sha256, revision, registration: "ZZ-SML", type: aircraft.type, text: smallBookText },
    },
  ]);
  await on(2, PILOT, [
    { type: "walk.started", body: { walk, kind: "turnaround", bookSha256: sha256 } },
    { type: "check.answered", body: { walk, check: check.id, answer: "not-right" } },
    {
      type: "discrepancy.raised",
      body: {
        discrepancy: dent,
        words: "A dent in the cowling",
        walk,
        check: check.id,
        measured: { value: 8, unit: "mm" },
        jasc: "7110",
      },
    },
    {
      type: "photo.attached",
      body: {
        subject: { kind: "discrepancy", id: dent },
        sha256: PHOTO_SHA256,
        mediaType: "image/jpeg",
        size_B: 1000,
        width_px: 40,
        height_px: 30,
      },
    },
    { type: "walk.abandoned", body: { walk, why: "dark" } },
  ]);
  await on(3, MECHANIC, [
    { type: "discrepancy.assessed", body: { discrepancy: dent, words: "Skin sound, no crack" } },
    { type: "discrepancy.raised", body: { discrepancy: mistaken, words: "Of another aircraft" } },
  ]);
  const taken = events.at(-1)?.id ?? "";
  await on(4, MECHANIC, [
    {
      type: "discrepancy.relieved",
      body: {
        discrepancy: dent,
        relief,
        rulePack: "us-part-91",
        basis: "14 CFR 91.213(d)",
        equipment: "cowling",
        steps: [{ rule: "(d)(2)", words: "Not asked for by day", holds: true }],
        action: "deactivated",
        placard: "INOPERATIVE",
        determinedBy: "Bo Sample",
        as: "mechanic",
        notFor: ["ifr-day"],
        until: "2026-11-10",
      },
    },
  ]);
  await on(5, PILOT, [
    { type: "discrepancy.raised", body: { discrepancy: lamp, words: "The landing light is dark" } },
  ]);
  await on(6, OWNER, [
    {
      type: "timedItem.added",
      body: {
        item: {
          id: "annual",
          name: "Annual inspection",
          about: "aircraft",
          rule: "14 CFR 91.409(a)",
          limits: [{ by: "calendar-months", months: 12 }],
          combine: "first",
          recurring: true,
          endsLife: false,
          why: "The rules ask for it",
        },
      },
    },
    {
      type: "timedItem.done",
      body: { item: "annual", on: "2026-11-06", counters: {}, by: "Example Works", reference: "WO 12" },
    },
  ]);
  await on(7, MECHANIC, [
    { type: "discrepancy.reliefEnded", body: { discrepancy: dent, relief, why: "The new cowling is here" } },
    {
      type: "discrepancy.closed",
      body: { discrepancy: dent, how: "put-right", words: "Cowling changed", releasedBy: "R. Works, 4711" },
    },
  ]);
  await on(9, OWNER, [
    {
      type: "timedItem.done",
      body: { item: "annual", on: "2025-11-10", counters: {}, by: "Earlier Works" },
    },
    { type: "event.withdrawn", body: { event: taken, why: "Written into the wrong aircraft" } },
  ]);
  return { events: [...events, ...walked.events], ids };
}
