import "fake-indexeddb/auto";
import { hashOfEvent, newId, verifyLedger } from "@witnessmark/ledger";
import { describe, expect, it } from "vitest";
import type { Draft } from "../contract.ts";
import { FakeServer } from "../testing/fake-server.ts";
import { newPhone, pickUp } from "../testing/phone.ts";

const walk = newId();
const started: Draft = {
  type: "walk.started",
  body: { walk, kind: "first-of-day", bookSha256: "0".repeat(64) },
};
const answered = (check: string): Draft => ({
  type: "check.answered",
  body: { walk, check, answer: "as-it-should-be" },
});

describe("append", () => {
  it("keeps what it is given, and finds it after the page was killed", async () => {
    const server = new FakeServer();
    const name = newPhone();
    const before = await pickUp(server, name);
    const events = await before.append("ZZ-SKR", [started, answered("oil-level")]);
    expect(events.map((event) => event.type)).toEqual(["walk.started", "check.answered"]);
    const state = before.snapshot().aircraft.get("ZZ-SKR")?.state;
    // The page is not closed: it is gone.
    const after = await pickUp(server, name);
    expect(after.snapshot().aircraft.get("ZZ-SKR")?.state).toEqual(state);
    expect(after.snapshot().aircraft.get("ZZ-SKR")?.state.checks.get("oil-level")?.answers).toHaveLength(1);
    expect(after.snapshot().status.toSend).toBe(3); // the device's introduction comes first
  });

  it("makes a sound ledger: introduced, numbered, chained, hashed and signed", async () => {
    const server = new FakeServer();
    const keep = await pickUp(server, newPhone());
    await keep.append("ZZ-SKR", [started]);
    await keep.append("ZZ-SKR", [
      { type: "discrepancy.raised", body: { discrepancy: walk, words: "Tyre worn" } },
      {
        type: "discrepancy.closed",
        body: { discrepancy: walk, how: "put-right", words: "Tyre changed", releasedBy: "A. Lund" },
      },
    ]);
    await keep.exchange();
    const events = server.events("ZZ-SKR");
    expect(events.map((event) => event.type)).toEqual([
      "device.introduced",
      "walk.started",
      "discrepancy.raised",
      "discrepancy.closed",
    ]);
    expect(await verifyLedger(events)).toMatchObject({ sound: true, faults: [], remarks: [] });
    expect(events.at(-1)?.signature).toBeDefined();
    expect(await Promise.all(events.map(hashOfEvent))).toEqual(events.map((event) => event.hash));
  });
});
