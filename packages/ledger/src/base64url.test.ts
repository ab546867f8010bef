import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fromBase64url, toBase64url } from "./base64url.ts";

describe("base64url", () => {
  it.each([
    // RFC 4648, section 10, without padding
    ["", ""],
    ["f", "Zg"],
    ["fo", "Zm8"],
    ["foo", "Zm9v"],
    ["foob", "Zm9vYg"],
    ["fooba", "Zm9vYmE"],
    ["foobar", "Zm9vYmFy"],
  ])("writes %j as %j and back", (plain, coded) => {
    expect(toBase64url(new TextEncoder().encode(plain))).toBe(coded);
    expect(new TextDecoder().decode(fromBase64url(coded))).toBe(plain);
  });

  it("brings any bytes back", () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 80 }), (bytes) => {
        expect([...(fromBase64url(toBase64url(bytes)) ?? [])]).toEqual([...bytes]);
      }),
    );
  });

  it.each(["Zh", "Zg==", "Z g", "Zg+", "Z"])("refuses %j, which is not the one text of its bytes", (text) => {
    expect(fromBase64url(text)).toBeUndefined();
  });
});
