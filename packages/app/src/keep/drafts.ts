import type { BookDraft } from "@witnessmark/book";
import { NotKept } from "./contract.ts";
import { asNotKept } from "./storage/not-kept.ts";
import type { Connection } from "./storage/open-database.ts";
import type { BookDraftRow } from "./storage/schema.ts";
import { writeStrictly } from "./storage/strict-write.ts";

/** Books in the making. They stay on this phone until they are issued: no part of any ledger. */
export interface BookDrafts {
  all(): Promise<readonly BookDraftRow[]>;
  find(registration: string): Promise<BookDraftRow | undefined>;
  /**
   * Keeps a draft in one strict transaction; resolves when it has committed.
   *
   * @param before how often it had been kept when it was last seen: another window may have changed it since
   * @throws {NotKept}
   */
  put(registration: string, draft: BookDraft, before: number): Promise<BookDraftRow>;
  /** @throws {NotKept} */
  drop(registration: string): Promise<void>;
}

export function makeDrafts(
  connection: Connection,
  now_ms: () => number,
  estimate: () => Promise<{ readonly usage?: number; readonly quota?: number }>,
): BookDrafts {
  async function kept<T>(work: () => Promise<T>): Promise<T> {
    try {
      return await work();
    } catch (error) {
      throw error instanceof NotKept ? error : await asNotKept(error, estimate);
    }
  }
  return {
    all: () => connection.run((database) => database.getAll("drafts")),
    find: (registration) => connection.run((database) => database.get("drafts", registration)),
    put: (registration, draft, before) =>
      kept(() =>
        connection.run((database) =>
          writeStrictly(database, ["drafts"], async (transaction) => {
            const store = transaction.objectStore("drafts");
            const there = await store.get(registration);
            if (there !== undefined && there.timesKept !== before) throw changedElsewhere(registration);
            const row: BookDraftRow = {
              registration,
              draft,
              timesKept: before + 1,
              changedAt_ms: now_ms(),
            };
            await store.put(row);
            return row;
          }),
        ),
      ),
    drop: (registration) =>
      kept(() =>
        connection.run((database) =>
          writeStrictly(database, ["drafts"], (transaction) =>
            transaction.objectStore("drafts").delete(registration),
          ),
        ),
      ),
  };
}

const changedElsewhere = (registration: string): NotKept =>
  new NotKept(
    "other",
    `Not kept. The draft of ${registration} was changed in another window of this phone. Reload this page to go on from there.`,
  );
