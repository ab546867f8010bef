import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { readBook } from "@witnessmark/book";
import { sha256 } from "@witnessmark/ledger";
import { describe, expect, it } from "vitest";
import { FakeServer } from "../testing/fake-server.ts";
import { newPhone, pickUp } from "../testing/phone.ts";
import type { BookReader } from "./read-in-worker.ts";

/** The demo turboprop. */
const TEXT = readFileSync(
  fileURLToPath(new URL("../../../../../books/zz-skr.yaml", import.meta.url)),
  "utf8",
);

let readings = 0;
const countingReader: BookReader = (text, fileName) => {
  readings++;
  return readBook(text, fileName);
};

describe("adopting a book", () => {
  it("adds the aircraft, with its book", async () => {
    const keep = await pickUp(new FakeServer(), newPhone());
    expect(await keep.adoptBook(TEXT, "zz-skr.yaml")).toEqual({ registration: "ZZ-SKR" });
    const entry = keep.snapshot().aircraft.get("ZZ-SKR");
    expect(entry?.registration).toBe("ZZ-SKR");
    expect(entry?.book?.aircraft.type).toBe("Skerry 460T");
    expect(entry?.book?.sha256).toBe(await sha256(TEXT));
    expect(entry?.bookFaults).toEqual([]);
    expect(entry?.state.books).toMatchObject([
      { sha256: await sha256(TEXT), registration: "ZZ-SKR", text: TEXT },
    ]);
  });

  it("adopts the same text once, and brings an archived aircraft back", async () => {
    const keep = await pickUp(new FakeServer(), newPhone());
    await keep.adoptBook(TEXT, "zz-skr.yaml");
    await keep.adoptBook(TEXT, "copy of zz-skr.yaml");
    await keep.append("ZZ-SKR", [{ type: "aircraft.archived", body: { why: "the demo is not needed" } }]);
    expect(keep.snapshot().aircraft.get("ZZ-SKR")?.state.archived).toBe(true);
    await keep.adoptBook(TEXT, "zz-skr.yaml");
    const state = keep.snapshot().aircraft.get("ZZ-SKR")?.state;
    expect(state?.archived).toBe(false);
    expect(state?.books).toHaveLength(1);
  });

  it("gives every fault of a text that is no book, and keeps nothing of it", async () => {
    const keep = await pickUp(new FakeServer(), newPhone());
    const result = await keep.adoptBook("witnessmark: none\nchecks: 7\n", "wrong.yaml");
    expect(result).toMatchObject({
      faults: expect.arrayContaining([expect.objectContaining({ file: "wrong.yaml" })]),
    });
    expect(keep.snapshot().aircraft.size).toBe(0);
  });

  it("reads a text once on each phone, however often it starts", async () => {
    const server = new FakeServer();
    const name = newPhone();
    readings = 0;
    const options = { readBook: countingReader };
    const first = await pickUp(server, name, options);
    await first.adoptBook(TEXT, "zz-skr.yaml");
    await first.exchange();
    const second = await pickUp(server, name, options);
    expect(readings).toBe(1);
    expect(second.snapshot().aircraft.get("ZZ-SKR")?.book).toEqual(
      first.snapshot().aircraft.get("ZZ-SKR")?.book,
    );
    const other = await pickUp(server, newPhone(), options);
    await other.exchange();
    expect(readings).toBe(2);
    expect(other.snapshot().aircraft.get("ZZ-SKR")?.book?.sha256).toBe(await sha256(TEXT));
  });

  it("shows the faults of a book in the ledger that this version cannot read, with the rest of the aircraft", async () => {
    const keep = await pickUp(new FakeServer(), newPhone());
    const text = "witnessmark: from the future";
    const body = { sha256: await sha256(text), revision: 9, registration: "ZZ-SKR", type: "Skerry", text };
    await keep.append("ZZ-SKR", [{ type: "book.adopted", body }]);
    const entry = keep.snapshot().aircraft.get("ZZ-SKR");
    expect(entry?.book).toBeNull();
    expect(entry?.bookFaults.length).toBeGreaterThan(0);
    expect(entry?.state.books).toHaveLength(1);
  });

  it("puts the book before in force again when an adoption is taken back", async () => {
    const keep = await pickUp(new FakeServer(), newPhone());
    await keep.adoptBook(TEXT, "zz-skr.yaml");
    const text = "witnessmark: from the future";
    const body = { sha256: await sha256(text), revision: 9, registration: "ZZ-SKR", type: "Skerry", text };
    const [adopted] = await keep.append("ZZ-SKR", [{ type: "book.adopted", body }]);
    await keep.append("ZZ-SKR", [
      { type: "event.withdrawn", body: { event: adopted?.id ?? "", why: "the wrong file" } },
    ]);
    expect(keep.snapshot().aircraft.get("ZZ-SKR")?.book?.aircraft.type).toBe("Skerry 460T");
  });
});

describe("the pictures of a book", () => {
  const picture = async (text: string) => {
    const bytes = new TextEncoder().encode(text).buffer;
    return { sha256: await sha256(text), mediaType: "image/jpeg" as const, bytes };
  };

  it("are kept with it, sent without an event, and come to another phone", async () => {
    const server = new FakeServer();
    const one = await pickUp(server, newPhone());
    const right = await picture("the seal all round");
    await one.adoptBook(TEXT, "zz-skr.yaml", [right]);
    expect(await (await one.photo(right.sha256))?.text()).toBe("the seal all round");
    await one.exchange();
    await one.exchange();
    expect(server.requests).toContain(`PUT /api/photos/${right.sha256}`);
    const two = await pickUp(server, newPhone());
    await two.exchange();
    expect(await (await two.photo(right.sha256))?.text()).toBe("the seal all round");
  });

  it("are not kept with a book that has faults", async () => {
    const keep = await pickUp(new FakeServer(), newPhone());
    const right = await picture("of nothing");
    await keep.adoptBook("witnessmark: none", "wrong.yaml", [right]);
    expect(keep.snapshot().status.photosToSend).toBe(0);
    expect(await keep.photo(right.sha256)).toBeNull();
  });
});
