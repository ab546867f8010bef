import type { AircraftState } from "@witnessmark/ledger";
import { CACHE_SHAPE } from "../cache-shape.ts";
import type { KeepDatabase } from "../storage/schema.ts";
import { writeStrictly } from "../storage/strict-write.ts";

/**
 * Keeps a copy of a folded state to start from next time. Only when it is right: everything that the storage holds up
 * to its place is in it. An event that comes in before that place later is noticed by its count.
 */
export async function saveProjection(database: KeepDatabase, state: AircraftState): Promise<void> {
  const { aircraft, upTo } = state;
  if (upTo === null) return;
  await writeStrictly(database, ["aircraft", "events", "projections"], async (transaction) => {
    const row = await transaction.objectStore("aircraft").get(aircraft);
    const range = IDBKeyRange.bound([aircraft], [aircraft, upTo.hlc, upTo.device, upTo.deviceSeq]);
    const count = await transaction.objectStore("events").index("byOrder").count(range);
    if (row === undefined || count !== state.eventCount) return;
    await transaction.objectStore("projections").put({ aircraft, shape: CACHE_SHAPE, state });
  });
}
