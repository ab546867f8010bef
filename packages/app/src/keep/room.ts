import { isFull } from "./storage/not-kept.ts";
import type { Connection } from "./storage/open-database.ts";

/**
 * Runs a write; when the phone is full, throws away what can be had again, and runs it once more: copies of states,
 * and pictures that other phones took.
 */
export async function withRoom<T>(
  connection: Connection,
  report: (error: unknown) => void,
  write: () => Promise<T>,
): Promise<T> {
  try {
    return await write();
  } catch (error) {
    if (!isFull(error)) throw error;
    try {
      await makeRoom(connection);
    } catch (failure) {
      report(failure);
      throw error; // that the phone is full is what a person can do something about
    }
    return await write();
  }
}

async function makeRoom(connection: Connection): Promise<void> {
  await connection.run(async (database) => {
    const uploads = await database.getAll("uploads");
    // what the server does not have yet is on this phone alone
    const own = new Set(
      uploads.filter(({ event, state }) => event !== null || state === "waiting").map(({ sha256 }) => sha256),
    );
    const kept = await database.getAllKeys("photos");
    const transaction = database.transaction(["projections", "photos"], "readwrite");
    await Promise.all([
      transaction.objectStore("projections").clear(),
      ...kept
        .filter((sha256) => !own.has(sha256))
        .map((sha256) => transaction.objectStore("photos").delete(sha256)),
      transaction.done,
    ]);
  });
}
