import type { IDBPTransaction, StoreNames } from "idb";
import { isDeadConnection } from "./open-database.ts";
import type { KeepDatabase, KeepSchema } from "./schema.ts";

/** A transaction under way. Which stores it spans is checked when it runs: a store left out is a NotFoundError. */
export type Writing = IDBPTransaction<KeepSchema, StoreNames<KeepSchema>[], "readwrite">;

/**
 * One strict transaction: all of it or nothing. Resolves when it has committed. The work may await only requests of
 * the transaction itself; anything else lets the browser commit it half done.
 */
export async function writeStrictly<T>(
  database: KeepDatabase,
  stores: StoreNames<KeepSchema>[],
  work: (transaction: Writing) => Promise<T>,
): Promise<T> {
  const transaction = database.transaction(stores, "readwrite", { durability: "strict" });
  // Handled below; without this, a failure before the last await would also be reported as nobody's.
  const done = transaction.done.then(
    () => null,
    (error: unknown) => error ?? new DOMException("the transaction was given up", "AbortError"),
  );
  let result: T;
  try {
    result = await work(transaction);
  } catch (error) {
    giveUp(transaction);
    const cause = await done;
    // A request that fell with its transaction says less than the transaction about why.
    throw isAbort(error) && cause !== null ? cause : error;
  }
  const failure = await done;
  if (failure !== null) throw failure;
  return result;
}

/** So many are copied into the storage at once; more would hold the page up under a finger. */
const PUT_AT_ONCE = 20;

/**
 * Puts values, a handful at a time without waiting for each. Whatever fails is thrown once its handful has been
 * answered, so that no failure is left over that nobody hears of.
 */
export async function putAll<V>(
  store: { put(value: V): Promise<unknown> },
  values: readonly V[],
): Promise<void> {
  for (let from = 0; from < values.length; from += PUT_AT_ONCE)
    await allOf(values.slice(from, from + PUT_AT_ONCE).map(async (value) => store.put(value)));
}

/** As `Promise.all`, but heard to the end. */
export async function allOf<T>(asked: readonly Promise<T>[]): Promise<T[]> {
  const answers = await Promise.allSettled(asked);
  return answers.map((answer) => {
    if (answer.status === "rejected") throw answer.reason;
    return answer.value;
  });
}

const isAbort = (error: unknown): boolean => error instanceof DOMException && error.name === "AbortError";

/** Undoes what a transaction has done so far. */
function giveUp(transaction: { abort(): void }): void {
  try {
    transaction.abort();
  } catch (error) {
    // It was already given up, by the very error that brought us here.
    if (!isDeadConnection(error)) throw error;
  }
}
