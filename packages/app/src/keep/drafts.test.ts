import "fake-indexeddb/auto";
import { editDraft, newDraft } from "@witnessmark/book";
import { openDB } from "idb";
import { describe, expect, it } from "vitest";
import { connect } from "./storage/open-database.ts";
import { type KeepSchema, upgrade } from "./storage/schema.ts";
import { FakeServer } from "./testing/fake-server.ts";
import { newPhone, pickUp } from "./testing/phone.ts";

const DRAFT = newDraft("revision: 1 # mine\n", null);

describe("the draft of a book", () => {
  it("is there again when the phone is picked up again, with every step that can be undone", async () => {
    const server = new FakeServer();
    const name = newPhone();
    const first = await pickUp(server, name);
    const changed = editDraft(DRAFT, [{ set: ["revision"], to: 2 }]);
    await first.drafts.put("ZZ-NEW", changed, 0);
    first.close();
    const second = await pickUp(server, name);
    expect(await second.drafts.find("ZZ-NEW")).toMatchObject({ draft: changed, timesKept: 1 });
    expect(second.snapshot().aircraft.size).toBe(0); // no part of any ledger
  });

  it("is not overwritten by a window that has not seen its last change", async () => {
    const keep = await pickUp(new FakeServer(), newPhone());
    await keep.drafts.put("ZZ-NEW", DRAFT, 0);
    await keep.drafts.put("ZZ-NEW", editDraft(DRAFT, [{ set: ["revision"], to: 2 }]), 1);
    await expect(
      keep.drafts.put("ZZ-NEW", editDraft(DRAFT, [{ set: ["revision"], to: 3 }]), 1),
    ).rejects.toThrow(
      "Not kept. The draft of ZZ-NEW was changed in another window of this phone. Reload this page to go on from there.",
    );
    expect((await keep.drafts.find("ZZ-NEW"))?.draft.text).toBe("revision: 2 # mine\n");
  });

  it("can be thrown away", async () => {
    const keep = await pickUp(new FakeServer(), newPhone());
    await keep.drafts.put("ZZ-NEW", DRAFT, 0);
    await keep.drafts.drop("ZZ-NEW");
    expect(await keep.drafts.all()).toEqual([]);
  });

  it("has a place in a storage of the version before, which keeps all it has", async () => {
    const name = newPhone();
    const before = await openDB<KeepSchema>(name, 1, {
      upgrade: (database) => {
        upgrade(database, 0);
        database.deleteObjectStore("drafts"); // what the version before did not have
      },
    });
    await before.put("settings", "isles", "operator");
    before.close();
    const connection = connect(name);
    expect(await connection.run((database) => database.get("settings", "operator"))).toBe("isles");
    expect(await connection.run((database) => database.getAll("drafts"))).toEqual([]);
    connection.close();
  });
});
