import { createHash } from "node:crypto";
import type { ClientBase } from "pg";
import { decide, type Known, type SetAside } from "../decide.ts";
import { type Row, textOf, wholeOf } from "../row.ts";
import type { Appended, Arrival } from "../store.ts";
import { isThereAlready } from "./postgres-fault.ts";

/**
 * The whole of a push whose events are all new, which nearly every push is: locks and moves the counter, and adds the
 * events numbered on from it. One statement text whatever the size of the batch, and no limit on parameters. It fails
 * when an event is there already: to ask for that beforehand, or to say `on conflict do nothing`, costs every push a
 * quarter of its speed.
 */
const ADD_NEW = `
  with counter as (
    update aircraft set head = head + $3 where operator = $1 and aircraft = $2 returning head - $3 as before
  ), added as (
    insert into event (operator, aircraft, ledger_seq, id, device, device_seq, received_at_ms, text)
    select $1, $2, counter.before + came.place, came.id, came.device, came.device_seq, $4, came.text
    from counter, jsonb_to_recordset($5::jsonb)
      as came (place bigint, id text, device text, device_seq bigint, text text)
  )
  select before, (select value from meta where key = 'epoch') as epoch
  from counter`;

const LOCK = `
  select head, (select value from meta where key = 'epoch') as epoch
  from aircraft where operator = $1 and aircraft = $2 for update`;

const FIRST = "insert into aircraft (operator, aircraft, head) values ($1, $2, 0) on conflict do nothing";

/**
 * One look into an index for each arrival and key, whatever the planner knows of the table (`limit` keeps it from
 * reading all of it). An event can come twice, once by each key; the caller does not mind.
 */
const KNOWN = `
  select e.* from unnest($3::text[], $4::text[], $5::bigint[]) as came (id, device, device_seq),
  lateral (
    (select id, device, device_seq, ledger_seq, text from event
     where operator = $1 and aircraft = $2 and id = came.id limit 1)
    union all
    (select id, device, device_seq, ledger_seq, text from event
     where operator = $1 and aircraft = $2 and device = came.device and device_seq = came.device_seq limit 1)
  ) as e`;

const ADD = `
  with added as (
    insert into event (operator, aircraft, ledger_seq, id, device, device_seq, received_at_ms, text)
    select $1, $2, $3 + place, id, device, device_seq, $4, text
    from jsonb_to_recordset($5::jsonb) as came (place bigint, id text, device text, device_seq bigint, text text)
  )
  update aircraft set head = $6 where operator = $1 and aircraft = $2`;

const SET_ASIDE = `
  insert into quarantine (operator, aircraft, text_sha256, received_at_ms, reason, text)
  select $1, $2, text_sha256, $3, reason, text
  from jsonb_to_recordset($4::jsonb) as came (text_sha256 text, reason text, text text)
  on conflict do nothing`;

/** A push, as it comes. */
export interface Push {
  readonly operator: string;
  readonly aircraft: string;
  readonly arrivals: readonly Arrival[];
  readonly receivedAt_ms: number;
}

/**
 * Everything of a push between `begin` and `commit`, in the hope that all its events are new.
 *
 * @returns `null` when they were not, or the aircraft is new: then nothing of it may be committed
 */
export async function appendNew(client: ClientBase, push: Push): Promise<Appended | null> {
  const { operator, aircraft, arrivals, receivedAt_ms } = push;
  const { numbered, setAside } = decide(0, arrivals, []);
  if (numbered.length === 0) return null;
  let row: Row | undefined;
  try {
    const { rows } = await client.query(ADD_NEW, [
      operator,
      aircraft,
      numbered.length,
      receivedAt_ms,
      rowsOf(numbered, 0),
    ]);
    row = rows[0];
  } catch (error) {
    if (isThereAlready(error)) return null;
    throw error;
  }
  if (row === undefined) return null;
  await keepAside(client, push, setAside);
  const { head, results } = decide(wholeOf(row, "before"), arrivals, []);
  return { epoch: textOf(row, "epoch"), head, results };
}

/** Everything of a push between `begin` and `commit`, whatever the ledger holds of it already. */
export async function appendAny(client: ClientBase, push: Push): Promise<Appended> {
  const { operator, aircraft, arrivals, receivedAt_ms } = push;
  const key = [operator, aircraft];
  let locked = await client.query(LOCK, key);
  if (locked.rowCount === 0) {
    await client.query(FIRST, key);
    locked = await client.query(LOCK, key);
  }
  const row: Row = locked.rows[0] ?? {};
  const before = wholeOf(row, "head");
  const { head, results, numbered, setAside } = decide(
    before,
    arrivals,
    await knownEvents(client, key, arrivals),
  );
  if (numbered.length > 0)
    await client.query(ADD, [...key, before, receivedAt_ms, rowsOf(numbered, before), head]);
  await keepAside(client, push, setAside);
  return { epoch: textOf(row, "epoch"), head, results };
}

async function keepAside(client: ClientBase, push: Push, setAside: readonly SetAside[]): Promise<void> {
  if (setAside.length === 0) return;
  const rows = setAside.map(({ reason, text }) => ({
    text_sha256: createHash("sha256").update(text).digest("hex"),
    reason,
    text,
  }));
  await client.query(SET_ASIDE, [push.operator, push.aircraft, push.receivedAt_ms, JSON.stringify(rows)]);
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

/** The events as one JSON parameter; their places count from the head that was before. */
function rowsOf(events: readonly Known[], before: number): string {
  return JSON.stringify(
    events.map(({ ledgerSeq, id, device, deviceSeq, text }) => ({
      place: ledgerSeq - before,
      id,
      device,
      device_seq: deviceSeq,
      text,
    })),
  );
}
