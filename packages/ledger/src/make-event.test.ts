import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import { hashOfEvent } from "./hash.ts";
import { tick } from "./hlc.ts";
import { clockOf, type EventDraft, type MakeContext, makeEvents } from "./make-event.ts";
import { newId } from "./new-id.ts";
import { type DeviceKey, importPublicKey, newDeviceKey, verify } from "./signature.ts";

const NOW_MS = Date.UTC(2031, 4, 4, 7, 7);
const AT = "2031-05-04T09:07:00.000+02:00";

const context = (more: Partial<MakeContext> = {}): MakeContext => ({
  operator: "island-eye-clinic",
  aircraft: "ZZ-SKR",
  device: newId(),
  author: { id: newId(), name: "Ada", role: "pilot" },
  last: null,
  clock: null,
  now_ms: NOW_MS,
  zone_min: 120,
  newId,
  key: null,
  ...more,
});

const DISCREPANCY = newId();
const CLOSED: EventDraft = {
  type: "discrepancy.closed",
  body: { discrepancy: DISCREPANCY, how: "put-right", words: "new seal", releasedBy: "C. Dow" },
};
const FUELLED: EventDraft = { type: "happening.recorded", body: { happening: "fuelled", at: AT } };

let device: DeviceKey;
beforeAll(async () => {
  device = await newDeviceKey();
});

describe("making events", () => {
  it("numbers, stamps, chains and hashes them, from where the device left off", async () => {
    const given = context({
      last: { deviceSeq: 41, hash: "ab".repeat(32) },
      clock: tick(null, NOW_MS + 60_000),
    });
    const { events, last, clock } = await makeEvents(given, [FUELLED, FUELLED]);
    const [first, second] = events;
    if (first === undefined || second === undefined) throw new Error("made two");
    expect([first.deviceSeq, second.deviceSeq]).toEqual([42, 43]);
    expect(first.previousHash).toBe("ab".repeat(32));
    expect(second.previousHash).toBe(first.hash);
    expect(first.hlc > (given.clock ?? "")).toBe(true);
    expect(second.hlc > first.hlc).toBe(true);
    expect(first.recordedAt).toBe("2031-05-04T09:07:00.000+02:00");
    expect(second.hash).toBe(await hashOfEvent(second));
    expect(last).toEqual({ deviceSeq: 43, hash: second.hash });
    expect(clock).toBe(second.hlc);
    expect(Object.keys(first)).not.toContain("clockOffset_ms");
  });

  it("keeps the measured clock offset on the record", async () => {
    const { events } = await makeEvents(context({ clockOffset_ms: 3_660_000 }), [FUELLED]);
    expect(events[0]?.clockOffset_ms).toBe(3_660_000);
  });

  it("signs decisions and sign-offs where the device has a key, and nothing else", async () => {
    if (device.privateKey === null) throw new Error(device.key.why);
    const { events } = await makeEvents(context({ key: device.privateKey }), [FUELLED, CLOSED]);
    const [fuelled, closed] = events;
    expect(fuelled?.signature).toBeUndefined();
    const key = await importPublicKey(device.key.publicKey);
    expect(await verify(key, closed?.hash ?? "", closed?.signature ?? "")).toBe(true);
    const without = await makeEvents(context(), [CLOSED]);
    expect(without.events[0]?.signature).toBeUndefined();
  });

  it("makes nothing of no drafts, and goes on from the same place", async () => {
    const given = context({ last: { deviceSeq: 3, hash: "ab".repeat(32) }, clock: tick(null, NOW_MS) });
    expect(await makeEvents(given, [])).toEqual({ events: [], last: given.last, clock: given.clock });
  });

  it("refuses a draft that no server would take, and says which part", async () => {
    const empty: EventDraft = {
      type: "note.written",
      body: { subject: { kind: "walk", id: newId() }, text: "" },
    };
    await expect(makeEvents(context(), [empty])).rejects.toThrow(
      'note.written: expected an event as its type asks, received body.text: expected text of 1 to 10000 characters, without the character 0 or half a character, found ""',
    );
    const halved: EventDraft = { type: "note.written", body: { ...empty.body, text: "\ud83d" } };
    await expect(makeEvents(context(), [halved])).rejects.toThrow(/body\.text/);
  });

  it("never refuses for a wrong clock, however wrong", async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.oneof(fc.integer({ min: -8.64e15, max: 8.64e15 }), fc.constantFrom(0, Number.MAX_SAFE_INTEGER)),
        fc.integer({ min: -840, max: 840 }),
        async (now_ms, zone_min) => {
          const { events } = await makeEvents(context({ now_ms, zone_min }), [FUELLED]);
          expect(events).toHaveLength(1);
        },
      ),
    );
  });
});

describe("a device that starts again", () => {
  it("goes on after its own last stamp, and follows others' within the bound", () => {
    const own = { device: "a", hlc: tick(null, NOW_MS + 7_200_000) };
    const near = { device: "b", hlc: tick(null, NOW_MS + 60_000) };
    const far = { device: "b", hlc: tick(null, NOW_MS + 86_400_000) };
    expect(clockOf([], "a", NOW_MS)).toBeNull();
    expect(clockOf([near, far], "a", NOW_MS)).toBe(near.hlc);
    expect(clockOf([near, own, far], "a", NOW_MS)).toBe(own.hlc);
  });
});
