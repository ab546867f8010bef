import { hashOfEvent, type LedgerEvent, readLedger, sha256, verifyLedger } from "@witnessmark/ledger";
import type { Store } from "@witnessmark/store";
import type { TestDatabase } from "@witnessmark/store/testing/backend";
import { SOON } from "@witnessmark/store/testing/soon";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { type Client, type LiveMessage, makeClient } from "../client.ts";
import { type RunningServer, startServer } from "../start-server.ts";
import { AIRCRAFT, OPERATOR, TestDevice } from "./test-device.ts";
import { TestPhone } from "./test-phone.ts";

/** ISO/IEC 15948, clause 5.2. */
const PNG_SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
const NOW_MS = Date.UTC(2031, 4, 6, 9, 0, 0);

/** What the server promises, on whichever store. Run in full against each. */
export function serverContract(name: string, create: () => Promise<TestDatabase>): void {
  describe(`the server on ${name}`, () => {
    let database: TestDatabase;
    let running: RunningServer[];
    let store: Store;
    let client: Client;

    const serve = async (on: Store) => {
      const server = await startServer({ store: on, operator: OPERATOR, port: 0, now_ms: () => NOW_MS });
      running.push(server);
      return makeClient(server.url);
    };
    const stopAll = async () => {
      for (const server of running.splice(0)) await server.close();
    };
    const send = async (events: unknown) => {
      const response = await fetch(`${running[0]?.url}/api/aircraft/${AIRCRAFT}/events`, {
        method: "POST",
        headers: { "content-type": "application/json" },
        body: typeof events === "string" ? events : JSON.stringify({ protocolVersion: 1, events }),
      });
      const body: { readonly results: readonly { readonly outcome: string; readonly reason?: string }[] } =
        await response.json();
      return body.results;
    };
    const held = async (from = client) =>
      (await from.pull(AIRCRAFT, { after: 0 })).events.map(({ event }) => event);

    beforeEach(async () => {
      running = [];
      database = await create();
      store = await database.open();
      client = await serve(store);
    });
    afterEach(async () => {
      await stopAll();
      await database.remove();
    });

    it("says what it is, its epoch and its clock", async () => {
      expect(await client.about()).toEqual({
        program: "witnessmark",
        version: expect.stringMatching(/^\d+\.\d+\.\d+$/),
        protocolVersion: 1,
        operator: OPERATOR,
        epoch: await store.epoch(),
        now: "2031-05-06T09:00:00.000Z",
      });
    });

    describe("events", () => {
      it("come back as they were sent, numbered, with the time they came", async () => {
        const events = await new TestDevice().make(3);
        const answer = await client.push(AIRCRAFT, events);
        expect(answer.results).toEqual(
          events.map(({ id }, index) => ({ id, outcome: "accepted", ledgerSeq: index + 1 })),
        );
        const page = await client.pull(AIRCRAFT, { after: 1 });
        expect(page).toEqual({
          epoch: await store.epoch(),
          head: 3,
          events: events.slice(1).map((event, index) => ({
            ledgerSeq: index + 2,
            receivedAt: "2031-05-06T09:00:00.000Z",
            event,
          })),
        });
        expect(await client.aircraft()).toMatchObject({ aircraft: [{ aircraft: AIRCRAFT, head: 3 }] });
      });

      it("are answered one by one: kept, there already, in the way of another", async () => {
        const device = new TestDevice();
        const [first, second, third] = await device.make(3);
        if (first === undefined || second === undefined || third === undefined)
          throw new Error("Expected three.");
        await client.push(AIRCRAFT, [first, second]);
        const { results } = await client.push(AIRCRAFT, [second, { ...third, signature: "x" }, third]);
        expect(results.map(({ outcome }) => outcome)).toEqual(["duplicate", "accepted", "conflict"]);
        expect((await client.quarantine(AIRCRAFT)).events).toHaveLength(1);
      });

      it("of a later version are carried to the letter", async () => {
        const [known] = await new TestDevice().make(1);
        if (known === undefined) throw new Error("Expected an event.");
        const unsealed = {
          ...known,
          type: "weather.noted",
          schemaVersion: 7,
          body: { wind: [1, { gust: 2.5 }] },
          later: true,
        };
        const later = { ...unsealed, hash: await hashOfEvent(unsealed) };
        expect(await send([later])).toEqual([{ id: known.id, outcome: "accepted", ledgerSeq: 1 }]);
        expect(await held()).toEqual([later]);
      });

      it("that are foreign or garbled are set aside with a reason, and block nothing behind them", async () => {
        const device = new TestDevice();
        const [first, second] = await device.make(2);
        if (first === undefined || second === undefined) throw new Error("Expected two.");
        const foreign = (await new TestDevice(AIRCRAFT, "other").make(1))[0];
        const stray = (await new TestDevice("ZZ-DUN").make(1))[0];
        const results = await send([
          first,
          { ...second, recordedAt: "2031-05-06T07:08:10.001+02:00" },
          { ...second, hash: "0".repeat(64) },
          foreign,
          stray,
          "text",
          null,
          [[]],
          {},
          { ...second, author: undefined },
          { ...second, id: "\ud800" },
          second,
        ]);
        expect(results.map(({ outcome }) => outcome)).toEqual([
          "accepted",
          ...Array.from({ length: 10 }, () => "quarantined"),
          "accepted",
        ]);
        expect(results[1]?.reason).toContain("it was changed after it was made");
        expect(results[3]?.reason).toBe("It belongs to the operator other; this server keeps those of own.");
        expect(results[4]?.reason).toBe("It is of the aircraft ZZ-DUN, but was sent for ZZ-SKR.");
        expect(results[9]?.reason).toContain("author");
        expect((await client.quarantine(AIRCRAFT)).events).toHaveLength(10);
        expect(await held()).toEqual([first, second]);
      });

      it("nested without end, or with numbers beyond all numbers, are set aside", async () => {
        const [event] = await new TestDevice().make(1);
        const deep = `${"[".repeat(100_000)}${"]".repeat(100_000)}`;
        const huge = JSON.stringify({ ...event, clockOffset_ms: 0 }).replace(
          '"clockOffset_ms":0',
          '"clockOffset_ms":1e999',
        );
        const results = await send(`{"protocolVersion":1,"events":[${deep},${huge},{"body":${deep}}]}`);
        expect(results.map(({ outcome }) => outcome)).toEqual(["quarantined", "quarantined", "quarantined"]);
        expect((await client.quarantine(AIRCRAFT)).events).toHaveLength(3);
      });

      it("come in pages that hold no hole", async () => {
        const events = await new TestDevice().make(11);
        await client.push(AIRCRAFT, events);
        const seen: LedgerEvent[] = [];
        for (let after = 0; after < 11; ) {
          const page = await client.pull(AIRCRAFT, { after, limit: 4 });
          for (const { ledgerSeq, event } of page.events) {
            expect(ledgerSeq).toBe(after + 1);
            after = ledgerSeq;
            seen.push(event);
          }
        }
        expect(seen).toEqual(events);
      });

      it("that a new phone needs are all of them, where there is no long past", async () => {
        const events = await new TestDevice().make(3);
        await client.push(AIRCRAFT, events);
        const all = await client.needed(AIRCRAFT, { after: 0 });
        expect(all).toMatchObject({ head: 3, upTo: 3, to: 3, wholeFrom: 1 });
        expect(all.events.map(({ event }) => event)).toEqual(events);
        const rest = await client.needed(AIRCRAFT, { after: 1, upTo: 2 });
        expect(rest).toMatchObject({ head: 3, upTo: 2, to: 2 });
        expect(rest.events.map(({ event }) => event)).toEqual(events.slice(1, 2));
      });

      it("are refused after a place that another event stands at", async () => {
        const events = await new TestDevice().make(3);
        await client.push(AIRCRAFT, events);
        const here = { after: 2, afterId: events[1]?.id ?? "" };
        expect((await client.pull(AIRCRAFT, here)).events).toHaveLength(1);
        await expect(client.pull(AIRCRAFT, { ...here, afterId: events[0]?.id ?? "" })).rejects.toMatchObject({
          name: "Refused",
          status: 409,
          code: "another-history",
        });
        await expect(client.pull(AIRCRAFT, { ...here, after: 9 })).rejects.toMatchObject({
          code: "another-history",
        });
      });

      it("of eight senders at once reach a reader who polls, each once", async () => {
        const phones = Array.from({ length: 8 }, () => new TestPhone());
        for (const phone of phones) await phone.record(30);
        const reader = new TestPhone();
        let sending = phones.length;
        const read = async () => {
          while (sending > 0) await reader.pull(client);
          await reader.pull(client);
        };
        await Promise.all([
          read(),
          ...phones.map(async (phone) => {
            await phone.push(client, 4);
            sending -= 1;
          }),
        ]);
        expect(reader.ledger.size).toBe(8 * 30);
        const numbers = phones.flatMap((phone) => [...phone.acknowledged.values()]).sort((a, b) => a - b);
        expect(numbers).toEqual(Array.from({ length: 8 * 30 }, (_, index) => index + 1));
        expect(await store.check()).toEqual([]);
      });

      it("make a ledger file that verifies by itself", async () => {
        await client.push(AIRCRAFT, await new TestDevice().make(5));
        await client.push(AIRCRAFT, await new TestDevice().make(600).then((all) => all.slice(0, 500)));
        const read = await readLedger(await client.ledgerFile(AIRCRAFT));
        expect(read.faults).toEqual([]);
        expect(read.events).toHaveLength(505);
        expect((await verifyLedger(read.events)).faults).toEqual([]);
        await expect(client.ledgerFile("ZZ-NIL")).rejects.toMatchObject({ status: 404 });
      });
    });

    describe("the record", () => {
      const record = (query: string, aircraft = AIRCRAFT) =>
        fetch(`${running[0]?.url}/api/aircraft/${aircraft}/record.pdf${query}`);
      const refused = async (query: string, aircraft?: string) => {
        const response = await record(query, aircraft);
        return { status: response.status, ...(await response.json()).error };
      };

      it("of a period is a PDF with the ledger in it", async () => {
        await client.push(AIRCRAFT, await new TestDevice().make(5));
        const response = await record("?from=2031-05-01&to=2031-05-06");
        expect(response.status).toBe(200);
        expect(response.headers.get("content-type")).toBe("application/pdf");
        expect(response.headers.get("content-disposition")).toContain(
          `${AIRCRAFT}-record-2031-05-01-2031-05-06.pdf`,
        );
        const pdf = Buffer.from(await response.arrayBuffer()).toString("latin1");
        expect(pdf).toMatch(/^%PDF-/);
        expect(pdf).toContain(`${AIRCRAFT}.jsonl`);
        // without a period: everything until today
        expect((await record("")).headers.get("content-disposition")).toContain("2031-05-06-2031-05-06");
      });

      it("of a period that cannot be, or of nothing, is refused in words", async () => {
        await client.push(AIRCRAFT, await new TestDevice().make(2));
        expect(await refused("?from=2031-02-30")).toEqual({
          status: 400,
          code: "bad-period",
          field: "from",
          message:
            'from: expected a day of the calendar, written YYYY-MM-DD, received "2031-02-30"; February 2031 ends with day 28.',
        });
        expect(await refused("?from=2031-05-06&to=2031-05-01")).toMatchObject({
          status: 400,
          code: "bad-period",
          message: expect.stringContaining("give an earlier first day or a later last day"),
        });
        expect(await refused("", "ZZ-NIL")).toMatchObject({ status: 404, code: "no-such-aircraft" });
      });
    });

    describe("pictures", () => {
      const png = new Uint8Array([
        ...PNG_SIGNATURE,
        ...Array.from({ length: 300 }, (_, index) => index % 256),
      ]);

      it("are kept once, and come back to the byte with their own type", async () => {
        const hash = await sha256(png);
        expect(await client.hasPhoto(hash)).toBe(false);
        expect(await client.getPhoto(hash)).toBeNull();
        expect(await client.putPhoto(hash, png)).toBe("stored");
        expect(await client.putPhoto(hash, png)).toBe("present");
        expect(await client.hasPhoto(hash)).toBe(true);
        const picture = await client.getPhoto(hash);
        expect(picture?.type).toBe("image/png");
        expect(new Uint8Array((await picture?.arrayBuffer()) ?? new ArrayBuffer())).toEqual(png);
      });

      it("that are none are refused, whatever they are called", async () => {
        const html = new TextEncoder().encode("<script>alert(1)</script>");
        await expect(client.putPhoto(await sha256(html), html)).rejects.toMatchObject({
          status: 415,
          code: "no-picture",
        });
        expect(await client.hasPhoto(await sha256(html))).toBe(false);
      });

      it("that were changed on the way are refused", async () => {
        const changed = Uint8Array.from(png);
        changed[99] = 0;
        await expect(client.putPhoto(await sha256(png), changed)).rejects.toMatchObject({
          status: 422,
          code: "another-hash",
        });
        expect(await client.hasPhoto(await sha256(png))).toBe(false);
      });
    });

    describe("devices", () => {
      it("are told with how far each is here without a hole", async () => {
        const a = new TestDevice();
        const b = new TestDevice();
        await client.push(AIRCRAFT, await a.make(3));
        const ofB = await b.make(4);
        await client.push(AIRCRAFT, [...ofB.slice(0, 1), ...ofB.slice(2)]);
        expect((await client.devices(AIRCRAFT)).devices).toEqual({ [a.id]: 3, [b.id]: 1 });
      });
    });

    describe("live", () => {
      it("tells how things stand, then what is new, also what another server took", async () => {
        await client.push(AIRCRAFT, await new TestDevice().make(2));
        const other = await serve(await database.open());
        const heard: LiveMessage[] = [];
        const off = new AbortController();
        const line = other.live((message) => heard.push(message), off.signal);
        await expect
          .poll(() => heard, SOON)
          .toContainEqual({ aircraft: AIRCRAFT, head: 2, epoch: await store.epoch() });
        await client.push(AIRCRAFT, await new TestDevice().make(3));
        await expect.poll(() => heard, SOON).toContainEqual(expect.objectContaining({ head: 5 }));
        await other.push("ZZ-DUN", await new TestDevice("ZZ-DUN").make(1));
        await expect
          .poll(() => heard, SOON)
          .toContainEqual(expect.objectContaining({ aircraft: "ZZ-DUN", head: 1 }));
        off.abort();
        await line;
      });
    });

    describe("a copy from before, put back", () => {
      it("is refilled by the phones, whoever comes first", async () => {
        const phones = [new TestPhone(), new TestPhone(), new TestPhone()];
        const all = async (at: Client) => {
          for (const phone of phones) await phone.exchange(at);
        };
        for (const phone of phones) await phone.record(5);
        await all(client);
        await all(client);
        await stopAll();
        await store.close();
        const putBack = await database.copy();

        const between = await database.open();
        const betweenClient = await serve(between);
        for (const phone of phones) await phone.record(4);
        await all(betweenClient);
        await all(betweenClient);
        await stopAll();
        await between.close();
        await putBack();

        const after = await serve(await database.open());
        expect((await after.pull(AIRCRAFT, { after: 0 })).head).toBe(15);
        // New events come first, so that the head is past the old places again before the others ask.
        await phones[2]?.record(20);
        await phones[2]?.push(after);
        await all(after);
        await all(after);
        const ids = (await held(after)).map(({ id }) => id);
        expect(ids).toHaveLength(3 * 9 + 20);
        expect(new Set(ids).size).toBe(ids.length);
        for (const phone of phones) expect(phone.ledger.size).toBe(ids.length);
        expect(Object.values((await after.devices(AIRCRAFT)).devices).sort((a, b) => a - b)).toEqual([
          9, 9, 29,
        ]);
      });

      it("is refilled even when nobody could see that it was put back", async () => {
        const phones = [new TestPhone(), new TestPhone(), new TestPhone()];
        for (const phone of phones) await phone.record(5);
        for (const phone of phones) await phone.exchange(client);
        for (const phone of phones) await phone.exchange(client);
        const epoch = await store.epoch();
        // Rows of a table were put back by hand, under the running server: the epoch stays.
        await database.run("delete from event where ledger_seq > 8");
        await database.run("update aircraft set head = 8");
        // The head is past the old places again before anyone asks: only the event there tells.
        const late = new TestPhone();
        await late.record(30);
        await late.push(client);
        for (const phone of [...phones, late]) await phone.exchange(client);
        for (const phone of [...phones, late]) await phone.exchange(client);
        expect(await store.epoch()).toBe(epoch);
        const ids = (await held()).map(({ id }) => id);
        expect(new Set(ids).size).toBe(3 * 5 + 30);
        for (const phone of phones) expect(phone.ledger.size).toBe(3 * 5 + 30);
        expect(await store.check()).toEqual([]);
      });

      it("is refilled of the events of a phone that is lost, by one that had them", async () => {
        const lost = new TestPhone();
        const other = new TestPhone();
        await lost.record(3);
        await lost.exchange(client);
        await stopAll();
        await store.close();
        const putBack = await database.copy();
        const between = await database.open();
        const betweenClient = await serve(between);
        await lost.record(3);
        await lost.exchange(betweenClient);
        await other.record(1);
        await other.exchange(betweenClient);
        await stopAll();
        await between.close();
        await putBack();
        const after = await serve(await database.open());
        await other.exchange(after);
        expect((await after.devices(AIRCRAFT)).devices).toEqual({
          [lost.device.id]: 6,
          [other.device.id]: 1,
        });
      });
    });
  });
}
