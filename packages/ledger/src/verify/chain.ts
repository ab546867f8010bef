import { type LedgerFault, nameOf, spoken } from "../fault.ts";
import type { Placed } from "./placed.ts";

/**
 * Numbers and links of one device's events, which come ordered by deviceSeq: 1, 2, 3 … without a hole, each naming the
 * hash of the one before.
 */
export function chainFaults(chain: readonly Placed[]): readonly LedgerFault[] {
  const faults: LedgerFault[] = [];
  const numbers = [...Map.groupBy(chain, ({ event }) => event.deviceSeq)];
  let beforeSeq = 0;
  /** The hashes an event may follow; a device that forked left more than one. `null` stands for its beginning. */
  let before: ReadonlySet<string | null> = new Set([null]);
  for (const [seq, same] of numbers) {
    faults.push(...doubled(same));
    const isNext = seq === beforeSeq + 1;
    if (!isNext) faults.push(...missing(same, beforeSeq));
    for (const placed of same) {
      if (isNext && !before.has(placed.event.previousHash)) faults.push(broken(placed, before));
    }
    beforeSeq = seq;
    before = new Set(same.map(({ event }) => event.hash));
  }
  return faults;
}

function doubled([first, ...others]: readonly Placed[]): readonly LedgerFault[] {
  if (first === undefined) return [];
  return others.map(({ event, line }) => {
    const isSame = event.id === first.event.id && event.hash === first.event.hash;
    return isSame
      ? { code: "number-twice", ...nameOf(event, line), says: `${spoken(event)} is here twice` }
      : {
          code: "fork",
          ...nameOf(event, line),
          says: `device ${event.device} made two events with the number ${event.deviceSeq}: ${first.event.id} with hash ${first.event.hash}, and ${event.id} with hash ${event.hash}`,
        };
  });
}

function missing(same: readonly Placed[], beforeSeq: number): readonly LedgerFault[] {
  const [first] = same;
  if (first === undefined) return [];
  const { event, line } = first;
  const from = beforeSeq + 1;
  const to = event.deviceSeq - 1;
  const which = from === to ? `event ${from} is` : `events ${from} to ${to} are`;
  const says = `${which} missing from device ${event.device}, before ${spoken(event)}`;
  return [{ code: "number-missing", ...nameOf(event, line), says }];
}

function broken({ event, line }: Placed, before: ReadonlySet<string | null>): LedgerFault {
  const expected = [...before].map((hash) => hash ?? "none, as a device's first does").join(" or ");
  const says = `${spoken(event)} does not follow the one before it: expected previousHash ${expected}, found ${event.previousHash ?? "none"}`;
  return { code: "chain-broken", ...nameOf(event, line), says };
}
