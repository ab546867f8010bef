import type { Arrival, Outcome } from "./store.ts";

/** An event that the aircraft's ledger already holds. */
export interface Known {
  readonly id: string;
  readonly device: string;
  readonly deviceSeq: number;
  readonly ledgerSeq: number;
  readonly text: string;
}

/** A row to add to the quarantine. */
export interface SetAside {
  readonly reason: string;
  readonly text: string;
}

export interface Decided {
  readonly results: readonly Outcome[];
  /** The events to add, numbered on from the head without a hole. */
  readonly numbered: readonly Known[];
  readonly setAside: readonly SetAside[];
  readonly head: number;
}

const placeOf = (event: { readonly device: string; readonly deviceSeq: number }) =>
  `${event.deviceSeq} ${event.device}`;

/**
 * What becomes of each arrival, given what the ledger holds. Both databases use this one rule. Pure; the caller holds
 * the aircraft's counter row, so that `head` and `known` cannot change before the result is written.
 *
 * @param head highest ledgerSeq given so far, 0 for none
 * @param known at least every event of the aircraft that shares an id, or a device and deviceSeq, with an arrival
 */
export function decide(head: number, arrivals: readonly Arrival[], known: Iterable<Known>): Decided {
  const byId = new Map<string, Known>();
  const byPlace = new Map<string, Known>();
  const learn = (event: Known) => {
    byId.set(event.id, event);
    byPlace.set(placeOf(event), event);
  };
  for (const event of known) learn(event);

  const numbered: Known[] = [];
  const setAside: SetAside[] = [];
  const results = arrivals.map((arrival): Outcome => {
    if (arrival.kind === "unsound") {
      setAside.push({ reason: arrival.reason, text: arrival.text });
      return { id: arrival.id, outcome: "quarantined", reason: arrival.reason };
    }
    const same = byId.get(arrival.id);
    if (same !== undefined && same.text === arrival.text) {
      return { id: arrival.id, outcome: "duplicate", ledgerSeq: same.ledgerSeq };
    }
    const reason = clash(arrival, same, byPlace.get(placeOf(arrival)));
    if (reason !== null) {
      setAside.push({ reason, text: arrival.text });
      return { id: arrival.id, outcome: "conflict", reason };
    }
    const event: Known = {
      id: arrival.id,
      device: arrival.device,
      deviceSeq: arrival.deviceSeq,
      ledgerSeq: head + numbered.length + 1,
      text: arrival.text,
    };
    numbered.push(event);
    learn(event);
    return { id: event.id, outcome: "accepted", ledgerSeq: event.ledgerSeq };
  });
  return { results, numbered, setAside, head: head + numbered.length };
}

/** Why an arrival cannot stand beside what is there, or `null` when it can. */
function clash(
  arrival: Arrival & { readonly kind: "sound" },
  same: Known | undefined,
  place: Known | undefined,
): string | null {
  if (same !== undefined) {
    return `Event ${arrival.id} is already in the ledger as number ${same.ledgerSeq}, with other contents or another signature. The first one stays; this one is set aside.`;
  }
  if (place !== undefined) {
    return `Device ${arrival.device} has already sent another event as its number ${arrival.deviceSeq} (${place.id}, number ${place.ledgerSeq} of the ledger). The first one stays; this one is set aside. A phone put back to an older copy does this.`;
  }
  return null;
}
