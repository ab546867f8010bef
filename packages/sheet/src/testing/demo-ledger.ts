import { readFile } from "node:fs/promises";
import { assess, band, decisionBody, decisionNeeds, type Flight } from "@witnessmark/assess";
import { type Book, type Check, readBook } from "@witnessmark/book";
import { fromSI } from "@witnessmark/engine";
import {
  type EventDraft,
  fold,
  type KnownEvent,
  makeEvents,
  newDeviceKey,
  newId,
  type Read,
} from "@witnessmark/ledger";

/** Thursday 12 November 2026, 07:25 UTC: the walk is over, and the reports of the demo's flight are there, by 08:10. */
const START_ms = Date.UTC(2026, 10, 12, 7, 25);
const STEP_ms = 15_000;
/** A cool morning, which every table and formula of the demo's book covers. */
const MORNING: Read = { value: 8, unit: "degC" };

export interface DemoLedger {
  readonly book: Book;
  readonly events: readonly KnownEvent[];
  readonly decision: string;
  /** When it was decided, milliseconds since 1970 UTC. */
  readonly at_ms: number;
}

export async function demoBook(): Promise<Book> {
  return (await demoText()).book;
}

let demo: Promise<{ readonly book: Book; readonly text: string }> | null = null;

/** Read once: nothing changes it. */
function demoText(): Promise<{ readonly book: Book; readonly text: string }> {
  demo ??= readDemo();
  return demo;
}

async function readDemo(): Promise<{ readonly book: Book; readonly text: string }> {
  const text = await readFile(new URL("../../../../books/zz-skr.yaml", import.meta.url), "utf8");
  const result = await readBook(text, "zz-skr.yaml");
  if (!result.ok) throw new Error(`the demo book has faults: ${JSON.stringify(result.faults[0])}`);
  return { book: result.book, text };
}

/** What the gauge would show in the middle of what is allowed. */
function readingOf(book: Book, check: Check, walk: string): readonly EventDraft[] {
  const { reading } = check;
  const gauge = reading === undefined ? undefined : book.gauges.get(reading.gauge);
  if (reading === undefined || gauge === undefined) return [];
  const temperature = reading.limit.by === "fixed" ? undefined : MORNING;
  const { low, high } = band(check, book, temperature) ?? {};
  const middle = ((low ?? reading.scale[0].valueSI) + (high ?? reading.scale[1].valueSI)) / 2;
  const value = Number(fromSI(middle, gauge.unit).toPrecision(3));
  const read: Read = { value, unit: gauge.unit };
  return [
    {
      type: "reading.recorded",
      body: {
        walk,
        check: check.id,
        gauge: gauge.id,
        read,
        ...(temperature === undefined ? {} : { temperature }),
      },
    },
  ];
}

/**
 * A whole first walk of the demo's turboprop, everything read and as it should be, and a signed decision to go with a
 * flight. Real events, folded as they are anywhere else.
 *
 * @param late_ms between the end of the walk and the decision
 */
export function demoLedger(flight: Flight | null, late_ms = 60_000): Promise<DemoLedger> {
  const known = ledgers.find((one) => one.flight === flight && one.late_ms === late_ms);
  if (known !== undefined) return known.ledger;
  const ledger = makeLedger(flight, late_ms);
  ledgers.push({ flight, late_ms, ledger });
  return ledger;
}

/** Those that were made, each once: a ledger is never changed. */
const ledgers: {
  readonly flight: Flight | null;
  readonly late_ms: number;
  readonly ledger: Promise<DemoLedger>;
}[] = [];

async function makeLedger(flight: Flight | null, late_ms: number): Promise<DemoLedger> {
  const { book, text } = await demoText();
  const { key, privateKey } = await newDeviceKey();
  const [walk, decision, device] = [newId(), newId(), newId()];
  let events: readonly KnownEvent[] = [];
  let clock: string | null = null;
  let now_ms = START_ms;
  const add = async (drafts: readonly EventDraft[]) => {
    now_ms += STEP_ms;
    const last = events.at(-1);
    const made = await makeEvents(
      {
        operator: "own",
        aircraft: book.aircraft.registration,
        device,
        author: { id: "01900000-0000-7000-8000-000000000001", name: "Ada Example", role: "pilot" },
        last: last === undefined ? null : { deviceSeq: last.deviceSeq, hash: last.hash },
        clock,
        now_ms,
        zone_min: 0,
        newId,
        key: privateKey,
      },
      drafts,
    );
    events = [...events, ...made.events];
    clock = made.clock;
  };
  const { sha256, revision, aircraft } = book;
  await add([
    { type: "device.introduced", body: { label: "A phone", key } },
    {
      type: "book.adopted",
      body: { sha256, revision, registration: aircraft.registration, type: aircraft.type, text },
    },
    { type: "walk.started", body: { walk, kind: "first-of-day", bookSha256: sha256 } },
  ]);
  for (const { id: item, count, stowedIn } of book.groundGear) {
    await add([
      { type: "groundGear.removed", body: { item, count, walk, stowedIn: stowedIn[0] ?? "the cabin" } },
    ]);
  }
  for (const check of book.checks) {
    await add([
      ...readingOf(book, check, walk),
      { type: "check.answered", body: { walk, check: check.id, answer: "as-it-should-be" } },
    ]);
  }
  now_ms += late_ms;
  const assessment = assess(book, fold(events), flight, now_ms);
  const at_ms = now_ms;
  const reasons = decisionNeeds(assessment, "go").map(({ verdict, basis }) => ({
    verdict,
    words: "Seen and thought through",
    ...(basis ? { basis: "An invented one" } : {}),
  }));
  await add([
    { type: "decision.signed", body: await decisionBody({ assessment, decision, answer: "go", reasons }) },
  ]);
  return { book, events, decision, at_ms };
}
