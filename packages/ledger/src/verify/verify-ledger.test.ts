import { beforeAll, describe, expect, it } from "vitest";
import type { KnownEvent, LedgerEvent } from "../event.ts";
import { hashOfEvent } from "../hash.ts";
import { sealEvent } from "../make-event.ts";
import { generateHistory } from "../testing/generate.ts";
import { Scene } from "../testing/scene.ts";
import { verifyLedger } from "./verify-ledger.ts";

const HOUR_MS = 3_600_000;
const AT = "2031-05-04T09:07:00.000+02:00";

let history: readonly KnownEvent[];
beforeAll(async () => {
  history = await generateHistory({ years: 1, flightsPerYear: 4, seed: 11, seal: "signed" });
});

const find = (type: KnownEvent["type"], nth = 0): KnownEvent => {
  const event = history.filter((each) => each.type === type)[nth];
  if (event === undefined) throw new Error(`the history has no ${type} ${nth}`);
  return event;
};

const without = (event: LedgerEvent) => history.filter((each) => each !== event);
const changed = (event: LedgerEvent, change: Partial<LedgerEvent>): readonly LedgerEvent[] =>
  history.map((each) => (each === event ? { ...event, ...change } : each));

const codesOf = async (events: readonly LedgerEvent[]) =>
  (await verifyLedger(events)).faults.map(({ code, deviceSeq }) => [code, deviceSeq]);

describe("verifying a ledger", () => {
  it("finds nothing wrong with what devices wrote, in any order", async () => {
    const report = await verifyLedger(history.toReversed());
    expect(report).toEqual({ events: history.length, sound: true, faults: [], remarks: [] });
  });

  it("names a changed event by event, device and number", async () => {
    const event = find("reading.recorded", 3);
    const { faults, sound } = await verifyLedger(
      changed(event, { recordedAt: "2031-01-01T00:00:00.000+01:00" }),
    );
    expect(sound).toBe(false);
    expect(faults).toHaveLength(1);
    expect(faults[0]).toMatchObject({
      code: "hash-wrong",
      event: event.id,
      device: event.device,
      deviceSeq: event.deviceSeq,
    });
    expect(faults[0]?.says).toContain(
      `event ${event.deviceSeq} of device ${event.device} (reading.recorded, ${event.id}) was changed after it was made`,
    );
  });

  it("notices a change whose hash was computed anew, by the event that follows", async () => {
    const event = find("check.answered", 20);
    const forged: LedgerEvent = { ...event, recordedAt: "2031-01-01T00:00:00.000+01:00" };
    const hash = await hashOfEvent(forged);
    expect(await codesOf(changed(event, { ...forged, hash }))).toEqual([
      ["chain-broken", event.deviceSeq + 1],
    ]);
  });

  it("notices a changed decision by its signature, also when it is the device's last", async () => {
    const decision = find("decision.signed", 3);
    const upTo = history.filter(
      (event) => event.device !== decision.device || event.deviceSeq <= decision.deviceSeq,
    );
    const forged: LedgerEvent = { ...decision, recordedAt: "2031-01-01T00:00:00.000+01:00" };
    const hash = await hashOfEvent(forged);
    const events = upTo.map((event) => (event === decision ? { ...forged, hash } : event));
    expect(await codesOf(events)).toEqual([["signature-wrong", decision.deviceSeq]]);
  });

  it("notices a signature that was taken away, changed, or put where there is no key", async () => {
    const decision = find("decision.signed");
    const { signature: _taken, ...unsigned } = decision;
    const bare = history.map((event) => (event === decision ? (unsigned as KnownEvent) : event)); // one member of the union
    expect(await codesOf(bare)).toEqual([["signature-missing", decision.deviceSeq]]);
    const other = find("decision.signed", 1).signature ?? "";
    expect(await codesOf(changed(decision, { signature: other }))).toEqual([
      ["signature-wrong", decision.deviceSeq],
    ]);
    const keyless = await generateHistory({ years: 1, flightsPerYear: 1, seed: 1, seal: "hashed" });
    const signed = keyless.map((event) =>
      event.type === "decision.signed" ? { ...event, signature: other } : event,
    );
    const report = await verifyLedger(signed);
    expect(report.faults.map(({ code }) => code)).toEqual(["key-unknown"]);
    expect(report.faults[0]?.says).toMatch(
      /is signed, but the device could keep no key: a generated history/,
    );
  });

  it("says which numbers are missing", async () => {
    const event = find("check.answered", 10);
    expect(await codesOf(without(event))).toEqual([["number-missing", event.deviceSeq + 1]]);
    const { faults } = await verifyLedger(without(event));
    expect(faults[0]?.says).toContain(`event ${event.deviceSeq} is missing from device ${event.device}`);
  });

  it("says what is here twice", async () => {
    const event = find("check.answered", 10);
    expect(await codesOf([...history, event])).toEqual([["number-twice", event.deviceSeq]]);
  });

  it("names both events of a device that went on from an old copy of itself", async () => {
    const event = find("check.answered", 10);
    const { hash: _old, ...rest } = {
      ...event,
      id: find("walk.started").id.replace(/^......../, "01930000"),
    };
    const fork = await sealEvent(rest, null);
    const { faults } = await verifyLedger([...history, fork]);
    expect(faults.map(({ code }) => code)).toEqual(["fork"]);
    expect(faults[0]?.says).toContain(event.id);
    expect(faults[0]?.says).toContain(fork.id);
  });

  it("names a device that was never introduced, an id used twice, and another aircraft's event", async () => {
    const scene = new Scene(77);
    const stranger = scene.phone("Eve");
    const made = stranger.make(scene.now_ms, {
      type: "happening.recorded",
      body: { happening: "rain", at: AT },
    });
    const foreign = await sealEvent(made, null);
    const { faults } = await verifyLedger([...history, foreign]);
    expect(faults.map(({ code, device }) => [code, device])).toEqual([["device-unknown", stranger.device]]);

    const again = await sealEvent({ ...made, id: find("walk.started").id, aircraft: "ZZ-DUN" }, null);
    const codes = (await verifyLedger([...history, again])).faults.map(({ code }) => code);
    expect(codes).toEqual(["aircraft-foreign", "id-twice", "device-unknown"]);
  });

  it("of a text that has no hash says so instead of failing", async () => {
    const event = find("walk.started");
    const { faults } = await verifyLedger(changed(event, { operator: "\ud800" }));
    expect(faults.find(({ code }) => code === "hash-wrong")?.says).toMatch(/surrogate/);
  });
});

describe("odd clocks", () => {
  it("are remarks, never faults, and a run of them is one", async () => {
    const scene = new Scene();
    const phone = scene.phone("Ada");
    const happen = () =>
      scene.say(phone, { type: "happening.recorded", body: { happening: "rain", at: AT } });
    const key = { kind: "none", why: "private browsing" } as const;
    scene.say(phone, { type: "device.introduced", body: { label: "phone", key } });
    phone.setClock(3 * HOUR_MS);
    happen();
    phone.setClock(0);
    for (let at = 0; at < 5; at += 1) happen();
    const { device } = phone;
    const sealed: KnownEvent[] = [];
    let previousHash: string | null = null;
    for (const event of phone.made) {
      const next: KnownEvent = await sealEvent({ ...event, previousHash }, null);
      sealed.push(next);
      previousHash = next.hash;
    }
    const report = await verifyLedger(sealed, { now_ms: scene.now_ms });
    expect(report.faults).toEqual([]);
    expect(report.remarks.map(({ code, deviceSeq, toSeq }) => [code, deviceSeq, toSeq])).toEqual([
      ["far-future", 2, 7],
      ["clock-apart", 3, 7],
      ["clock-back", 3, 3],
    ]);
    expect(report.remarks[1]?.says).toContain(`event 3 of device ${device}`);
    expect(report.remarks[1]?.says).toContain("its stamp is 3.0 h ahead of its wall time");
  });

  it("say how far a device was from the server, and when its stamps went back", async () => {
    const event = find("check.answered", 5);
    const { remarks } = await verifyLedger(
      changed(event, { clockOffset_ms: 61 * 60_000, hlc: "000000000000001-00000" }),
    );
    const ofEvent = remarks.filter((remark) => remark.event === event.id);
    expect(ofEvent.map(({ code }) => code).sort()).toEqual(["clock-apart", "clock-wrong", "stamp-back"]);
    expect(ofEvent.find(({ code }) => code === "clock-wrong")?.says).toContain(
      "its device was 61 min ahead of the server",
    );
  });
});
