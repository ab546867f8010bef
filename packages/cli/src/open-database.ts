import { join } from "node:path";
import { type OperatorStore, openStore, StoreError } from "@witnessmark/store";
import { type Given, textOption } from "./arguments.ts";
import { Refused } from "./refused.ts";

/** Opens the database that the options and the environment name, as the server does, and closes it for sure. */
export async function withStore<T>(
  given: Given,
  use: (store: OperatorStore, operator: string) => Promise<T>,
): Promise<T> {
  const { env } = given.io;
  const operator = textOption(given, "operator") ?? env["OPERATOR"] ?? "own";
  const directory = textOption(given, "data") ?? env["DATA_DIR"] ?? "data";
  const databaseUrl =
    textOption(given, "database") ??
    (textOption(given, "data") === undefined ? env["DATABASE_URL"] : undefined);
  try {
    const store = await openStore({ databaseUrl, file: join(directory, "witnessmark.sqlite") });
    try {
      return await use(store.forOperator(operator), operator);
    } finally {
      await store.close();
    }
  } catch (error) {
    if (error instanceof StoreError) throw new Refused("unreadable", error.message);
    throw error;
  }
}
