import "fake-indexeddb/auto";
import { mustBeSigned, newId, verifyLedger } from "@witnessmark/ledger";
import { afterEach, describe, expect, it } from "vitest";
import { deviceLabel, openDevice } from "./device.ts";
import { connect } from "./storage/open-database.ts";
import { FakeServer } from "./testing/fake-server.ts";
import { type Fault, failPuts } from "./testing/faults.ts";
import { newPhone, pickUp } from "./testing/phone.ts";

let fault: Fault | null = null;
afterEach(() => {
  fault?.mend();
  fault = null;
});

describe("who this phone is", () => {
  it("is made once, with a key that cannot leave the browser, and is the same at every start", async () => {
    const name = newPhone();
    const first = await openDevice(connect(name), "Android phone");
    expect(first.key.key.kind).toBe("ecdsa-p256");
    expect(first.key.privateKey?.extractable).toBe(false);
    const second = await openDevice(connect(name), "Android phone");
    expect(second.id).toBe(first.id);
    expect(second.key.key).toEqual(first.key.key);
  });

  it("says on the record why it has no key, where the browser will not store one", async () => {
    const dataClone = () => new DOMException("CryptoKey cannot be stored here", "DataCloneError");
    fault = failPuts((call) => call === 1, dataClone);
    const server = new FakeServer();
    const keep = await pickUp(server, newPhone());
    const discrepancy = newId();
    await keep.append("ZZ-SKR", [
      { type: "discrepancy.raised", body: { discrepancy, words: "Tyre worn" } },
      {
        type: "discrepancy.closed",
        body: { discrepancy, how: "put-right", words: "Changed", releasedBy: "A. Lund" },
      },
    ]);
    await keep.exchange();
    const events = server.events("ZZ-SKR");
    expect(events[0]?.body).toMatchObject({
      key: { kind: "none", why: "DataCloneError: CryptoKey cannot be stored here" },
    });
    expect(events.some((event) => mustBeSigned(event.type) && event.signature !== undefined)).toBe(false);
    expect(await verifyLedger(events)).toMatchObject({ sound: true });
  });

  it("is another phone when its stored key no longer signs", async () => {
    const name = newPhone();
    const connection = connect(name);
    const first = await openDevice(connection, "iPhone");
    const other = await openDevice(connect(newPhone()), "iPhone");
    const broken = { ...first, key: { ...first.key, privateKey: other.key.privateKey } };
    await connection.run((database) => database.put("settings", broken as typeof first, "device"));
    const second = await openDevice(connection, "iPhone");
    expect(second.id).not.toBe(first.id);
    expect(second.key.key.kind).toBe("ecdsa-p256");
  });
});

describe("what the record calls a phone", () => {
  it.each([
    ["Mozilla/5.0 (iPhone; CPU iPhone OS 19_0 like Mac OS X) AppleWebKit/605.1.15", "iPhone"],
    [
      "Mozilla/5.0 (Linux; Android 16; K) AppleWebKit/537.36 Chrome/156.0.0.0 Mobile Safari/537.36",
      "Android phone",
    ],
    [
      "Mozilla/5.0 (Linux; Android 16; K) AppleWebKit/537.36 Chrome/156.0.0.0 Safari/537.36",
      "Android tablet",
    ],
    ["Mozilla/5.0 (X11; Linux x86_64; rv:153.0) Gecko/20100101 Firefox/153.0", "Linux computer"],
    ["", "Device"],
  ])("is its kind: %s", (userAgent, label) => {
    expect(deviceLabel(userAgent)).toBe(label);
  });
});
