import { setApart } from "../ledger/set-apart.ts";
import { allOf } from "../storage/strict-write.ts";
import { type ExchangeContext, ServerInconsistent } from "./context.ts";

/**
 * Brings this phone's ledger into line with the server's where both hold different events in one place: this phone's
 * own are entered again under a new device id, others' are kept apart.
 *
 * @param usedElsewhere this phone's id, when the server holds events under it that this phone never made
 */
export async function settleConflicts(
  context: ExchangeContext,
  aircraft: string,
  conflicts: readonly string[],
  usedElsewhere: string | null,
): Promise<void> {
  if (conflicts.length === 0 && usedElsewhere === null) return;
  const device = context.device();
  const own = new Set([device.id, ...device.former]);
  const found = await context.connection.run((database) =>
    allOf(conflicts.map((id) => database.get("events", id))),
  );
  const events = found.filter((event) => event !== undefined);

  const chains = new Map<string, string[]>(usedElsewhere === null ? [] : [[usedElsewhere, []]]);
  const others: string[] = [];
  for (const event of events) {
    if (own.has(event.device)) chains.set(event.device, [...(chains.get(event.device) ?? []), event.id]);
    else others.push(event.id);
  }
  for (const [chain, ids] of chains) {
    if (context.newIds.left-- <= 0) {
      throw new ServerInconsistent(
        "The server keeps finding other entries in place of this phone's. Export the ledger and tell whoever runs the server.",
      );
    }
    // a part of its own: hardly any exchange comes to this
    const { enterAgain } = await import("../ledger/enter-again.ts");
    const row = await context.locks.inPage(`append:${aircraft}`, () =>
      enterAgain(context.connection, aircraft, chain, ids, context.now_ms()),
    );
    await context.deviceChanged();
    await context.tell({ aircraft, row, lookAgain: true });
  }
  if (others.length > 0) {
    await context.tell({
      aircraft,
      row: await setApart(context.connection, aircraft, others),
      lookAgain: true,
    });
  }
}
