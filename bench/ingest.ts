/*
 * How fast events are taken in: pushes of 500 through the PostgreSQL store, against raw multi-row INSERTs of the same
 * rows, through the same driver, into a table of the same shape with the same indexes, in the same PostgreSQL, which
 * waits for the disk at each commit. The two take turns. Limit: the store keeps at least 0.60 of the raw rate; more is
 * better, and about 1 means that what the store adds (the locked counter row, what is known already, one JSON
 * document in place of 4,000 placeholders) costs no more than it saves.
 *
 *   node --expose-gc bench/ingest.ts
 */
import { type Arrival, openStore } from "@witnessmark/store";
import { startTestPostgres } from "@witnessmark/store/testing/postgres";
import { Pool } from "pg";

const LEAST_1 = 0.6;
const WARM_UPS = 2;
const ROUNDS = 9;
const PUSH_EVENTS = 500;
const PUSHES_A_ROUND = 10;
const OPERATOR = "own";
const AIRCRAFT = "ZZ-SKR";
const RECEIVED_AT_MS = Date.UTC(2031, 4, 6);
const COLUMNS = 8;

type Event = Arrival & { readonly kind: "sound" };

/** Events of the size that a walk makes: about 600 bytes of canonical JSON. */
function pushOf(device: string, from: number): readonly Event[] {
  return Array.from({ length: PUSH_EVENTS }, (_, index) => {
    const deviceSeq = from + index;
    const id = `${device.slice(0, 14)}-8${String(deviceSeq).padStart(3, "0").slice(-3)}-${String(deviceSeq).padStart(12, "0")}`;
    const text = JSON.stringify({
      aircraft: AIRCRAFT,
      author: { id: "01890a5d-ac96-774b-bcce-b302099a8057", name: "A. Pilot", role: "pilot" },
      body: { answer: "as-it-should-be", check: "right-main-tyre-pressure", walk: device },
      device,
      deviceSeq,
      hash: String(deviceSeq).padStart(64, "a"),
      hlc: `${String(RECEIVED_AT_MS + deviceSeq).padStart(15, "0")}-00000`,
      id,
      operator: OPERATOR,
      previousHash: String(deviceSeq - 1).padStart(64, "a"),
      recordedAt: "2031-05-06T09:00:00.000+02:00",
      schemaVersion: 1,
      type: "check.answered",
    });
    return { kind: "sound", id, device, deviceSeq, text };
  });
}

const VALUES = Array.from(
  { length: PUSH_EVENTS },
  (_, row) =>
    `(${Array.from({ length: COLUMNS }, (__, column) => `$${row * COLUMNS + column + 1}`).join(", ")})`,
).join(", ");

const insertInto = (table: string) =>
  `insert into ${table} (operator, aircraft, ledger_seq, id, device, device_seq, received_at_ms, text) values ${VALUES}`;

const median = (values: readonly number[]): number => {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
};

const shown = (values: readonly number[]) =>
  `${median(values).toFixed(2)} (${Math.min(...values).toFixed(2)} to ${Math.max(...values).toFixed(2)})`;

const postgres = await startTestPostgres({ waitForDisk: true });
try {
  const databaseUrl = await postgres.createDatabase();
  const store = await openStore({ databaseUrl, file: "" });
  const own = store.forOperator(OPERATOR);
  const pool = new Pool({ connectionString: databaseUrl, max: 10 });
  for (const table of ["raw_one", "raw_two"])
    await pool.query(`create table ${table} (like event including all)`);
  const fsync = (await pool.query("show fsync")).rows[0]?.fsync;
  console.log(`${postgres.says}; fsync ${fsync}`);
  if (fsync !== "on") throw new Error("Expected a PostgreSQL that waits for the disk.");

  const throughStore = async (push: readonly Event[]) => {
    const { results } = await own.append(AIRCRAFT, push, RECEIVED_AT_MS);
    if (results.some(({ outcome }) => outcome !== "accepted"))
      throw new Error("Expected every event to be new.");
  };
  const rawInto = (table: string) => {
    const sql = insertInto(table);
    return (push: readonly Event[], seq: number) =>
      pool.query(
        sql,
        push.flatMap(({ id, device, deviceSeq, text }, index) => [
          OPERATOR,
          AIRCRAFT,
          seq + index + 1,
          id,
          device,
          deviceSeq,
          RECEIVED_AT_MS,
          text,
        ]),
      );
  };
  const rawOne = rawInto("raw_one");
  const rawTwo = rawInto("raw_two");

  const ratios_1: number[] = [];
  const noise_1: number[] = [];
  const rates_perSecond: { readonly store: number[]; readonly raw: number[] } = { store: [], raw: [] };
  for (let round = 0; round < WARM_UPS + ROUNDS; round += 1) {
    const device = `01890a5d-${String(round).padStart(4, "0")}-774b-bcce-b302099a8057`;
    const pushes = Array.from({ length: PUSHES_A_ROUND }, (_, push) =>
      pushOf(device, push * PUSH_EVENTS + 1),
    );
    const time_ms = { store: 0, one: 0, two: 0 };
    const sides = [
      ["store", throughStore],
      ["one", rawOne],
      ["two", rawTwo],
    ] as const;
    globalThis.gc?.();
    // The sides take turns push by push, and the order goes round: what else the machine does meets all alike.
    for (const [index, push] of pushes.entries()) {
      for (let turn = 0; turn < sides.length; turn += 1) {
        const [side, work] = sides[(turn + index + round) % sides.length] ?? sides[0];
        const start_ms = performance.now();
        await work(push, (round * PUSHES_A_ROUND + index) * PUSH_EVENTS);
        time_ms[side] += performance.now() - start_ms;
      }
    }
    if (round < WARM_UPS) continue;
    const events = PUSHES_A_ROUND * PUSH_EVENTS;
    ratios_1.push(time_ms.one / time_ms.store);
    noise_1.push(time_ms.one / time_ms.two);
    rates_perSecond.store.push(events / (time_ms.store / 1_000));
    rates_perSecond.raw.push(events / (time_ms.one / 1_000));
  }
  const rate = (values: readonly number[]) => Math.round(median(values)).toLocaleString("en");
  console.log(
    `${ROUNDS} rounds of ${PUSHES_A_ROUND} pushes of ${PUSH_EVENTS} events, after ${WARM_UPS} to warm up`,
  );
  console.log(
    `store: ${rate(rates_perSecond.store)} events/s, raw: ${rate(rates_perSecond.raw)} events/s (medians)`,
  );
  console.log(`store against raw: ${shown(ratios_1)}, at least ${LEAST_1.toFixed(2)}`);
  console.log(`raw against raw, the noise: ${shown(noise_1)}`);
  await pool.end();
  await store.close();
  if (!(median(ratios_1) >= LEAST_1)) process.exitCode = 1;
} finally {
  await postgres.stop();
}
