import { canonical, hashOfEvent, parseEvent, saysOfFaults } from "@witnessmark/ledger";
import type { Arrival } from "@witnessmark/store";

/**
 * Reads what was sent as an event of this operator and aircraft. Whatever is wrong with it, it comes out as something
 * to keep: nothing that was sent is thrown away. Signatures are judged by whoever reads the ledger, who has the keys;
 * a device's key can arrive after what it signed.
 */
export async function sift(value: unknown, operator: string, aircraft: string): Promise<Arrival> {
  const unsound = (reason: string): Arrival => ({
    kind: "unsound",
    id: idOf(value),
    text: textOf(value),
    reason,
  });
  try {
    const parsed = parseEvent(value);
    if (!parsed.ok)
      return unsound(`This is not an event as this version knows it. ${saysOfFaults(parsed.faults)}.`);
    const { event } = parsed;
    if (event.operator !== operator) {
      return unsound(`It belongs to the operator ${event.operator}; this server keeps those of ${operator}.`);
    }
    if (event.aircraft !== aircraft) {
      return unsound(`It is of the aircraft ${event.aircraft}, but was sent for ${aircraft}.`);
    }
    const hash = await hashOfEvent(event);
    if (hash !== event.hash) {
      return unsound(
        `Its hash is ${event.hash}, but its contents have the hash ${hash}: it was changed after it was made.`,
      );
    }
    return {
      kind: "sound",
      id: event.id,
      device: event.device,
      deviceSeq: event.deviceSeq,
      text: canonical(event),
    };
  } catch (error) {
    // Only a value that no event can be gets here: one nested thousands deep, or a number beyond all numbers.
    return unsound(
      `It cannot be read as an event: ${error instanceof Error ? error.message : String(error)}.`,
    );
  }
}

function idOf(value: unknown): string {
  if (typeof value !== "object" || value === null || !("id" in value)) return "";
  return typeof value.id === "string" ? value.id.slice(0, 200) : "";
}

/** The value as text that every database can hold; canonical where it has such a text. */
function textOf(value: unknown): string {
  try {
    return canonical(value);
  } catch {
    // A lone surrogate or an infinity has no canonical text; plain JSON has one for it.
    return JSON.stringify(value);
  }
}
