import { assess, decisionBody } from "@witnessmark/assess";
import { type Book, readBook, smallBookText } from "@witnessmark/book";
import {
  type EventDraft,
  fold,
  type KnownEvent,
  makeEvents,
  newDeviceKey,
  newId,
  writeLedger,
} from "@witnessmark/ledger";

/** Thursday 12 November 2026, 07:20 local, one hour east of UTC. */
export const START_MS = Date.UTC(2026, 10, 12, 6, 20);
const ZONE_MIN = 60;

export interface WalkedLedger {
  readonly book: Book;
  readonly events: readonly KnownEvent[];
  readonly text: string;
  readonly decision: string;
  readonly signedAt_ms: number;
}

async function smallBook(): Promise<Book> {
  const result = await readBook(smallBookText, "small.yaml");
  if (!result.ok) throw new Error("the small book has faults");
  return result.book;
}

/**
 * A whole first walk of the small book's aircraft by one phone that has a key, all as it should be but for what was
 * not read, and a signed decision not to go yet. Nothing is invented about how it folds: the events are real ones.
 */
export async function walkedLedger(): Promise<WalkedLedger> {
  const book = await smallBook();
  const key = await newDeviceKey();
  const walk = newId();
  const decision = newId();
  let made: KnownEvent[] = [];
  let clock: string | null = null;
  let now_ms = START_MS;
  const device = newId();
  const add = async (drafts: readonly EventDraft[]) => {
    now_ms += 20_000;
    const previous = made.at(-1);
    const result = await makeEvents(
      {
        operator: "own",
        aircraft: book.aircraft.registration,
        device,
        author: { id: "01900000-0000-7000-8000-000000000001", name: "Ada Example", role: "pilot" },
        last: previous === undefined ? null : { deviceSeq: previous.deviceSeq, hash: previous.hash },
        clock,
        now_ms,
        zone_min: ZONE_MIN,
        newId,
        key: key.privateKey,
      },
      drafts,
    );
    made = [...made, ...result.events];
    clock = result.clock;
  };
  await add([
    { type: "device.introduced", body: { label: "A phone", key: key.key } },
    {
      type: "book.adopted",
      body: {
        sha256: book.sha256,
        revision: book.revision,
        registration: book.aircraft.registration,
        type: book.aircraft.type,
        text: smallBookText,
      },
    },
    { type: "walk.started", body: { walk, kind: "first-of-day", bookSha256: book.sha256 } },
  ]);
  for (const check of book.checks) {
    await add([{ type: "check.answered", body: { walk, check: check.id, answer: "as-it-should-be" } }]);
  }
  now_ms += 60_000;
  const assessment = assess(book, fold(made), null, now_ms);
  await add([
    {
      type: "decision.signed",
      body: await decisionBody({ assessment, decision, answer: "not-going", reasons: [] }),
    },
  ]);
  const text = await writeLedger(
    { aircraft: book.aircraft.registration, operator: "own", exportedAt: new Date(now_ms).toISOString() },
    made,
  );
  return { book, events: made, text, decision, signedAt_ms: now_ms };
}
