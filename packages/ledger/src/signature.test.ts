import { describe, expect, it } from "vitest";
import { toBase64url } from "./base64url.ts";
import { importPublicKey, mustBeSigned, newDeviceKey, sign, tryDeviceKey, verify } from "./signature.ts";

const coded = (hex: string): string =>
  toBase64url(Uint8Array.from(hex.match(/../g) ?? [], (byte) => Number.parseInt(byte, 16)));

// RFC 6979, A.2.5: P-256, SHA-256, message "sample"
const PUBLISHED = {
  x: coded("60fed4ba255a9d31c961eb74c6356d68c049b8923b61fa6ce669622e60f29fb6"),
  y: coded("7903fe1008b8bc99a41ae9e95628bc64f2f1b20c2d7e9f5177a3c294d4462299"),
  signature: coded(
    "efd48b2aacb6a8fd1140dd9cd45e81d69d2c877b56aaf991c34d0ea84eaf3716" +
      "f7cb1c942d657c41d436c7a1b6e29f65f3e900dbb9aff4064dc4ab2f843acda8",
  ),
};

async function keyPair() {
  const made = await newDeviceKey();
  if (made.privateKey === null) throw new Error(made.key.why);
  return { privateKey: made.privateKey, publicKey: made.key.publicKey };
}

describe("signatures", () => {
  it("accepts the published signature, and none that differs", async () => {
    const key = await importPublicKey(PUBLISHED);
    expect(await verify(key, "sample", PUBLISHED.signature)).toBe(true);
    expect(await verify(key, "Sample", PUBLISHED.signature)).toBe(false);
  });

  it("refuses every other text for the same bytes", async () => {
    const key = await importPublicKey(PUBLISHED);
    const last = PUBLISHED.signature.at(-1);
    for (const char of "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_") {
      const changed = PUBLISHED.signature.slice(0, -1) + char;
      expect(await verify(key, "sample", changed)).toBe(char === last);
    }
  });

  it("verifies what a new key signed, by the public half on the record", async () => {
    const { privateKey, publicKey } = await keyPair();
    const signature = await sign(privateKey, "ab".repeat(32));
    expect(await verify(await importPublicKey(publicKey), "ab".repeat(32), signature)).toBe(true);
    expect(await verify(await importPublicKey(publicKey), "ac".repeat(32), signature)).toBe(false);
  });

  it("makes a key whose private half cannot be taken out", async () => {
    const { privateKey } = await keyPair();
    expect(privateKey.extractable).toBe(false);
    await expect(crypto.subtle.exportKey("jwk", privateKey)).rejects.toThrow();
  });

  it("says on the record why a device has no key that works", async () => {
    const one = await keyPair();
    const other = await keyPair();
    expect(await tryDeviceKey(one.privateKey, other.publicKey)).toEqual({
      privateKey: null,
      key: { kind: "none", why: "the key's own signature does not verify" },
    });
    const noPoint = await tryDeviceKey(one.privateKey, { x: "A".repeat(43), y: "A".repeat(43) });
    expect(noPoint.key.kind).toBe("none");
  });

  it("is asked of decisions and sign-offs only", () => {
    expect(mustBeSigned("decision.signed")).toBe(true);
    expect(mustBeSigned("discrepancy.closed")).toBe(true);
    expect(mustBeSigned("check.answered")).toBe(false);
  });
});
