import type { Pool, PoolClient } from "pg";

/** Runs `work` in one transaction; nothing of it stays when it throws, or when it gives `null`. */
export async function inTransaction<T>(pool: Pool, work: (client: PoolClient) => Promise<T>): Promise<T> {
  const client = await pool.connect();
  let broken: Error | undefined;
  try {
    await client.query("begin");
    const result = await work(client);
    await client.query(result === null ? "rollback" : "commit");
    return result;
  } catch (error) {
    try {
      await client.query("rollback");
    } catch (lost) {
      // The connection is gone, and with it the transaction. The first error is the one to tell; this one takes the
      // connection out of the pool.
      broken = lost instanceof Error ? lost : new Error(String(lost));
    }
    throw error;
  } finally {
    client.release(broken);
  }
}
