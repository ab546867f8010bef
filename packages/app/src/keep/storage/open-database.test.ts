import "fake-indexeddb/auto";
import { deleteDB, openDB } from "idb";
import { describe, expect, it, vi } from "vitest";
import { FakeServer } from "../testing/fake-server.ts";
import { type Fault, failTransactions } from "../testing/faults.ts";
import { newPhone, pickUp } from "../testing/phone.ts";
import { connect } from "./open-database.ts";
import { DATABASE_VERSION } from "./schema.ts";

describe("the connection to the storage", () => {
  it("runs the work once more on a fresh connection when the first has died, and no more than once", async () => {
    const connection = connect(newPhone());
    await connection.run((database) => database.count("events"));
    let runs = 0;
    const fault: Fault = failTransactions((call) => call <= 2);
    const work = connection.run((database) => {
      runs++;
      return database.count("events");
    });
    await expect(work).rejects.toMatchObject({ name: "UnknownError" });
    fault.mend();
    expect(runs).toBe(2);
    expect(await connection.run((database) => database.count("events"))).toBe(0);
  });

  it("tries a second time when a phone that is waking up refuses the first", async () => {
    const real = indexedDB.open.bind(indexedDB);
    let tries = 0;
    const spy = vi.spyOn(indexedDB, "open").mockImplementation((name, version) => {
      if (++tries === 1) throw new DOMException("Connection to Indexed Database server lost", "UnknownError");
      return real(name, version);
    });
    expect(await connect(newPhone()).run((database) => database.count("events"))).toBe(0);
    expect(tries).toBe(2);
    spy.mockImplementation(() => {
      throw new DOMException("Connection to Indexed Database server lost", "UnknownError");
    });
    await expect(connect(newPhone()).run((database) => database.count("events"))).rejects.toThrow(
      /^The storage of this phone cannot be opened \(UnknownError: Connection to Indexed Database server lost\)\./,
    );
    spy.mockRestore();
  });

  it("does not run work again that failed for a reason of its own", async () => {
    const connection = connect(newPhone());
    let runs = 0;
    const work = connection.run(() => {
      runs++;
      return Promise.reject(new Error("wrong in itself"));
    });
    await expect(work).rejects.toThrow("wrong in itself");
    expect(runs).toBe(1);
  });

  it("stands aside at once for a newer version, and then says that one has run", async () => {
    const name = newPhone();
    const connection = connect(name);
    await connection.run((database) => database.count("events"));
    const newer = await openDB(name, DATABASE_VERSION + 1); // would wait for ever for a page in the way
    newer.close();
    await expect(connection.run((database) => database.count("events"))).rejects.toThrow(
      "A newer Witnessmark has already run here. Reload the page to use it; nothing is lost.",
    );
  });

  it("opens again after another page has deleted everything", async () => {
    const name = newPhone();
    const connection = connect(name);
    await connection.run((database) => database.put("settings", "isles", "operator"));
    await deleteDB(name);
    expect(await connection.run((database) => database.get("settings", "operator"))).toBeUndefined();
  });

  it("asks for the older tab to be closed when that does not stand aside", async () => {
    const name = newPhone();
    const stubborn = await openDB(name, 1);
    // What a next version meets: a page that holds on to the storage.
    await expect(connect(name, 2).run((database) => database.count("events"))).rejects.toThrow(
      "An older Witnessmark is still open in another tab. Close that tab, then reload this page.",
    );
    stubborn.close();
  });
});

describe("a page whose storage cannot be opened", () => {
  it("says why and what to do, and keeps nothing", async () => {
    const name = newPhone();
    const newer = await openDB(name, DATABASE_VERSION + 1);
    newer.close();
    const keep = await pickUp(new FakeServer(), name);
    expect(keep.snapshot()).toMatchObject({
      phase: "cannot-open",
      openError: "A newer Witnessmark has already run here. Reload the page to use it; nothing is lost.",
    });
    await expect(keep.append("ZZ-SKR", [])).rejects.toMatchObject({ reason: "gone" });
  });
});
