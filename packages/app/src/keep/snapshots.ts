import type { AircraftEntry, KeepSnapshot, KeepStatus } from "./contract.ts";
import type { PhoneState } from "./phone.ts";

/** What a snapshot is made of. */
export interface SnapshotParts {
  readonly phase: KeepSnapshot["phase"];
  readonly openError: string | null;
  readonly phone: PhoneState;
  readonly trouble: string | null;
  readonly persisted: boolean | null;
  readonly updateWaiting: boolean;
  readonly needsNet: boolean;
  readonly entries: ReadonlyMap<string, AircraftEntry>;
}

/** How far the taking of a record that is new to this phone has come. */
export interface Coming {
  readonly aircraft: string;
  readonly to: number;
  readonly of: number;
}

/** Says that a record is not all here yet, so that nobody takes it for the whole. */
export function comingWords(coming: Coming | null): string | null {
  if (coming === null) return null;
  const part_percent = Math.floor((100 * coming.to) / Math.max(1, coming.of));
  return `The record of ${coming.aircraft} is coming from the server: ${part_percent} of 100. Nothing is judged by it before all that is needed is here.`;
}

export interface Snapshots {
  /** The same object until something in it has changed. */
  current(): KeepSnapshot;
  subscribe(onChange: () => void): () => void;
  publish(): void;
}

export function makeSnapshots(parts: () => SnapshotParts): Snapshots {
  const listeners = new Set<() => void>();
  let snapshot: KeepSnapshot | null = null;

  function make(): KeepSnapshot {
    const { phase, openError, phone, trouble, persisted, updateWaiting, needsNet, entries } = parts();
    const status: KeepStatus = {
      toSend: [...entries.values()].reduce((sum, entry) => sum + entry.toSend, 0),
      photosToSend: phone.photosToSend,
      server: phone.server,
      lastReachedAt_ms: phone.lastReachedAt_ms,
      trouble,
      clockOffset_ms: phone.clockOffset_ms,
      persisted,
      updateWaiting,
      needsNet,
    };
    const next: KeepSnapshot = {
      phase,
      openError,
      people: samePeople(snapshot?.people, phone.people),
      person: phone.person,
      aircraft: entries,
      status: snapshot && isSame(snapshot.status, status) ? snapshot.status : status,
    };
    return snapshot && isSame(snapshot, next) ? snapshot : next;
  }

  return {
    current() {
      snapshot ??= make();
      return snapshot;
    },
    subscribe(onChange) {
      listeners.add(onChange);
      return () => listeners.delete(onChange);
    },
    publish() {
      const before = snapshot;
      snapshot = make();
      if (snapshot !== before) for (const listener of [...listeners]) listener();
    },
  };
}

/** The storage gives new objects at each look, with the same people in them. */
function samePeople(
  before: KeepSnapshot["people"] | undefined,
  now: KeepSnapshot["people"],
): KeepSnapshot["people"] {
  return before && JSON.stringify(before) === JSON.stringify(now) ? before : now;
}

function isSame<T extends object>(a: T, b: T): boolean {
  const keys = Object.keys(a) as (keyof T)[]; // both are made above, with the same keys
  return keys.every((key) => Object.is(a[key], b[key]));
}
