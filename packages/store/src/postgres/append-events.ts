import { createHash } from "node:crypto";
import type { ClientBase } from "pg";
import { decide, type Known, type SetAside } from "../decide.ts";
import { type Row, textOf, wholeOf } from "../row.ts";
import type { Appended, Arrival } from "../store.ts";

const LOCK = `
  select head, (select value from meta where key = 'epoch') as epoch
  from aircraft where operator = $1 and aircraft = $2 for update`;

const FIRST = "insert into aircraft (operator, aircraft, head) values ($1, $2, 0) on conflict do nothing";

/** An event can come twice, once by each key; the caller does not mind. */
const KNOWN = `
  select id, device, device_seq, ledger_seq, text from event
  where operator = $1 and aircraft = $2 and id = any ($3::text[])
  union all
  select e.id, e.device, e.device_seq, e.ledger_seq, e.text
  from unnest($4::text[], $5::bigint[]) as came (device, device_seq)
  join event e on e.operator = $1 and e.aircraft = $2 and e.device = came.device and e.device_seq = came.device_seq`;

/** One statement text whatever the size of the batch, and no limit on parameters. */
const ADD = `
  with added as (
    insert into event (operator, aircraft, ledger_seq, id, device, device_seq, received_at_ms, text)
    select $1, $2, ledger_seq, id, device, device_seq, $3, text
    from jsonb_to_recordset($4::jsonb) as came (ledger_seq bigint, id text, device text, device_seq bigint, text text)
  )
  update aircraft set head = $5 where operator = $1 and aircraft = $2`;

const SET_ASIDE = `
  insert into quarantine (operator, aircraft, text_sha256, received_at_ms, reason, text)
  select $1, $2, text_sha256, $3, reason, text
  from jsonb_to_recordset($4::jsonb) as came (text_sha256 text, reason text, text text)
  on conflict do nothing`;

/** Everything of a push between `begin` and `commit`. */
export async function appendEvents(
  client: ClientBase,
  operator: string,
  aircraft: string,
  arrivals: readonly Arrival[],
  receivedAt_ms: number,
): Promise<Appended> {
  const key = [operator, aircraft];
  let locked = await client.query(LOCK, key);
  if (locked.rowCount === 0) {
    await client.query(FIRST, key);
    locked = await client.query(LOCK, key);
  }
  const row: Row = locked.rows[0] ?? {};
  const head = wholeOf(row, "head");
  const decided = decide(head, arrivals, await knownEvents(client, key, arrivals));
  if (decided.numbered.length > 0) {
    await client.query(ADD, [
      ...key,
      receivedAt_ms,
      JSON.stringify(decided.numbered.map(rowOf)),
      decided.head,
    ]);
  }
  if (decided.setAside.length > 0) {
    await client.query(SET_ASIDE, [
      ...key,
      receivedAt_ms,
      JSON.stringify(decided.setAside.map(setAsideRowOf)),
    ]);
  }
  return { epoch: textOf(row, "epoch"), head: decided.head, results: decided.results };
}

async function knownEvents(
  client: ClientBase,
  key: readonly string[],
  arrivals: readonly Arrival[],
): Promise<readonly Known[]> {
  const sound = arrivals.filter((arrival) => arrival.kind === "sound");
  if (sound.length === 0) return [];
  const { rows } = await client.query(KNOWN, [
    ...key,
    sound.map(({ id }) => id),
    sound.map(({ device }) => device),
    sound.map(({ deviceSeq }) => deviceSeq),
  ]);
  return rows.map((row: Row) => ({
    id: textOf(row, "id"),
    device: textOf(row, "device"),
    deviceSeq: wholeOf(row, "device_seq"),
    ledgerSeq: wholeOf(row, "ledger_seq"),
    text: textOf(row, "text"),
  }));
}

function rowOf({ ledgerSeq, id, device, deviceSeq, text }: Known) {
  return { ledger_seq: ledgerSeq, id, device, device_seq: deviceSeq, text };
}

function setAsideRowOf({ reason, text }: SetAside) {
  return { text_sha256: createHash("sha256").update(text).digest("hex"), reason, text };
}
