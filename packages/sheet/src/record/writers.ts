import type { AircraftState } from "@witnessmark/ledger";
import { importOf, isEventType, isKnownEvent, type LedgerEvent } from "@witnessmark/ledger";
import type { RecordCorrection, RecordWriter } from "./aircraft-record.ts";
import { eventWords, personWords } from "./names.ts";

/** What was taken back in the period, by whom and why; what it was stays in the ledger. */
export function correctionsOf(
  entries: readonly LedgerEvent[],
  isIn: (at: string) => boolean,
): readonly RecordCorrection[] {
  const types = new Map(entries.map(({ id, type }) => [id, type]));
  const brought = Map.groupBy(entries, importOf);
  return entries.flatMap((event) => {
    if (!isKnownEvent(event) || event.type !== "event.withdrawn" || !isIn(event.recordedAt)) return [];
    const type = types.get(event.body.event);
    const bundle = brought.get(event.body.event);
    const what =
      type !== undefined
        ? isEventType(type)
          ? eventWords(type)
          : type
        : bundle === undefined
          ? "not in this ledger"
          : `what a file brought in, ${bundle.length} ${bundle.length === 1 ? "entry" : "entries"}`;
    return [
      {
        at: event.recordedAt,
        by: personWords(event.author),
        entry: event.id,
        what: what.charAt(0).toUpperCase() + what.slice(1),
        taken: event.body.event,
        why: event.body.why,
      },
    ];
  });
}

/** Who wrote in the period, and with what device. */
export function writersOf(
  entries: readonly LedgerEvent[],
  { devices }: AircraftState,
  isIn: (at: string) => boolean,
): readonly RecordWriter[] {
  const written = entries.filter(({ recordedAt }) => isIn(recordedAt));
  const groups = Map.groupBy(written, ({ author, device }) => `${personWords(author)}\n${device}`);
  return [...groups.entries()].map(([key, events]) => {
    const [name = "", id = ""] = key.split("\n");
    const device = devices.get(id);
    return {
      name,
      device: `${device?.label ?? "A device that did not introduce itself"}, ${id}`,
      key:
        device === undefined
          ? "not known"
          : device.key.kind === "none"
            ? `No key: ${device.key.why}`
            : `ECDSA P-256, x ${device.key.publicKey.x}`,
      entries: events.length,
    };
  });
}
