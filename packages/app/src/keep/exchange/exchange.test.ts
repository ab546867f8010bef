import "fake-indexeddb/auto";
import { hashOfEvent, type LedgerEvent, newId, verifyLedger } from "@witnessmark/ledger";
import { describe, expect, it } from "vitest";
import type { Draft } from "../contract.ts";
import type { OpenKeep } from "../keep.ts";
import { copyDatabase, restoreDatabase } from "../testing/copy-database.ts";
import { FakeServer } from "../testing/fake-server.ts";
import { MORNING_MS, newPhone, pickUp } from "../testing/phone.ts";
import { reachServer } from "./reach-server.ts";

const SKR = "ZZ-SKR";
const walk = newId();
const answered = (check: string): Draft => ({
  type: "check.answered",
  body: { walk, check, answer: "as-it-should-be" },
});
const entry = (keep: OpenKeep, aircraft = SKR) => keep.snapshot().aircraft.get(aircraft);
const checks = (keep: OpenKeep) => [...(entry(keep)?.state.checks.keys() ?? [])].sort();

describe("an exchange", () => {
  it("brings two phones to the same state", async () => {
    const server = new FakeServer();
    const one = await pickUp(server, newPhone());
    const two = await pickUp(server, newPhone());
    await one.append(SKR, [answered("oil-level")]);
    await two.append(SKR, [answered("left-tyre")]);
    expect(one.snapshot().status).toMatchObject({ server: "reached", toSend: 2 });
    await one.exchange();
    await two.exchange();
    await one.exchange();
    expect(checks(one)).toEqual(["left-tyre", "oil-level"]);
    expect(entry(one)?.state).toEqual(entry(two)?.state);
    expect(one.snapshot().status).toMatchObject({
      server: "reached",
      toSend: 0,
      lastReachedAt_ms: MORNING_MS,
    });
  });

  it("asks for nothing that it has: an exchange without news is two short questions", async () => {
    const server = new FakeServer();
    const keep = await pickUp(server, newPhone());
    await keep.append(SKR, [answered("oil-level")]);
    await keep.exchange();
    server.requests.length = 0;
    await keep.exchange();
    expect(server.requests).toEqual(["GET /api/about", "GET /api/aircraft"]);
  });

  it("tells from its outcome whether the server is in reach, and measures the clock", async () => {
    const server = new FakeServer();
    server.now_ms = () => MORNING_MS - 61 * 60_000;
    const name = newPhone();
    const keep = await pickUp(server, name);
    expect(keep.snapshot().status).toMatchObject({ server: "never-reached", lastReachedAt_ms: null });
    await keep.exchange();
    expect(keep.snapshot().status).toMatchObject({ server: "reached", clockOffset_ms: 61 * 60_000 });
    const [event] = await keep.append(SKR, [answered("oil-level")]);
    expect(event?.clockOffset_ms).toBe(61 * 60_000);
    server.intercept = () => Response.error();
    await keep.exchange();
    expect(keep.snapshot().status).toMatchObject({
      server: "out-of-reach",
      lastReachedAt_ms: MORNING_MS,
      toSend: 2,
    });
    const again = await pickUp(server, name);
    expect(again.snapshot().status).toMatchObject({
      lastReachedAt_ms: MORNING_MS,
      clockOffset_ms: 61 * 60_000,
    });
  });

  it("is not taken in by a sign-in page that answers everything with 200", async () => {
    const server = new FakeServer();
    server.intercept = () =>
      new Response("<html>Welcome</html>", { headers: { "content-type": "text/html" } });
    const keep = await pickUp(server, newPhone());
    await keep.exchange();
    expect(keep.snapshot().status.server).toBe("never-reached");
    server.intercept = () => Response.json({ program: "something else" });
    await keep.exchange();
    expect(keep.snapshot().status.server).toBe("never-reached");
  });

  it("shows what the server keeps apart, with its reason, and sends what stands behind it", async () => {
    const server = new FakeServer();
    const keep = await pickUp(server, newPhone());
    const [bad] = await keep.append(SKR, [answered("oil-level")]);
    await keep.append(SKR, [answered("left-tyre")]);
    server.refuses.add(bad?.id ?? "");
    await keep.exchange();
    expect(entry(keep)?.quarantined).toEqual([{ id: bad?.id, reason: "It is not as it should be." }]);
    expect(entry(keep)?.toSend).toBe(0);
    expect(server.events(SKR).map((event) => event.deviceSeq)).toEqual([1, 3]);
    expect(checks(keep)).toEqual(["left-tyre", "oil-level"]); // kept here, not dropped
    server.requests.length = 0;
    await keep.exchange();
    expect(server.requests.filter((request) => request.startsWith("POST"))).toEqual([]);
  });

  it("lets one entry that makes the server refuse the whole push hold up nothing else", async () => {
    const server = new FakeServer();
    let poison = "none yet";
    const keep = await pickUp(server, newPhone(), {
      server: reachServer((input, init) => {
        const isPoisoned = init?.method === "POST" && String(init.body).includes(poison);
        const refusal = { error: { code: "bad-body", message: "That cannot be read." } };
        return isPoisoned
          ? Promise.resolve(Response.json(refusal, { status: 400 }))
          : server.fetch(input, init);
      }),
    });
    const events = await keep.append(SKR, ["a", "b", "c", "d", "e"].map(answered));
    poison = events[2]?.id ?? "";
    await keep.exchange();
    expect(server.events(SKR).map((event) => event.deviceSeq)).toEqual([1, 2, 3, 5, 6]);
    expect(entry(keep)?.quarantined).toEqual([
      { id: poison, reason: "The server will not take this entry: That cannot be read." },
    ]);
    expect(keep.snapshot().status.toSend).toBe(0);
  });

  it("keeps apart what reaches it damaged, and takes in the rest", async () => {
    const server = new FakeServer();
    const one = await pickUp(server, newPhone());
    await one.append(SKR, [answered("oil-level")]);
    await one.append(SKR, [answered("left-tyre")]);
    await one.exchange();
    server.damage(SKR, 2, (event) => {
      event["body"] = { walk, check: "oil-level", answer: "not-right" };
    });
    const two = await pickUp(server, newPhone());
    await two.exchange();
    expect(checks(two)).toEqual(["left-tyre"]);
    expect(entry(two)?.quarantined).toEqual([
      {
        id: expect.stringContaining("damaged:ZZ-SKR"),
        reason:
          "Number 2 of the server's ledger reached this phone damaged: its contents do not match its hash.",
      },
    ]);
  });

  it("takes in kinds of entry that this version does not know", async () => {
    const server = new FakeServer();
    const one = await pickUp(server, newPhone());
    await one.append(SKR, [answered("oil-level")]);
    await one.exchange();
    const last = server.events(SKR).at(-1) as LedgerEvent; // two were pushed
    const future = {
      ...last,
      id: newId(),
      deviceSeq: 3,
      previousHash: last.hash,
      type: "wing.folded",
      body: { how: "up" },
    };
    const sealed = { ...future, hash: await hashOfEvent(future) };
    await server.fetch(`/api/aircraft/${SKR}/events`, {
      method: "POST",
      body: JSON.stringify({ events: [sealed] }),
    });
    const two = await pickUp(server, newPhone());
    await two.exchange();
    expect(entry(two)?.state.unknown).toMatchObject([{ type: "wing.folded" }]);
    expect(entry(two)?.quarantined).toEqual([]);
  });

  it("that breaks off in the midst of a phone's first leaves it able to keep what is said of what it has", async () => {
    const server = new FakeServer();
    const one = await pickUp(server, newPhone());
    await one.append(SKR, [answered("oil-level")]);
    await one.append("ZZ-ZZZ", [answered("oil-level")]);
    await one.exchange();
    const name = newPhone();
    const two = await pickUp(server, name);
    server.intercept = (_method, path) => (path.includes("ZZ-ZZZ") ? Response.error() : null);
    await two.exchange();
    expect(two.snapshot().status.server).toBe("never-reached");
    expect(checks(two)).toEqual(["oil-level"]);
    await two.append(SKR, [answered("left-tyre")]);
    expect(checks(two)).toEqual(["left-tyre", "oil-level"]);
    two.close();
    const again = await pickUp(server, name);
    await again.append(SKR, [answered("right-tyre")]); // known from the storage, too
    expect(checks(again)).toEqual(["left-tyre", "oil-level", "right-tyre"]);
  });

  it("says so when the server's ledger has a hole, and takes in nothing that may be out of place", async () => {
    const server = new FakeServer();
    const one = await pickUp(server, newPhone());
    await one.append(SKR, [answered("oil-level"), answered("left-tyre")]);
    await one.exchange();
    server.cut(SKR, 2);
    const two = await pickUp(server, newPhone());
    await two.exchange();
    expect(two.snapshot().status.trouble).toBe(
      "The server's ledger of ZZ-SKR has a hole: expected number 2, received 3.",
    );
    expect(two.snapshot().status.server).toBe("reached");
  });

  it("exchanges nothing with the server of another operator, or of another version", async () => {
    const server = new FakeServer();
    const keep = await pickUp(server, newPhone());
    await keep.append(SKR, [answered("oil-level")]);
    server.operator = "mainland";
    await keep.exchange();
    expect(keep.snapshot().status.trouble).toBe(
      "This server keeps the records of mainland, and this phone those of isles. Nothing is exchanged between them.",
    );
    server.operator = "isles";
    server.protocolVersion = 2;
    await keep.exchange();
    expect(keep.snapshot().status.trouble).toMatch(/^The server is newer than this app\./);
    expect(server.events(SKR)).toEqual([]);
    server.protocolVersion = 1;
    await keep.exchange();
    expect(keep.snapshot().status).toMatchObject({ trouble: null, toSend: 0 });
  });

  it("goes on with the other aircraft when one is in trouble", async () => {
    const server = new FakeServer();
    const keep = await pickUp(server, newPhone());
    await keep.append("ZZ-AAA", [answered("oil-level")]);
    await keep.append(SKR, [answered("oil-level")]);
    server.intercept = (method, path) =>
      method === "POST" && path.includes("ZZ-AAA")
        ? Response.json(
            { error: { code: "archived", message: "ZZ-AAA is closed at this server." } },
            { status: 403 },
          )
        : null;
    await keep.exchange();
    expect(keep.snapshot().status).toMatchObject({ trouble: "ZZ-AAA is closed at this server.", toSend: 2 });
    expect(server.events(SKR)).toHaveLength(2);
  });
});

describe("a server that came back from an older copy", () => {
  it.each([
    ["and says so", "epoch-2"],
    ["and does not know it", undefined],
  ])("%s is refilled, with what others made too", async (_, epoch) => {
    const server = new FakeServer();
    const one = await pickUp(server, newPhone());
    const two = await pickUp(server, newPhone());
    await one.append(SKR, [answered("oil-level")]);
    await one.exchange();
    const copy = server.backUp();
    await two.append(SKR, [answered("left-tyre")]);
    await two.exchange();
    await one.exchange();
    const all = server.events(SKR).map((event) => event.id);
    server.restore(copy, epoch);
    expect(server.events(SKR)).toHaveLength(2);
    await one.exchange();
    expect(
      server
        .events(SKR)
        .map((event) => event.id)
        .sort(),
    ).toEqual(all.sort());
    await two.exchange();
    expect(entry(one)?.state).toEqual(entry(two)?.state);
    expect(one.snapshot().status).toMatchObject({ toSend: 0, trouble: null });
  });

  it("is refilled also when it has grown past its old length before the phone comes back", async () => {
    const server = new FakeServer();
    const name = newPhone();
    const one = await pickUp(server, name);
    const copy = server.backUp();
    await one.append(SKR, [answered("oil-level")]);
    await one.exchange();
    one.close();
    server.restore(copy);
    const two = await pickUp(server, newPhone());
    await two.append(SKR, [answered("a"), answered("b"), answered("c"), answered("d")]);
    await two.exchange();
    const again = await pickUp(server, name);
    await again.exchange();
    await two.exchange();
    expect(checks(again)).toEqual(["a", "b", "c", "d", "oil-level"]);
    expect(entry(again)?.state).toEqual(entry(two)?.state);
    expect(server.events(SKR)).toHaveLength(7);
  });

  it("gets its pictures back too", async () => {
    const server = new FakeServer();
    const copy = server.backUp();
    const picture = {
      blob: new Blob(["a picture"], { type: "image/jpeg" }),
      mediaType: "image/jpeg" as const,
    };
    const keep = await pickUp(server, newPhone(), {
      shrink: async () => ({ ...picture, width_px: 4, height_px: 3 }),
    });
    await keep.attachPhoto(SKR, { kind: "check", id: "left-tyre" }, new Blob(["raw"]));
    expect(keep.snapshot().status.photosToSend).toBe(1);
    await keep.exchange();
    const sha256 = entry(keep)?.state.photos[0]?.sha256 ?? "";
    expect(server.hasPhoto(sha256)).toBe(true);
    expect(keep.snapshot().status.photosToSend).toBe(0);
    server.restore(copy, "epoch-2");
    await keep.exchange();
    expect(server.hasPhoto(sha256)).toBe(true);
  });
});

describe("a phone that was put back to an older copy of itself", () => {
  it("enters again under a new id what the server has other entries for, with its own times", async () => {
    const server = new FakeServer();
    const name = newPhone();
    const before = await pickUp(server, name);
    await before.append(SKR, [answered("oil-level")]);
    await before.exchange();
    const copy = await copyDatabase(name);
    await before.append(SKR, [answered("on-the-lost-phone")]);
    await before.exchange();
    before.close();
    await restoreDatabase(name, copy);

    const after = await pickUp(server, name, { now_ms: () => MORNING_MS + 60_000 });
    const [made] = await after.append(SKR, [answered("left-tyre")]);
    const discrepancy = newId();
    await after.append(SKR, [
      { type: "discrepancy.raised", body: { discrepancy, words: "Tyre worn" } },
      {
        type: "discrepancy.closed",
        body: { discrepancy, how: "put-right", words: "Changed", releasedBy: "A. Lund" },
      },
    ]);
    await after.exchange();

    expect(checks(after)).toEqual(["left-tyre", "oil-level", "on-the-lost-phone"]);
    const again = entry(after)?.state.checks.get("left-tyre")?.answers;
    expect(again).toHaveLength(1);
    expect(again?.[0]).toMatchObject({ hlc: made?.hlc, recordedAt: made?.recordedAt, author: made?.author });
    expect(again?.[0]?.device).not.toBe(made?.device);
    // A signature is a person's: it is not made again for them.
    expect(entry(after)?.state.discrepancies.get(discrepancy)?.closings).toEqual([]);
    expect(entry(after)?.quarantined).toEqual([
      { id: expect.any(String), reason: expect.stringMatching(/sign again/) },
    ]);
    expect(after.snapshot().status).toMatchObject({ toSend: 0, trouble: null });

    expect(await verifyLedger(server.events(SKR))).toMatchObject({ sound: true, faults: [], remarks: [] });
    const other = await pickUp(server, newPhone());
    await other.exchange();
    expect(entry(other)?.state).toEqual(entry(after)?.state);

    const next = await after.append(SKR, [answered("cowling")]);
    expect(next[0]?.device).toBe(again?.[0]?.device);
    await after.exchange();
    expect(await verifyLedger(server.events(SKR))).toMatchObject({ sound: true, faults: [] });
  });

  it("notices it from the server's answer when both go on at once", async () => {
    const server = new FakeServer();
    const name = newPhone();
    const one = await pickUp(server, name);
    await one.append(SKR, [answered("oil-level")]);
    await one.exchange();
    const copyName = newPhone();
    await restoreDatabase(copyName, await copyDatabase(name));
    const two = await pickUp(server, copyName);
    await two.exchange();
    await one.append(SKR, [answered("left-tyre")]);
    await two.append(SKR, [answered("right-tyre")]);
    await two.append(SKR, [answered("nose-tyre")]);
    await Promise.all([one.exchange(), two.exchange()]);
    await one.exchange();
    await two.exchange();
    await one.exchange();
    expect(checks(one)).toEqual(["left-tyre", "nose-tyre", "oil-level", "right-tyre"]);
    expect(entry(one)?.state).toEqual(entry(two)?.state);
    // The one push held the next entry too, which the server had numbered before anyone could see the fork.
    expect((await verifyLedger(server.events(SKR))).faults.map(({ code }) => code)).toEqual(["chain-broken"]);
  });
});
