import { createHash } from "node:crypto";
import { once } from "node:events";
import { createDeflate } from "node:zlib";
import {
  compareEvents,
  isKnownEvent,
  type LedgerEvent,
  type LocalDate,
  ledgerLines,
  SoundStream,
} from "@witnessmark/ledger";
import type { PackedFile } from "../pdf/attach-packed.ts";
import type { AircraftRecord } from "./aircraft-record.ts";
import { dayOf } from "./day-words.ts";
import type { RecordPeriod } from "./period.ts";
import {
  frameOf,
  ledgerFileName,
  type RecordResult,
  recordIn,
  recordOfLedger,
  SOUND,
} from "./record-of-ledger.ts";

/** A ledger that is read as often as it is needed, so that it need not fit into memory. */
export interface LedgerSource {
  readonly count: number;
  /** Every event in handfuls, the same each time. */
  events(): AsyncIterable<readonly LedgerEvent[]>;
}

export type SourceRecord =
  | { readonly ok: true; readonly record: AircraftRecord; readonly file: PackedFile | string }
  | Extract<RecordResult, { readonly ok: false }>;

/** What a first look through a ledger finds. */
interface Gist {
  last: LedgerEvent | undefined;
  begin: LocalDate | undefined;
  /** The day on which each walk began. */
  readonly walks: Map<string, LocalDate>;
  readonly taken: Set<string>;
}

/**
 * The record of an aircraft for a period, out of nothing but its ledger, which is gone through twice: memory holds what
 * the period's record rests on, and the attached file deflated. A ledger that does not hold is looked at as a whole, to
 * say what is wrong with it.
 */
export async function recordOfSource(
  source: LedgerSource,
  given: Parameters<typeof recordOfLedger>[1],
): Promise<SourceRecord> {
  const gist: Gist = { last: undefined, begin: undefined, walks: new Map(), taken: new Set() };
  for await (const events of source.events()) for (const event of events) look(gist, event);
  const { last, begin } = gist;
  if (last === undefined) return { ok: false, why: "no-events", says: "There are no events in this ledger" };
  const asked = frameOf({ last, begin }, given);
  if (!asked.ok) return { ...asked, why: "bad-period" };
  const { frame } = asked;
  const { aircraft, operator } = last;

  const sound = new SoundStream();
  const kept: LedgerEvent[] = [];
  async function* passing(): AsyncGenerator<LedgerEvent> {
    for await (const events of source.events()) {
      await sound.see(events);
      for (const event of events) {
        if (isOfRecord(event, frame.period, gist)) kept.push(event);
        yield event;
      }
    }
  }
  const about = { aircraft, operator, exportedAt: frame.madeAt };
  const { file, sha256 } = await pack(ledgerLines(about, source.count, passing()));
  if (!sound.isSound()) return await asAWhole(source, given);
  const ledger = {
    file: ledgerFileName(aircraft),
    sha256,
    events: source.count,
    devices: sound.devices,
    isSound: true,
    says: SOUND,
  };
  return { ok: true, record: await recordIn(frame, kept.sort(compareEvents), ledger), file };
}

function look(gist: Gist, event: LedgerEvent): void {
  if (gist.last === undefined || compareEvents(event, gist.last) > 0) gist.last = event;
  const day = dayOf(event.recordedAt);
  if (gist.begin === undefined || day < gist.begin) gist.begin = day;
  if (!isKnownEvent(event)) return;
  if (event.type === "walk.started") gist.walks.set(event.body.walk, day);
  if (event.type === "event.withdrawn") gist.taken.add(event.body.event);
}

/** What was answered on walks outside the period is not in its record; who wrote in it, and what was taken back, is. */
function isOfRecord(event: LedgerEvent, { from, to }: RecordPeriod, { walks, taken }: Gist): boolean {
  const day = dayOf(event.recordedAt);
  if (!isKnownEvent(event)) return day <= to;
  if (event.type === "event.withdrawn" || event.type === "book.adopted" || taken.has(event.id)) return true;
  if (day > to) return false;
  if (event.type !== "check.answered" && event.type !== "walk.interrupted") return true;
  const began = walks.get(event.body.walk);
  return day >= from || began === undefined || (began >= from && began <= to);
}

async function asAWhole(
  source: LedgerSource,
  given: Parameters<typeof recordOfLedger>[1],
): Promise<SourceRecord> {
  const events: LedgerEvent[] = [];
  for await (const some of source.events()) for (const event of some) events.push(event);
  const result = await recordOfLedger(events, given);
  return result.ok ? { ok: true, record: result.record, file: result.ledgerText } : result;
}

/** So much text goes into the file at once. */
const HANDFUL = 1_000;

async function pack(
  lines: AsyncIterable<string>,
): Promise<{ readonly file: PackedFile; readonly sha256: string }> {
  const deflate = createDeflate();
  const parts: Uint8Array[] = [];
  deflate.on("data", (part: Uint8Array) => parts.push(part));
  const ended = once(deflate, "end");
  const md5 = createHash("md5");
  const sha256 = createHash("sha256");
  let size_B = 0;
  const put = async (text: string) => {
    const bytes = Buffer.from(text, "utf8");
    size_B += bytes.byteLength;
    md5.update(bytes);
    sha256.update(bytes);
    if (!deflate.write(bytes)) await once(deflate, "drain");
  };
  let some: string[] = [];
  for await (const line of lines) {
    some.push(line, "\n");
    if (some.length < 2 * HANDFUL) continue;
    await put(some.join(""));
    some = [];
  }
  await put(some.join(""));
  deflate.end();
  await ended;
  return {
    file: { deflated: Buffer.concat(parts), size_B, md5: md5.digest("hex") },
    sha256: sha256.digest("hex"),
  };
}
