import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { OperatorStore, Outcome, Store } from "../store.ts";
import { run, sound, unsound } from "./arrivals.ts";
import type { TestDatabase } from "./backend.ts";
import { lifecycleContract } from "./lifecycle-contract.ts";
import { SOON } from "./soon.ts";

const NOW_MS = Date.UTC(2031, 4, 6, 7, 8, 9);
const ALL = { after: 0, limit: 10_000, most_B: 100_000_000 };
const SKR = "ZZ-SKR";

const outcomes = (results: readonly Outcome[]) => results.map(({ outcome }) => outcome);
const numbers = (results: readonly Outcome[]) =>
  results.map((result) => ("ledgerSeq" in result ? result.ledgerSeq : null));

/** What every store promises. Run in full against each kind of database. */
export function storeContract(name: string, create: () => Promise<TestDatabase>): void {
  describe(`the store on ${name}`, () => {
    let database: TestDatabase;
    let store: Store;
    let own: OperatorStore;

    beforeEach(async () => {
      database = await create();
      store = await database.open();
      own = store.forOperator("own");
    });
    afterEach(() => database.remove());

    const idsOf = async (from: OperatorStore, aircraft = SKR) =>
      (await from.page(aircraft, ALL)).events.map(({ text }) => String(JSON.parse(text).id));

    describe("append", () => {
      it("numbers events from 1 without a hole, per aircraft, in the order they came", async () => {
        expect(numbers((await own.append(SKR, run("a", 1, 3), NOW_MS)).results)).toEqual([1, 2, 3]);
        expect(numbers((await own.append("ZZ-DUN", run("a", 1, 2), NOW_MS)).results)).toEqual([1, 2]);
        const second = await own.append(SKR, run("b", 1, 2), NOW_MS);
        expect(second).toEqual({
          epoch: await store.epoch(),
          head: 5,
          results: [
            { id: "b-1", outcome: "accepted", ledgerSeq: 4 },
            { id: "b-2", outcome: "accepted", ledgerSeq: 5 },
          ],
        });
      });

      it("keeps an event's text to the letter, and when it came", async () => {
        const texts = [
          '{"nul":"\\u0000","quote":"\\"","slash":"\\\\","line":"\u2028","face":"😀","acc":"é e\u0301"}',
          `{"long":"${"x".repeat(400_000)}"}`,
          '{"b":1e-7,"a":0.1}',
          "' or 1=1; drop table event; -- $1 ?",
        ];
        await own.append(
          SKR,
          texts.map((text, index) => ({ ...sound("a", index + 1), text })),
          NOW_MS,
        );
        const { events } = await own.page(SKR, ALL);
        expect(events.map(({ text }) => text)).toEqual(texts);
        expect(events.map(({ receivedAt_ms }) => receivedAt_ms)).toEqual(texts.map(() => NOW_MS));
      });

      it("takes 500 events at once", async () => {
        const { head } = await own.append(SKR, run("a", 1, 500), NOW_MS);
        expect(head).toBe(500);
        expect(await idsOf(own)).toEqual(run("a", 1, 500).map(({ id }) => id));
      });

      it("takes no events, and makes nothing of it", async () => {
        expect(await own.append(SKR, [], NOW_MS)).toMatchObject({ head: 0, results: [] });
        expect(await own.heads()).toEqual([]);
      });

      it("answers an event that is there already as a duplicate, with its number", async () => {
        await own.append(SKR, run("a", 1, 3), NOW_MS);
        const again = await own.append(SKR, run("a", 2, 4), NOW_MS + 1);
        expect(outcomes(again.results)).toEqual(["duplicate", "duplicate", "accepted"]);
        expect(numbers(again.results)).toEqual([2, 3, 4]);
        expect((await own.page(SKR, ALL)).events.map(({ receivedAt_ms }) => receivedAt_ms - NOW_MS)).toEqual([
          0, 0, 0, 1,
        ]);
      });

      it("numbers an event once that comes twice in one batch", async () => {
        const { results } = await own.append(SKR, [sound("a", 1), sound("a", 1), sound("a", 2)], NOW_MS);
        expect(outcomes(results)).toEqual(["accepted", "duplicate", "accepted"]);
        expect(numbers(results)).toEqual([1, 1, 2]);
      });

      it("sets an event aside that has another's id but other contents, and keeps both", async () => {
        await own.append(SKR, [sound("a", 1, "first")], NOW_MS);
        const other = sound("a", 1, "second");
        const { results, head } = await own.append(SKR, [other, sound("a", 2)], NOW_MS);
        expect(outcomes(results)).toEqual(["conflict", "accepted"]);
        expect(results[0]).toMatchObject({
          reason: expect.stringContaining("already in the ledger as number 1"),
        });
        expect(head).toBe(2);
        expect((await own.page(SKR, ALL)).events[0]?.text).toContain("first");
        expect((await own.quarantine(SKR, 10, 1e6)).map(({ text }) => text)).toEqual([other.text]);
      });

      it("sets an event aside that takes the place of another on its device, also within one batch", async () => {
        await own.append(SKR, [sound("a", 1)], NOW_MS);
        const { results } = await own.append(
          SKR,
          [sound("a", 1, "", "x"), sound("a", 2, "", "y"), sound("a", 2, "", "z")],
          NOW_MS,
        );
        expect(outcomes(results)).toEqual(["conflict", "accepted", "conflict"]);
        expect(results[2]).toMatchObject({ reason: expect.stringContaining("(y, number 2 of the ledger)") });
        expect(await own.quarantine(SKR, 10, 1e6)).toHaveLength(2);
      });

      it("keeps what is unsound without a number, and what is behind it goes on", async () => {
        const { results } = await own.append(
          SKR,
          [sound("a", 1), unsound('{"broken":1}', "no hash", "b-7"), sound("a", 2)],
          NOW_MS,
        );
        expect(results).toEqual([
          { id: "a-1", outcome: "accepted", ledgerSeq: 1 },
          { id: "b-7", outcome: "quarantined", reason: "no hash" },
          { id: "a-2", outcome: "accepted", ledgerSeq: 2 },
        ]);
        expect(await own.quarantine(SKR, 10, 1e6)).toEqual([
          { receivedAt_ms: NOW_MS, reason: "no hash", text: '{"broken":1}' },
        ]);
      });

      it("keeps one unsound text once, however often it comes", async () => {
        for (const again of [0, 1, 2]) await own.append(SKR, [unsound("{}"), unsound("{}")], NOW_MS + again);
        expect(await own.quarantine(SKR, 10, 1e6)).toHaveLength(1);
      });

      it.each(["\u0000", "\ud800", "'; --", "", "x".repeat(10_000)])(
        "is not troubled by an unsound event whose id is %j",
        async (id) => {
          const { results } = await own.append(
            SKR,
            [unsound(JSON.stringify({ id }), "no", id), sound("a", 1)],
            NOW_MS,
          );
          expect(results.map((result) => result.id)).toEqual([id, "a-1"]);
        },
      );

      it("lists an aircraft only once an event of it is numbered", async () => {
        await own.append("ZZ-BRK", [unsound("{}")], NOW_MS);
        await own.append(SKR, run("a", 1, 2), NOW_MS);
        await own.append("ZZ-DUN", run("a", 1, 1), NOW_MS);
        expect(await own.heads()).toEqual([
          { aircraft: "ZZ-DUN", head: 1 },
          { aircraft: SKR, head: 2 },
        ]);
      });
    });

    describe("page", () => {
      it("gives the events after a place, up to a limit, with the head", async () => {
        await own.append(SKR, run("a", 1, 10), NOW_MS);
        const page = await own.page(SKR, { ...ALL, after: 3, limit: 4 });
        expect(page.head).toBe(10);
        expect(page.epoch).toBe(await store.epoch());
        expect(page.events.map(({ ledgerSeq }) => ledgerSeq)).toEqual([4, 5, 6, 7]);
        expect((await own.page(SKR, { ...ALL, after: 10 })).events).toEqual([]);
        expect(await own.page(SKR, { ...ALL, after: 99 })).toMatchObject({ head: 10, events: [] });
      });

      it("ends before it gets too long, but always gives one event", async () => {
        const long = Array.from({ length: 4 }, (_, index) => ({
          ...sound("a", index + 1),
          text: "x".repeat(1_000),
        }));
        await own.append(SKR, long, NOW_MS);
        expect((await own.page(SKR, { ...ALL, most_B: 2_000 })).events).toHaveLength(2);
        expect((await own.page(SKR, { ...ALL, most_B: 1_999 })).events).toHaveLength(1);
        expect((await own.page(SKR, { ...ALL, after: 3, most_B: 1 })).events).toHaveLength(1);
      });

      it("counts bytes, not letters", async () => {
        const text = "é".repeat(500);
        await own.append(
          SKR,
          [
            { ...sound("a", 1), text },
            { ...sound("a", 2), text },
          ],
          NOW_MS,
        );
        expect((await own.page(SKR, { ...ALL, most_B: 1_999 })).events).toHaveLength(1);
        expect((await own.page(SKR, { ...ALL, most_B: 2_000 })).events).toHaveLength(2);
      });

      it("knows nothing of an aircraft that nobody sent", async () => {
        expect(await own.page("ZZ-NIL", ALL)).toEqual({ epoch: await store.epoch(), head: 0, events: [] });
      });

      it("names the event at a place", async () => {
        await own.append(SKR, run("a", 1, 2), NOW_MS);
        expect(await own.idAt(SKR, 2)).toBe("a-2");
        expect(await own.idAt(SKR, 3)).toBeNull();
        expect(await own.idAt("ZZ-NIL", 1)).toBeNull();
      });
    });

    describe("devices", () => {
      it("gives each device's highest count without a hole before it, and moves on when the hole is filled", async () => {
        await own.append(
          SKR,
          [...run("a", 1, 3), ...run("b", 1, 2), ...run("b", 4, 6), ...run("c", 2, 3)],
          NOW_MS,
        );
        expect(Object.fromEntries(await own.devices(SKR))).toEqual({ a: 3, b: 2 });
        await own.append(SKR, [sound("b", 3), sound("c", 1)], NOW_MS);
        expect(Object.fromEntries(await own.devices(SKR))).toEqual({ a: 3, b: 6, c: 3 });
        expect((await own.devices("ZZ-NIL")).size).toBe(0);
      });
    });

    describe("quarantine", () => {
      it("gives the newest first, up to a limit and a size, but always one", async () => {
        for (const [index, text] of ["one", "two", "three"].entries()) {
          await own.append(SKR, [unsound(text)], NOW_MS + index);
        }
        const texts = async (limit: number, most_B: number) =>
          (await own.quarantine(SKR, limit, most_B)).map(({ text }) => text);
        expect(await texts(10, 1e6)).toEqual(["three", "two", "one"]);
        expect(await texts(2, 1e6)).toEqual(["three", "two"]);
        expect(await texts(10, 8)).toEqual(["three", "two"]);
        expect(await texts(10, 1)).toEqual(["three"]);
      });
    });

    describe("photos", () => {
      const photo = {
        mediaType: "image/png",
        bytes: Uint8Array.from({ length: 70_000 }, (_, index) => index % 256),
      };

      it("keeps a picture to the byte, once", async () => {
        expect(await own.hasPhoto("aa")).toBe(false);
        expect(await own.getPhoto("aa")).toBeNull();
        expect(await own.putPhoto("aa", photo, NOW_MS)).toBe("stored");
        expect(await own.putPhoto("aa", photo, NOW_MS)).toBe("present");
        expect(await own.hasPhoto("aa")).toBe(true);
        const kept = await own.getPhoto("aa");
        expect(kept?.mediaType).toBe("image/png");
        expect(Buffer.compare(kept?.bytes ?? new Uint8Array(), photo.bytes)).toBe(0);
      });
    });

    describe("operators", () => {
      it("never meet: not in events, pictures, devices or what is set aside", async () => {
        const other = store.forOperator("other");
        await own.append(SKR, [...run("a", 1, 2), unsound("{}")], NOW_MS);
        await own.putPhoto("aa", { mediaType: "image/png", bytes: new Uint8Array([1]) }, NOW_MS);
        expect(await other.heads()).toEqual([]);
        expect((await other.page(SKR, ALL)).events).toEqual([]);
        expect((await other.devices(SKR)).size).toBe(0);
        expect(await other.quarantine(SKR, 10, 1e6)).toEqual([]);
        expect(await other.hasPhoto("aa")).toBe(false);
        expect(await other.idAt(SKR, 1)).toBeNull();
        const theirs = await other.append(SKR, run("a", 1, 1), NOW_MS);
        expect(numbers(theirs.results)).toEqual([1]);
        expect(await own.heads()).toEqual([{ aircraft: SKR, head: 2 }]);
      });
    });

    describe("several at once", () => {
      it("eight senders on two programs, and a reader who polls, lose and miss nothing", async () => {
        const second = (await database.open()).forOperator("own");
        const seen: string[] = [];
        let sending = 8;
        const reader = async () => {
          let after = 0;
          for (let last = false; ; last = sending === 0) {
            const { events, head } = await second.page(SKR, { after, limit: 7, most_B: 1e6 });
            for (const { ledgerSeq, text } of events) {
              expect(ledgerSeq).toBe(after + 1);
              after = ledgerSeq;
              seen.push(String(JSON.parse(text).id));
            }
            if (last && after === head) return;
          }
        };
        const sender = async (device: string, to: OperatorStore) => {
          for (let from = 1; from <= 60; from += 3) await to.append(SKR, run(device, from, from + 2), NOW_MS);
          sending -= 1;
        };
        await Promise.all([
          reader(),
          ...Array.from({ length: 8 }, (_, index) => sender(`d${index}`, index % 2 === 0 ? own : second)),
        ]);
        expect(seen).toHaveLength(8 * 60);
        expect(new Set(seen).size).toBe(8 * 60);
        expect(await store.check()).toEqual([]);
      });

      it("one event sent by all at once is numbered once", async () => {
        const second = (await database.open()).forOperator("own");
        const answers = await Promise.all(
          Array.from({ length: 8 }, (_, index) =>
            (index % 2 === 0 ? own : second).append(SKR, run("a", 1, 5), NOW_MS),
          ),
        );
        for (const { results } of answers) expect(numbers(results)).toEqual([1, 2, 3, 4, 5]);
        expect(
          answers.flatMap(({ results }) => outcomes(results)).filter((one) => one === "accepted"),
        ).toHaveLength(5);
        expect(await idsOf(own)).toEqual(["a-1", "a-2", "a-3", "a-4", "a-5"]);
      });
    });

    describe("watch", () => {
      it("tells of new events of its operator, whichever program took them, until it is stopped", async () => {
        const second = await database.open();
        const told: string[] = [];
        const stop = own.watch(({ aircraft, head }) => told.push(`${aircraft} ${head}`));
        await own.append(SKR, run("a", 1, 2), NOW_MS);
        await expect.poll(() => told, SOON).toContain(`${SKR} 2`);
        await second.forOperator("other").append(SKR, run("a", 1, 9), NOW_MS);
        await second.forOperator("own").append("ZZ-DUN", run("a", 1, 3), NOW_MS);
        await expect.poll(() => told, SOON).toContain("ZZ-DUN 3");
        expect(told.filter((one) => one === `${SKR} 2`)).toHaveLength(1);
        expect(told).not.toContain(`${SKR} 9`);
        stop();
        const still = [...told];
        const again = own.watch(() => undefined);
        await own.append(SKR, run("a", 3, 3), NOW_MS);
        expect(told).toEqual(still);
        again();
      });

      it("says nothing of a duplicate or of what is set aside", async () => {
        await own.append(SKR, run("a", 1, 1), NOW_MS);
        const told: string[] = [];
        own.watch(({ aircraft, head }) => told.push(`${aircraft} ${head}`));
        await own.append(SKR, [...run("a", 1, 1), unsound("{}")], NOW_MS);
        await own.append("ZZ-DUN", run("a", 1, 1), NOW_MS);
        await expect.poll(() => told, SOON).toContain("ZZ-DUN 1");
        expect(told.filter((one) => one.startsWith(SKR)).length).toBeLessThanOrEqual(1);
      });
    });
  });
  lifecycleContract(name, create);
}
