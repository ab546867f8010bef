import { type LedgerEvent, ledgerLines, wallTime } from "@witnessmark/ledger";
import { OutOfReach, type Server } from "../exchange/server.ts";
import type { Connection } from "../storage/open-database.ts";
import { allOf } from "../storage/strict-write.ts";
import { eventsInOrder, wholeLedger } from "./events-in-order.ts";

const ATTEMPTS = 3;

export interface ExportParts {
  readonly connection: Connection;
  readonly server: Pick<Server, "pull">;
  readonly now_ms: () => number;
}

/**
 * Every entry of one aircraft as JSON Lines. Where this phone left something at the server, the server's are taken,
 * each held against its hash, and what it does not have yet from here.
 */
export async function exportLedger(
  { connection, server, now_ms }: ExportParts,
  aircraft: string,
  operator: string,
): Promise<Blob> {
  const exportedAt = wallTime(now_ms(), -new Date(now_ms()).getTimezoneOffset());
  const row = await connection.run((database) => database.get("aircraft", aircraft));
  for (let attempt = 1; ; attempt++) {
    try {
      const { count, events } =
        row?.older === undefined
          ? await storedEvents(connection, aircraft)
          : await servedEvents(connection, server, aircraft);
      const parts: string[] = [];
      for await (const line of ledgerLines({ aircraft, operator, exportedAt }, count, events)) {
        parts.push(line, "\n");
      }
      return new Blob(parts, { type: "application/x-ndjson" });
    } catch (error) {
      if (error instanceof OutOfReach) {
        throw new Error(
          `What was answered on walks long past of ${aircraft} is not on this phone, and the server is out of reach. Connect this phone, then save the ledger.`,
          { cause: error },
        );
      }
      // Another phone's entries came in meanwhile.
      if (attempt >= ATTEMPTS) throw error;
    }
  }
}

interface Counted {
  readonly count: number;
  readonly events: AsyncIterable<LedgerEvent>;
}

const storedEvents = async (connection: Connection, aircraft: string): Promise<Counted> => ({
  count: await connection.run((database) =>
    database.countFromIndex("events", "byOrder", wholeLedger(aircraft)),
  ),
  events: eventsInOrder(connection, aircraft),
});

async function servedEvents(
  connection: Connection,
  server: Pick<Server, "pull">,
  aircraft: string,
): Promise<Counted> {
  const own = await connection.run(async (database) => {
    const all = await database.getAllFromIndex("outbox", "byAircraft", wholeLedger(aircraft));
    const found = await allOf(all.map(({ id }) => database.get("events", id)));
    return found.filter((event) => event !== undefined);
  });
  const { head } = await server.pull(aircraft, { after: 0 });
  async function* both(): AsyncGenerator<LedgerEvent> {
    const here = new Map(own.map((event) => [event.id, event]));
    for (let after = 0; after < head; ) {
      const { entries } = await server.pull(aircraft, { after });
      if (entries.length === 0) return; // the count says that something is missing
      for (const entry of entries) {
        if (entry.ledgerSeq > head) break;
        if ("fault" in entry)
          throw new Error(
            `Number ${entry.ledgerSeq} of ${aircraft} came damaged from the server: ${entry.fault}.`,
          );
        here.delete(entry.event.id);
        yield entry.event;
      }
      after = entries.at(-1)?.ledgerSeq ?? head;
    }
    yield* here.values();
  }
  return { count: head + own.length, events: both() };
}
