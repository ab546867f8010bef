import type { Store } from "@witnessmark/store";
import { createSqlite } from "@witnessmark/store/testing/sqlite-backend";
import { onTestFinished } from "vitest";
import { type RunningServer, type ServerOptions, startServer } from "../start-server.ts";
import { OPERATOR } from "./test-device.ts";

/** A server on an empty one-file database, for one test; both go away when the test is over. */
export async function serve(
  options: Partial<ServerOptions> = {},
): Promise<RunningServer & { readonly store: Store; readonly file: string }> {
  const database = await createSqlite();
  const store = options.store ?? (await database.open());
  const server = await startServer({ store, operator: OPERATOR, port: 0, ...options });
  onTestFinished(async () => {
    await server.close();
    await database.remove();
  });
  return { ...server, store, file: database.file };
}
