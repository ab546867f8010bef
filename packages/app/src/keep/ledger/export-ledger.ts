import { ledgerLines, wallTime } from "@witnessmark/ledger";
import type { Connection } from "../storage/open-database.ts";
import { eventsInOrder, wholeLedger } from "./events-in-order.ts";

const ATTEMPTS = 3;

/** Every entry of one aircraft as JSON Lines. */
export async function exportLedger(
  connection: Connection,
  aircraft: string,
  operator: string,
  now_ms: number,
): Promise<Blob> {
  const exportedAt = wallTime(now_ms, -new Date(now_ms).getTimezoneOffset());
  for (let attempt = 1; ; attempt++) {
    try {
      const count = await connection.run((database) =>
        database.countFromIndex("events", "byOrder", wholeLedger(aircraft)),
      );
      const parts: string[] = [];
      for await (const line of ledgerLines(
        { aircraft, operator, exportedAt },
        count,
        eventsInOrder(connection, aircraft),
      )) {
        parts.push(line, "\n");
      }
      return new Blob(parts, { type: "application/x-ndjson" });
    } catch (error) {
      // Another phone's entries came in meanwhile.
      if (attempt >= ATTEMPTS) throw error;
    }
  }
}
