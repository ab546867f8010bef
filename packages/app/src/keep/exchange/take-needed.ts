import type { AircraftRow, OlderRow } from "../storage/schema.ts";
import { startAgain } from "./aircraft-row.ts";
import type { CheckedNeeded } from "./check-page.ts";
import { EpochMoved, type ExchangeContext, ServerInconsistent } from "./context.ts";
import { takePage } from "./take-page.ts";

type Taking = NonNullable<OlderRow["taking"]>;

/**
 * Takes what this phone needs of a long ledger: all but what was answered on walks long past. A phone that is new to
 * it is level with the server then, up to where the taking began; one that has it already gets what has become needed
 * since. Broken off, it goes on where it was.
 *
 * @param row as it stands in the storage
 * @returns `false` from a server that cannot tell what is needed
 * @throws {EpochMoved} {OutOfReach} {Refused} {ServerInconsistent}
 */
export async function takeNeeded(context: ExchangeContext, row: AircraftRow): Promise<boolean> {
  const { aircraft, epoch } = row;
  let taking = row.older?.taking?.epoch === epoch ? (row.older?.taking ?? null) : null;
  for (;;) {
    const place = taking === null ? { after: 0 } : { after: taking.to, upTo: taking.upTo };
    const page = await context.server.needed(aircraft, place);
    if (page === null) return false;
    if (page.epoch !== epoch) throw new EpochMoved(page.epoch);
    if (page.upTo !== (place.upTo ?? page.upTo)) {
      await startAgain(context, aircraft, epoch); // it had more when the taking began: it has lost something
      return true;
    }
    if (page.to <= place.after && page.to < page.upTo) {
      throw new ServerInconsistent(
        `The server's answer to what ${aircraft} needs after number ${place.after} goes to ${page.to} of ${page.upTo}.`,
      );
    }
    const before = taking;
    const taken = await takePage(context, aircraft, page, (now) => stepTo(now, before, page));
    if (taken === null) return true; // another tab is at it: whoever asked looks again
    taking = taken.row.older?.taking ?? null;
    if (taking === null) return true;
  }
}

function stepTo(row: AircraftRow, before: Taking | null, page: CheckedNeeded): AircraftRow | null {
  const { epoch, older } = row;
  const isWhereItWas = JSON.stringify(older?.taking ?? null) === JSON.stringify(before);
  if (epoch !== page.epoch || !isWhereItWas) return null;
  const isNew = row.pulledTo === 0;
  const next: OlderRow = {
    wholeFrom: isNew ? page.wholeFrom : Math.min(older?.wholeFrom ?? page.wholeFrom, page.wholeFrom),
    since: (isNew ? sinceIn(page, before) : null) ?? older?.since ?? null,
    askAgain: older?.askAgain ?? false,
    taking: { epoch: page.epoch, upTo: page.upTo, to: page.to },
  };
  const isFirst = row.eventCount === 0 || row.comingTo !== undefined;
  if (page.to < page.upTo) return { ...row, older: next, ...(isFirst ? { comingTo: page.upTo } : {}) };
  const last = page.entries.at(-1);
  const isLast = last !== undefined && "event" in last && last.ledgerSeq === page.upTo;
  const { older: _before, comingTo: _all, ...rest } = row;
  return {
    ...rest,
    ...(isNew ? { pulledTo: page.upTo, pulledId: isLast ? last.event.id : null } : {}),
    ...(next.wholeFrom > 1 ? { older: { ...next, askAgain: false, taking: null } } : {}),
  };
}

/** The first event from which on everything is here, when this page has it. */
function sinceIn({ entries, wholeFrom }: CheckedNeeded, before: Taking | null): OlderRow["since"] {
  if ((before?.to ?? 0) >= wholeFrom) return null;
  const first = entries.find((entry) => entry.ledgerSeq >= wholeFrom && "event" in entry);
  return first !== undefined && "event" in first
    ? { hlc: first.event.hlc, recordedAt: first.event.recordedAt }
    : null;
}
