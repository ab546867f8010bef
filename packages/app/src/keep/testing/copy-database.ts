import { deleteDB } from "idb";
import { connect } from "../storage/open-database.ts";

/** Everything that a phone keeps, as a backup of it would hold it. */
export type Copy = ReadonlyMap<string, readonly { readonly key: IDBValidKey; readonly value: unknown }[]>;

export async function copyDatabase(name: string): Promise<Copy> {
  const connection = connect(name);
  const copy = await connection.run(async (database) => {
    const stores = [...database.objectStoreNames];
    const transaction = database.transaction(stores, "readonly");
    const rows = new Map<string, { key: IDBValidKey; value: unknown }[]>();
    for (const store of stores) {
      const objects = transaction.objectStore(store);
      const [keys, values] = await Promise.all([objects.getAllKeys(), objects.getAll()]);
      rows.set(
        store,
        keys.map((key, at) => ({ key, value: values[at] })),
      );
    }
    return rows;
  });
  connection.close();
  return copy;
}

/** Puts a copy in the place of what a phone keeps. Its pages must be closed. */
export async function restoreDatabase(name: string, copy: Copy): Promise<void> {
  await deleteDB(name);
  const connection = connect(name);
  await connection.run(async (database) => {
    const transaction = database.transaction([...database.objectStoreNames], "readwrite");
    for (const [name, rows] of copy) {
      for (const { key, value } of rows) {
        // The copy came out of stores of the same names.
        const store = transaction.objectStore(name as "events");
        if (store.keyPath === null) await store.put(value as never, key as never);
        else await store.put(value as never);
      }
    }
    await transaction.done;
  });
  connection.close();
}
