import "fake-indexeddb/auto";
import { fold, generateHistory, type LedgerEvent, readLedger } from "@witnessmark/ledger";
import { makeClient } from "@witnessmark/server/client";
import { beforeAll, describe, expect, it } from "vitest";
import type { OpenKeep } from "../keep.ts";
import { connect } from "../storage/open-database.ts";
import { FakeServer } from "../testing/fake-server.ts";
import { newPhone, pickUp } from "../testing/phone.ts";

const SKR = "ZZ-SKR";
const LONG = { longLedger: 100 };

let history: readonly LedgerEvent[] = [];

let past: ReturnType<FakeServer["backUp"]>;

/** A server with a past of some months, of which only the newest hundred entries are given whole. */
function longServer(): FakeServer {
  const server = new FakeServer();
  server.restore(past);
  server.wholeEvents = 100;
  server.neededPage = 100;
  server.lastKept = 2;
  return server;
}

/**
 * Breaks the line at what is asked after so many answers.
 *
 * @returns how often it has been asked
 */
function breakAfter(server: FakeServer, end: string, answers: number): () => number {
  let asked = 0;
  server.intercept = (_method, path) => (path.endsWith(end) && ++asked > answers ? Response.error() : null);
  return () => asked;
}

const entry = (keep: OpenKeep) => keep.snapshot().aircraft.get(SKR);
const answers = (keep: OpenKeep) =>
  [...(entry(keep)?.state.checks.values() ?? [])].reduce((sum, check) => sum + check.answers.length, 0);
const pulls = (server: FakeServer) =>
  server.requests.filter((request) => request === `GET /api/aircraft/${SKR}/events`);

/** What the phone's storage has of its events. */
async function stored(name: string): Promise<number> {
  const connection = connect(name);
  const count = await connection.run((database) => database.count("events"));
  connection.close();
  return count;
}

beforeAll(async () => {
  const checks = Array.from({ length: 12 }, (_, at) => ({ id: `check-${at}` }));
  const made = { years: 1, flightsPerYear: 16, seed: 11, operator: "isles", aircraft: SKR, checks };
  history = await generateHistory({ ...made, start_ms: Date.UTC(2025, 10, 1, 6) });
  const server = new FakeServer();
  await makeClient("", server.fetch).push(SKR, history);
  past = server.backUp();
});

describe("a phone that is new to a ledger", () => {
  it("shows nothing of it, and says how far it is, before all of it is here", async () => {
    const server = new FakeServer();
    const some = history.slice(0, 50);
    await makeClient("", server.fetch).push(SKR, some);
    server.page = 30;
    const name = newPhone();
    const asked = breakAfter(server, `${SKR}/events`, 1);
    const keep = await pickUp(server, name, {});
    await keep.exchange();
    expect(asked()).toBeGreaterThan(1);
    expect(await stored(name)).toBeGreaterThan(0);
    expect(keep.snapshot().aircraft.has(SKR)).toBe(false);
    keep.close();
    // a page that is opened later knows no more
    const later = await pickUp(server, name, {});
    expect(later.snapshot().aircraft.has(SKR)).toBe(false);
    expect(later.snapshot().status.trouble).toMatch(
      /^The record of ZZ-SKR is coming from the server: \d+ of 100/,
    );
    server.intercept = () => null;
    await later.exchange();
    expect(entry(later)?.state).toEqual(fold(some));
    expect(later.snapshot().status.trouble).toBeNull();
  });
});

describe("a phone that is new to a long ledger", () => {
  it("takes what it needs, not everything, and says since when everything is here", async () => {
    const server = longServer();
    const name = newPhone();
    const keep = await pickUp(server, name, LONG);
    await keep.exchange();
    expect(keep.snapshot().status).toMatchObject({ trouble: null, server: "reached" });
    const all = fold(history);
    expect(entry(keep)?.state).toMatchObject({
      heads: all.heads,
      upTo: all.upTo,
      discrepancies: all.discrepancies,
      decisions: all.decisions,
      groundGear: all.groundGear,
      happenings: all.happenings,
    });
    expect(entry(keep)?.older).toEqual({
      since: history[history.length - 100]?.recordedAt,
      entries: history.length - 100,
      inDoubt: false,
    });
    expect(await stored(name)).toBeLessThan(0.8 * history.length);
    expect(pulls(server).length).toBe(3); // how long it is, and twice that there is no more
  });

  it("is as far with no net, also when the app's states have another shape", async () => {
    const server = longServer();
    const name = newPhone();
    const first = await pickUp(server, name, LONG);
    await first.exchange();
    const before = entry(first)?.state;
    first.close();
    const connection = connect(name);
    await connection.run(async (database) => {
      const state = before ?? fold(history);
      await database.put("projections", { aircraft: SKR, shape: "of another version", state });
    });
    connection.close();
    server.intercept = () => Response.error();
    const again = await pickUp(server, name, LONG);
    expect(entry(again)?.state).toEqual(before);
    expect(entry(again)?.older).toEqual(entry(first)?.older);
  });

  it("fetches what is older when asked, the latest first, and has everything in the end", async () => {
    const server = longServer();
    const keep = await pickUp(server, newPhone(), LONG);
    await keep.exchange();
    const few = answers(keep);
    await keep.fetchOlder(SKR, { most: 100 });
    const more = answers(keep);
    expect(more).toBeGreaterThan(few);
    const left: number[] = [];
    await keep.fetchOlder(SKR, { onProgress: (count) => left.push(count) });
    expect(left.at(-1)).toBe(0);
    expect(entry(keep)?.state).toEqual(fold(history));
    expect(entry(keep)?.older).toBeUndefined();
  });

  it("says with no net that it is not on this phone, and keeps what it has", async () => {
    const server = longServer();
    const keep = await pickUp(server, newPhone(), LONG);
    await keep.exchange();
    const before = entry(keep)?.state;
    server.intercept = () => Response.error();
    await expect(keep.fetchOlder(SKR)).rejects.toThrow("Not on this phone, and the server is out of reach.");
    await expect(keep.exportLedger(SKR)).rejects.toThrow(
      "is not on this phone, and the server is out of reach",
    );
    expect(entry(keep)?.state).toEqual(before);
  });

  it("keeps what had come when the line broke, and goes on from there", async () => {
    const server = longServer();
    const name = newPhone();
    const keep = await pickUp(server, name, LONG);
    breakAfter(server, "/needed", 2);
    await keep.exchange();
    expect(keep.snapshot().status.trouble).toMatch(
      /^The record of ZZ-SKR is coming from the server: \d+ of 100\./,
    );
    expect(entry(keep)).toBeUndefined(); // half a record judges nothing
    const half = await stored(name);
    expect(half).toBeGreaterThan(0);
    keep.close();
    server.intercept = () => null;
    server.requests.length = 0;
    const again = await pickUp(server, name, LONG);
    await again.exchange();
    const rest = server.requests.filter((request) => request.endsWith("/needed")).length;
    expect(rest).toBe(Math.ceil(history.length / server.neededPage) - 2);
    expect(again.snapshot().status.trouble).toBeNull();
    expect(entry(again)?.state.heads).toEqual(fold(history).heads);
  });

  it("goes on showing what it has when the server counts anew and the line breaks in the midst of that", async () => {
    const server = longServer();
    const name = newPhone();
    const keep = await pickUp(server, name, LONG);
    await keep.exchange();
    const state = entry(keep)?.state;
    server.restore(past, "epoch-2");
    const asked = breakAfter(server, "/needed", 1);
    await keep.exchange();
    expect(asked()).toBeGreaterThan(1);
    expect(entry(keep)?.state).toEqual(state);
    keep.close();
    const again = await pickUp(server, name, LONG);
    expect(entry(again)?.state).toEqual(state);
  });

  it("shows no half of it when the server counts anew before all of it was here, nor after it was started again", async () => {
    const server = longServer();
    const name = newPhone();
    const keep = await pickUp(server, name, LONG);
    breakAfter(server, "/needed", 2);
    await keep.exchange();
    server.restore(past, "epoch-2");
    await keep.exchange();
    expect(await stored(name)).toBeGreaterThan(0);
    expect(entry(keep)).toBeUndefined();
    keep.close();
    const again = await pickUp(server, name, LONG);
    expect(entry(again)).toBeUndefined();
    server.intercept = () => null;
    await again.exchange();
    expect(entry(again)?.state.heads).toEqual(fold(history).heads);
  });

  it("has all that came, folded, when the server can no longer tell what is needed in the midst of it", async () => {
    const server = longServer();
    const name = newPhone();
    const keep = await pickUp(server, name, LONG);
    breakAfter(server, "/needed", 2);
    await keep.exchange();
    server.intercept = () => null;
    server.wholeEvents = null;
    await keep.exchange();
    expect(entry(keep)?.state).toEqual(fold(history));
  });

  it("takes everything from a server that cannot tell what is needed", async () => {
    const server = longServer();
    server.wholeEvents = null;
    const keep = await pickUp(server, newPhone(), LONG);
    await keep.exchange();
    expect(entry(keep)?.state).toEqual(fold(history));
    expect(entry(keep)?.older).toBeUndefined();
  });

  it("gives its ledger whole to a file, the rest fetched from the server, what waits among it", async () => {
    const server = longServer();
    const keep = await pickUp(server, newPhone(), LONG);
    await keep.exchange();
    await keep.append(SKR, [{ type: "aircraft.archived", body: { why: "sold" } }]);
    const text = await (await keep.exportLedger(SKR)).text();
    const { events, faults } = await readLedger(text);
    expect(faults).toEqual([]);
    expect(events.length).toBe(history.length + 2); // it introduces itself first
  });

  it("asks again what is needed when something comes in that stands before it", async () => {
    const server = longServer();
    const keep = await pickUp(server, newPhone(), LONG);
    await keep.exchange();
    const ending = history.find(({ type }) => type === "walk.finished");
    if (ending === undefined) throw new Error("expected a walk that ended");
    const other = await pickUp(server, newPhone(), {});
    await other.exchange();
    await other.append(SKR, [{ type: "event.withdrawn", body: { event: ending.id, why: "not ended" } }]);
    await other.exchange();
    const few = answers(keep);
    server.requests.length = 0;
    await keep.exchange();
    expect(server.requests.some((request) => request.endsWith("/needed"))).toBe(true);
    expect(answers(keep)).toBeGreaterThan(few); // that walk is in hand again, with what was answered on it
    expect(entry(keep)?.older?.inDoubt).toBe(false);
    await keep.exchange();
  });

  it("refills a server that lost its memory with what it has", async () => {
    const server = longServer();
    const empty = new FakeServer().backUp();
    const keep = await pickUp(server, newPhone(), LONG);
    await keep.exchange();
    const state = entry(keep)?.state;
    server.restore(empty, "epoch-2");
    await keep.exchange();
    expect(keep.snapshot().status.trouble).toBeNull();
    expect(fold(server.events(SKR))).toEqual(state);
    expect(entry(keep)?.state).toEqual(state);
  });
});
