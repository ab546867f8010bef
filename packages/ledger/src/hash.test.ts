import { createHash } from "node:crypto";
import { describe, expect, it } from "vitest";
import type { LedgerEvent } from "./event.ts";
import { hashOfEvent, sha256 } from "./hash.ts";

const EVENT: LedgerEvent = {
  id: "01957000-0000-7000-8000-000000000001",
  operator: "o",
  aircraft: "ZZ-SKR",
  device: "01957000-0000-7000-8000-000000000002",
  deviceSeq: 1,
  author: { id: "01957000-0000-7000-8000-000000000003", name: "Ada", role: "pilot" },
  hlc: "001935730000000-00000",
  recordedAt: "2031-05-04T09:07:00.000+02:00",
  type: "walk.finished",
  schemaVersion: 1,
  body: { walk: "01957000-0000-7000-8000-000000000004" },
  previousHash: null,
  hash: "",
};

describe("hashes", () => {
  it("gives the published SHA-256 of abc", async () => {
    // FIPS 180-2, Appendix B.1
    expect(await sha256("abc")).toBe("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  });

  it("covers all of an event but its hash and signature, with its keys in order", async () => {
    // The text is written out by hand here, and hashed by another implementation.
    const text =
      '{"aircraft":"ZZ-SKR","author":{"id":"01957000-0000-7000-8000-000000000003","name":"Ada","role":"pilot"},' +
      '"body":{"walk":"01957000-0000-7000-8000-000000000004"},"device":"01957000-0000-7000-8000-000000000002",' +
      '"deviceSeq":1,"hlc":"001935730000000-00000","id":"01957000-0000-7000-8000-000000000001","operator":"o",' +
      '"previousHash":null,"recordedAt":"2031-05-04T09:07:00.000+02:00","schemaVersion":1,"type":"walk.finished"}';
    const expected = createHash("sha256").update(text).digest("hex");
    expect(await hashOfEvent(EVENT)).toBe(expected);
    expect(await hashOfEvent({ ...EVENT, hash: "other", signature: "other" })).toBe(expected);
  });

  it("covers what a later version added", async () => {
    const later = { ...EVENT, colour: "blue" };
    expect(await hashOfEvent(later)).not.toBe(await hashOfEvent(EVENT));
  });
});
