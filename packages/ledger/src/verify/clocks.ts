import type { LedgerEvent } from "../event.ts";
import { type ClockRemark, nameOf, type RemarkCode, spoken } from "../fault.ts";
import { hlcTime_ms, isHlc } from "../hlc.ts";
import type { Placed } from "./placed.ts";

/** Wall clocks are set back by this much all the time. */
const SET_BACK_MS = 1000;

interface Oddity {
  readonly code: RemarkCode;
  readonly says: string;
}

/**
 * What is odd about the clock of one device, whose events come ordered by deviceSeq. The same oddity of events that
 * follow each other is one remark.
 */
export function clockRemarks(
  chain: readonly Placed[],
  bound_ms: number,
  now_ms: number | undefined,
): readonly ClockRemark[] {
  const remarks: { -readonly [K in keyof ClockRemark]: ClockRemark[K] }[] = [];
  const running = new Map<RemarkCode, (typeof remarks)[number]>();
  let before: LedgerEvent | undefined;
  for (const { event, line } of chain) {
    const found = new Map(
      [...oddities(event, bound_ms, now_ms), ...(before === undefined ? [] : jumps(before, event))].map(
        (oddity) => [oddity.code, oddity],
      ),
    );
    for (const code of [...running.keys()]) if (!found.has(code)) running.delete(code);
    for (const [code, { says }] of found) {
      const run = running.get(code);
      if (run !== undefined) {
        run.toSeq = event.deviceSeq;
        continue;
      }
      const remark = { code, says, ...nameOf(event, line), toSeq: event.deviceSeq };
      running.set(code, remark);
      remarks.push(remark);
    }
    before = event;
  }
  return remarks;
}

function oddities(event: LedgerEvent, bound_ms: number, now_ms: number | undefined): readonly Oddity[] {
  const found: Oddity[] = [];
  const stamp_ms = isHlc(event.hlc) ? hlcTime_ms(event.hlc) : Number.NaN;
  const apart_ms = stamp_ms - Date.parse(event.recordedAt);
  if (Math.abs(apart_ms) > bound_ms) {
    const says = `${spoken(event)}: its stamp is ${span(apart_ms)} its wall time`;
    found.push({ code: "clock-apart", says });
  }
  const offset_ms = event.clockOffset_ms ?? 0;
  if (Math.abs(offset_ms) > bound_ms) {
    found.push({
      code: "clock-wrong",
      says: `${spoken(event)}: its device was ${span(offset_ms)} the server`,
    });
  }
  if (now_ms !== undefined && stamp_ms - now_ms > bound_ms) {
    found.push({ code: "far-future", says: `${spoken(event)}: its stamp is ${span(stamp_ms - now_ms)} now` });
  }
  return found;
}

function jumps(before: LedgerEvent, event: LedgerEvent): readonly Oddity[] {
  const found: Oddity[] = [];
  const back_ms = Date.parse(event.recordedAt) - Date.parse(before.recordedAt);
  if (back_ms < -SET_BACK_MS) {
    const says = `${spoken(event)}: its wall time is ${span(back_ms)} the event before it`;
    found.push({ code: "clock-back", says });
  }
  if (event.deviceSeq > before.deviceSeq && event.hlc <= before.hlc) {
    const says = `${spoken(event)}: its stamp ${event.hlc} is not after ${before.hlc} of the event before it`;
    found.push({ code: "stamp-back", says });
  }
  return found;
}

/** `61 min ahead of`, `2.5 h behind`. */
function span(difference_ms: number): string {
  const size_min = Math.abs(difference_ms) / 60_000;
  const side = difference_ms < 0 ? "behind" : "ahead of";
  if (size_min < 1) return `${(size_min * 60).toFixed(0)} s ${side}`;
  if (size_min < 120) return `${size_min.toFixed(0)} min ${side}`;
  return size_min < 2880
    ? `${(size_min / 60).toFixed(1)} h ${side}`
    : `${(size_min / 1440).toFixed(0)} days ${side}`;
}
