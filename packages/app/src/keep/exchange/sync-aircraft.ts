import { inOutbox } from "../ledger/load.ts";
import type { AircraftRow } from "../storage/schema.ts";
import { putAll, writeStrictly } from "../storage/strict-write.ts";
import { changeRow, readRow, startAgain } from "./aircraft-row.ts";
import { EpochMoved, type ExchangeContext, ServerInconsistent } from "./context.ts";
import { pullAll } from "./pull.ts";
import { pushMissing, pushWaiting } from "./push.ts";
import { settleConflicts } from "./settle-conflicts.ts";
import { takeNeeded } from "./take-needed.ts";

/** How often an exchange of one aircraft may start over before it is put off. */
const ROUNDS_MOST = 12;

/**
 * Brings one aircraft's ledger here and at the server to the same events.
 *
 * @param epoch of the server's database, as last heard
 * @param thorough compare what both hold, device by device, before anything is sent: the first time since the page
 *   was opened, and now and then. Otherwise what waits is sent at once, so that the other phones see it soon.
 * @throws {OutOfReach} {Refused} {ServerInconsistent}
 */
export async function syncAircraft(
  context: ExchangeContext,
  aircraft: string,
  epoch: string,
  thorough: boolean,
): Promise<void> {
  let current = epoch;
  for (let round = 0; round < ROUNDS_MOST; round++) {
    try {
      const row = await readRow(context, aircraft);
      if (row.epoch !== current) await startAgain(context, aircraft, current);
      const isSettled = await syncOnce(context, aircraft, thorough || row.epoch !== current || row.refill);
      if (isSettled) return;
    } catch (error) {
      if (!(error instanceof EpochMoved)) throw error;
      current = error.epoch;
    }
  }
  throw new ServerInconsistent(`The exchange of ${aircraft} does not come to rest; it is tried again later.`);
}

/** @returns whether both sides now hold the same, as far as can be told */
async function syncOnce(context: ExchangeContext, aircraft: string, thorough: boolean): Promise<boolean> {
  if (thorough) {
    const before = await pullAll(context, aircraft);
    if (before.usedElsewhere !== null) {
      await settleConflicts(context, aircraft, [], before.usedElsewhere);
    }
    if (!(await refill(context, aircraft))) return false;
  }
  const sent = await pushWaiting(context, aircraft);
  if (sent.conflicts.length > 0) {
    await settleConflicts(context, aircraft, sent.conflicts, null);
    return false;
  }
  const row = await readRow(context, aircraft);
  if (row.refill) return false; // a hole was met: both sides are compared in the next round
  if (sent.head === 0 || row.pulledTo !== sent.head) {
    const { usedElsewhere } = await pullAll(context, aircraft);
    if (usedElsewhere !== null) await settleConflicts(context, aircraft, [], usedElsewhere);
    if (usedElsewhere !== null || (await readRow(context, aircraft)).refill) return false;
  }
  const level = await readRow(context, aircraft);
  if (level.older?.askAgain && level.pulledTo > 0) await takeNeeded(context, level);
  return true;
}

/**
 * Sends what the server has lost.
 *
 * @returns `false` when something was found that has to be settled by another round
 */
async function refill(context: ExchangeContext, aircraft: string): Promise<boolean> {
  const { epoch, devices } = await context.server.devices(aircraft);
  const row = await readRow(context, aircraft);
  if (epoch !== row.epoch) throw new EpochMoved(epoch);
  if (!row.refill) {
    if (!(await lacksSomething(context, row, devices))) return true;
    // An older copy was put back and has grown since: its numbers are not those that were counted here.
    await startAgain(context, aircraft, epoch);
    return false;
  }
  const { conflicts } = await pushMissing(context, aircraft, devices);
  if (conflicts.length > 0) {
    await settleConflicts(context, aircraft, conflicts, null);
    return false;
  }
  const after = await context.server.devices(aircraft);
  if (after.epoch !== epoch) throw new EpochMoved(after.epoch);
  await offerPhotosAgain(context, aircraft);
  const settled = Object.fromEntries(
    [...context.heads(aircraft).keys()].map((device) => [device, after.devices[device] ?? 0]),
  );
  await changeRow(context, aircraft, (before) => ({ ...before, refill: false, settled }));
  return true;
}

/** Whether the server has less of some device than this phone knows it to have had. */
async function lacksSomething(
  context: ExchangeContext,
  row: AircraftRow,
  devices: Readonly<Record<string, number>>,
): Promise<boolean> {
  const waiting = await context.connection.run((database) =>
    database.getAllFromIndex("outbox", "byAircraft", inOutbox(row.aircraft, "waiting")),
  );
  const firstWaiting = new Map<string, number>();
  for (const { device, deviceSeq } of waiting) {
    firstWaiting.set(device, Math.min(deviceSeq, firstWaiting.get(device) ?? deviceSeq));
  }
  return [...context.heads(row.aircraft)].some(([device, highest]) => {
    const has = devices[device] ?? 0;
    const sent = Math.min(highest, (firstWaiting.get(device) ?? highest + 1) - 1);
    return sent > has && row.settled[device] !== has;
  });
}

/** A server that lost events may have lost pictures too. */
async function offerPhotosAgain(context: ExchangeContext, aircraft: string): Promise<void> {
  await context.connection.run((database) =>
    writeStrictly(database, ["uploads"], async (transaction) => {
      const store = transaction.objectStore("uploads");
      const there = (await store.index("byState").getAll("there")).filter((row) => row.aircraft === aircraft);
      await putAll(
        store,
        there.map((row) => ({ ...row, state: "waiting" as const, wasThere: true })),
      );
    }),
  );
}
