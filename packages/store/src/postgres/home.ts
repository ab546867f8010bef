import { randomUUID } from "node:crypto";
import type { ClientBase } from "pg";
import { textOf } from "../row.ts";
import { isNotOffered } from "./postgres-fault.ts";

/**
 * Where the data lives: the database's number, and, where the server tells them, the cluster's own number and its
 * timeline. One of them changes when a dump is read back into a new database, when a cluster is restored to an earlier
 * moment, and when a standby takes over (which may lack the last commits).
 */
async function homeOf(client: ClientBase): Promise<string> {
  const database = await client.query(
    "select oid::text as home from pg_database where datname = current_database()",
  );
  const parts = [textOf(database.rows[0] ?? {}, "home")];
  for (const sql of [
    "select system_identifier::text as home from pg_control_system()",
    "select substr(pg_walfile_name(pg_current_wal_lsn()), 1, 8) as home",
  ]) {
    try {
      const { rows } = await client.query(sql);
      parts.push(textOf(rows[0] ?? {}, "home"));
    } catch (error) {
      if (!isNotOffered(error)) throw error;
      parts.push("-");
    }
  }
  return parts.join("/");
}

/**
 * Gives a new database its epoch, and one that was put back or taken over another one, so that the phones look again
 * at what it holds. Called for each new connection; of several that see the same change, one makes the new epoch.
 */
export async function settleHome(client: ClientBase): Promise<void> {
  const home = await homeOf(client);
  const { rows } = await client.query("select value from meta where key = 'home'");
  if (rows[0] !== undefined && textOf(rows[0], "value") === home) return;
  await client.query("begin");
  try {
    const moved = await client.query(
      `insert into meta as m (key, value) values ('home', $1)
       on conflict (key) do update set value = excluded.value where m.value <> excluded.value`,
      [home],
    );
    if (moved.rowCount === 1) {
      await client.query(
        "insert into meta (key, value) values ('epoch', $1) on conflict (key) do update set value = excluded.value",
        [randomUUID()],
      );
    }
    await client.query("commit");
  } catch (error) {
    await client.query("rollback");
    throw error;
  }
}
