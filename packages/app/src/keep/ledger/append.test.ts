import "fake-indexeddb/auto";
import { hashOfEvent, newId, verifyLedger } from "@witnessmark/ledger";
import { afterEach, describe, expect, it } from "vitest";
import { type Draft, NotKept } from "../contract.ts";
import { FakeServer } from "../testing/fake-server.ts";
import { type Fault, failPuts, failTransactions, full, loseAfterCommit, lost } from "../testing/faults.ts";
import { MORNING_MS, newPhone, pickUp } from "../testing/phone.ts";

const SKR = "ZZ-SKR";
const walk = newId();
const started: Draft = {
  type: "walk.started",
  body: { walk, kind: "first-of-day", bookSha256: "0".repeat(64) },
};
const answered = (check: string): Draft => ({
  type: "check.answered",
  body: { walk, check, answer: "as-it-should-be" },
});

let fault: Fault | null = null;
afterEach(() => {
  fault?.mend();
  fault = null;
});

describe("append", () => {
  it("keeps what it is given, and finds it after the page was killed", async () => {
    const server = new FakeServer();
    const name = newPhone();
    const before = await pickUp(server, name);
    const events = await before.append(SKR, [started, answered("oil-level")]);
    expect(events.map((event) => event.type)).toEqual(["walk.started", "check.answered"]);
    const state = before.snapshot().aircraft.get(SKR)?.state;
    // The page is not closed: it is gone.
    const after = await pickUp(server, name);
    expect(after.snapshot().aircraft.get(SKR)?.state).toEqual(state);
    expect(after.snapshot().aircraft.get(SKR)?.state.checks.get("oil-level")?.answers).toHaveLength(1);
    expect(after.snapshot().status.toSend).toBe(3); // the device's introduction comes first
  });

  it("makes a sound ledger: introduced, numbered, chained, hashed and signed", async () => {
    const server = new FakeServer();
    const keep = await pickUp(server, newPhone());
    await keep.append(SKR, [started]);
    await keep.append(SKR, [
      { type: "discrepancy.raised", body: { discrepancy: walk, words: "Tyre worn" } },
      {
        type: "discrepancy.closed",
        body: { discrepancy: walk, how: "put-right", words: "Tyre changed", releasedBy: "A. Lund" },
      },
    ]);
    await keep.exchange();
    const events = server.events(SKR);
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

  it("keeps answers given at the same moment, each after the other", async () => {
    const server = new FakeServer();
    const keep = await pickUp(server, newPhone());
    const checks = Array.from({ length: 12 }, (_, at) => `check-${at}`);
    await Promise.all(checks.map((check) => keep.append(SKR, [answered(check)])));
    await keep.exchange();
    const events = server.events(SKR);
    expect(events.map((event) => event.deviceSeq)).toEqual(events.map((_, at) => at + 1));
    expect(await verifyLedger(events)).toMatchObject({ sound: true });
  });

  it("never forks the chain when two tabs keep at once", async () => {
    const server = new FakeServer();
    const name = newPhone();
    const one = await pickUp(server, name);
    // Without the browser's locks, the check inside the transaction alone must hold.
    const other = await pickUp(server, name, { locks: undefined });
    const checks = Array.from({ length: 10 }, (_, at) => `check-${at}`);
    await Promise.all(
      checks.flatMap((check) => [one, other].map((keep) => keep.append(SKR, [answered(check)]))),
    );
    await one.exchange();
    const events = server.events(SKR);
    expect(events).toHaveLength(21);
    expect(await verifyLedger(events)).toMatchObject({ sound: true, faults: [] });
    await expect
      .poll(() => other.snapshot().aircraft.get(SKR)?.state)
      .toEqual(one.snapshot().aircraft.get(SKR)?.state);
    expect(one.snapshot().aircraft.get(SKR)?.state.eventCount).toBe(21);
  });

  it("refuses what its type does not allow, and says what", async () => {
    const keep = await pickUp(new FakeServer(), newPhone());
    const wrong = { type: "walk.finished", body: { walk: "not an id" } } satisfies Draft;
    await expect(keep.append(SKR, [wrong])).rejects.toThrow(/^Not kept: walk\.finished: expected/);
    expect(keep.snapshot().aircraft.size).toBe(0);
  });

  it("asks first who holds the phone", async () => {
    const server = new FakeServer();
    const keep = await pickUp(server, newPhone());
    const nobody = await pickUp(server, newPhone());
    expect(nobody.snapshot().person?.name).toBe("Ida Holm");
    await keep.introduce({ name: "Per Lie", role: "mechanic" });
    expect(keep.snapshot().person?.name).toBe("Per Lie");
    await keep.choosePerson(keep.snapshot().people[0]?.id ?? "");
    const [event] = await keep.append(SKR, [started]);
    expect(event?.author).toEqual({ id: keep.snapshot().people[0]?.id, name: "Ida Holm", role: "pilot" });
  });

  it("says that the server must be met once, since only it knows whose record this is", async () => {
    const server = new FakeServer();
    server.intercept = () => new Response("sign in to the hotel", { status: 200 });
    const keep = await pickUp(server, newPhone());
    await expect(keep.append(SKR, [started])).rejects.toThrow("This phone has never reached its server");
    server.intercept = () => null;
    await keep.append(SKR, [started]);
    server.intercept = () => Response.error();
    await keep.append(SKR, [answered("oil-level")]);
    expect(keep.snapshot().aircraft.get(SKR)?.state.eventCount).toBe(3);
  });

  it("stamps its events after every event that it has seen", async () => {
    const server = new FakeServer();
    let now_ms = MORNING_MS;
    const one = await pickUp(server, newPhone(), { now_ms: () => now_ms });
    const two = await pickUp(server, newPhone(), { now_ms: () => MORNING_MS - 120_000 });
    const [first] = await one.append(SKR, [started]);
    await one.exchange();
    await two.exchange();
    const [second] = await two.append(SKR, [answered("oil-level")]);
    expect(second && first && second.hlc > first.hlc).toBe(true);
    now_ms = MORNING_MS - 3_600_000;
    const [third] = await one.append(SKR, [answered("tyre")]);
    expect(third && first && third.hlc > first.hlc).toBe(true);
    expect(third?.recordedAt).not.toBe(first?.recordedAt);
  });
});

describe("a phone without room", () => {
  it("keeps all of an answer or nothing, whichever write fails, and the walk goes on when there is room", async () => {
    const server = new FakeServer();
    // As SQLite's own tests do it: the n-th write fails, for n = 1, 2, 3 … until none does.
    for (let n = 1; ; n++) {
      const name = newPhone();
      const keep = await pickUp(server, name);
      await keep.append(SKR, [started]);
      const before = keep.snapshot();
      fault = failPuts((call) => call >= n);
      const kept = await keep.append(SKR, [answered("oil-level"), answered("tyre")]).then(
        () => true,
        (error: unknown) => {
          expect(error).toBeInstanceOf(NotKept);
          expect(error).toMatchObject({ reason: "full" });
          return false;
        },
      );
      const calls = fault.calls();
      fault.mend();
      if (kept) {
        expect(calls).toBe(n - 1);
        expect(n).toBeGreaterThan(4); // two events, two outbox rows, the aircraft's row
        break;
      }
      expect(keep.snapshot().aircraft).toBe(before.aircraft);
      const again = await pickUp(server, name);
      expect(again.snapshot().aircraft.get(SKR)?.state).toEqual(before.aircraft.get(SKR)?.state);
      await keep.append(SKR, [answered("oil-level"), answered("tyre")]);
      expect(keep.snapshot().aircraft.get(SKR)?.state.checks.size).toBe(2);
      const last = await pickUp(server, name);
      expect(last.snapshot().aircraft.get(SKR)?.state).toEqual(keep.snapshot().aircraft.get(SKR)?.state);
    }
  });

  it("says what to do, with the amount where the browser knows it", async () => {
    const estimate = async () => ({ usage: 209_830_000, quota: 210_000_000 });
    const storage = { estimate, persist: async () => false, persisted: async () => false };
    const keep = await pickUp(new FakeServer(), newPhone(), { storage });
    fault = failPuts(() => true, full);
    await expect(keep.append(SKR, [started])).rejects.toThrow(
      "Not kept. Free some room, then answer again. Witnessmark has used 209.8 MB of the 210.0 MB it may use on this phone.",
    );
  });

  it("gives up copies that can be had again before it gives up an answer", async () => {
    const keep = await pickUp(new FakeServer(), newPhone());
    await keep.append(SKR, [started]);
    fault = failPuts((call) => call === 1);
    await keep.append(SKR, [answered("oil-level")]);
    expect(keep.snapshot().aircraft.get(SKR)?.state.checks.size).toBe(1);
  });
});

describe("a storage that the browser takes away", () => {
  it("is opened again, and the answer is kept once", async () => {
    const name = newPhone();
    const server = new FakeServer();
    const keep = await pickUp(server, name);
    await keep.append(SKR, [started]);
    fault = failTransactions((call) => call === 1, lost);
    await keep.append(SKR, [answered("oil-level")]);
    fault.mend();
    const again = await pickUp(server, name);
    expect(again.snapshot().aircraft.get(SKR)?.state.checks.get("oil-level")?.answers).toHaveLength(1);
  });

  it("says that nothing was kept when it stays away", async () => {
    const keep = await pickUp(new FakeServer(), newPhone());
    await keep.append(SKR, [started]);
    fault = failTransactions(() => true, lost);
    await expect(keep.append(SKR, [answered("oil-level")])).rejects.toMatchObject({
      reason: "gone",
      message: expect.stringMatching(/^Not kept\. The browser has taken the storage away\. Reload the page/),
    });
    fault.mend();
    await keep.append(SKR, [answered("oil-level")]);
    expect(keep.snapshot().aircraft.get(SKR)?.state.eventCount).toBe(3);
  });

  it("does not keep an answer twice when the connection dies after the commit", async () => {
    const name = newPhone();
    const server = new FakeServer();
    const keep = await pickUp(server, name);
    await keep.append(SKR, [started]);
    fault = loseAfterCommit();
    await keep.append(SKR, [answered("oil-level")]);
    fault.mend();
    const again = await pickUp(server, name);
    expect(again.snapshot().aircraft.get(SKR)?.state.checks.get("oil-level")?.answers).toHaveLength(1);
    expect(again.snapshot().aircraft.get(SKR)?.state).toEqual(keep.snapshot().aircraft.get(SKR)?.state);
  });
});
