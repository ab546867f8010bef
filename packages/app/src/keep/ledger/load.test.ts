import "fake-indexeddb/auto";
import { fold, generateHistory, type LedgerEvent, newId } from "@witnessmark/ledger";
import { beforeAll, describe, expect, it } from "vitest";
import { type Connection, connect } from "../storage/open-database.ts";
import { newAircraftRow } from "../storage/schema.ts";
import { newPhone } from "../testing/phone.ts";
import { loadAircraft } from "./load.ts";
import { saveProjection } from "./save-projection.ts";

let history: readonly LedgerEvent[];
let aircraft: string;
beforeAll(async () => {
  history = await generateHistory({ years: 1, flightsPerYear: 30, seed: 7 });
  aircraft = history[0]?.aircraft ?? "";
});

async function keep(connection: Connection, events: readonly LedgerEvent[]): Promise<void> {
  await connection.run(async (database) => {
    const transaction = database.transaction(["events", "aircraft"], "readwrite");
    for (const event of events) await transaction.objectStore("events").put(event);
    const row = (await transaction.objectStore("aircraft").get(aircraft)) ?? newAircraftRow(aircraft);
    await transaction.objectStore("aircraft").put({ ...row, eventCount: row.eventCount + events.length });
    await transaction.done;
  });
}

describe("reading an aircraft from the storage", () => {
  it("gives the fold of everything, from the first event, from a stored copy, and from one that has become wrong", async () => {
    expect(history.length).toBeGreaterThan(2_500); // more than one batch and the loose events
    const connection = connect(newPhone());
    const late = history[10] as LedgerEvent; // there are more than ten
    const rest = history.filter((event) => event !== late);
    await keep(connection, rest);

    const first = await loadAircraft(connection, aircraft, null);
    expect(first.savedCount).toBeNull();
    expect(first.loaded.ledger.state).toEqual(fold(rest));
    expect(first.loaded.ledger.base.eventCount).toBe(rest.length - 1_000);

    await connection.run((database) => saveProjection(database, first.loaded.ledger.base));
    const second = await loadAircraft(connection, aircraft, null);
    expect(second.savedCount).toBe(rest.length - 1_000);
    expect(second.loaded.ledger.state).toEqual(fold(rest));

    await keep(connection, [late]);
    const third = await loadAircraft(connection, aircraft, null);
    expect(third.savedCount).toBeNull();
    expect(third.loaded.ledger.state).toEqual(fold(history));
    const stale = await loadAircraft(connection, aircraft, first.loaded.ledger.base);
    expect(stale.loaded.ledger.state).toEqual(fold(history));
  });

  it("does not keep a copy of a state that is not the storage's", async () => {
    const connection = connect(newPhone());
    const most = history.filter((_, at) => at !== 10);
    await keep(connection, most);
    const { loaded } = await loadAircraft(connection, aircraft, null);
    await keep(connection, [history[10] as LedgerEvent]); // there are more than ten
    await connection.run((database) => saveProjection(database, loaded.ledger.base));
    expect(await connection.run((database) => database.get("projections", aircraft))).toBeUndefined();
  });

  it("mends a count that is wrong: the events are what counts", async () => {
    const connection = connect(newPhone());
    await keep(connection, history.slice(0, 50));
    await connection.run((database) =>
      database.put("aircraft", { ...newAircraftRow(aircraft), eventCount: 7 }),
    );
    const { loaded } = await loadAircraft(connection, aircraft, null);
    expect(loaded.ledger.state).toEqual(fold(history.slice(0, 50)));
    expect(loaded.row.eventCount).toBe(50);
  });

  it("counts a withdrawal of an event that a stored copy has counted", async () => {
    const connection = connect(newPhone());
    await keep(connection, history);
    const { loaded } = await loadAircraft(connection, aircraft, null);
    await connection.run((database) => saveProjection(database, loaded.ledger.base));
    const target = history.find((event) => event.type === "check.answered") as LedgerEvent; // a walk has some
    const last = history.at(-1) as LedgerEvent; // there are many
    const withdrawal: LedgerEvent = {
      ...last,
      id: newId(),
      deviceSeq: last.deviceSeq + 1,
      hlc: last.hlc.replace(/\d{5}$/, "99999"),
      type: "event.withdrawn",
      body: { event: target.id, why: "another aircraft" },
    };
    await keep(connection, [withdrawal]);
    const after = await loadAircraft(connection, aircraft, null);
    expect(after.savedCount).toBeNull();
    expect(after.loaded.ledger.state).toEqual(fold([...history, withdrawal]));
  });
});
