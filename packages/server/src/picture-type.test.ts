import { describe, expect, it } from "vitest";
import { pictureType } from "./picture-type.ts";

const bytes = (...parts: readonly (string | number)[]) =>
  Uint8Array.from(
    parts.flatMap((part) =>
      typeof part === "number" ? [part] : [...part].map((letter) => letter.charCodeAt(0)),
    ),
  );

describe("pictureType", () => {
  it.each([
    // ITU-T T.81 annex B: start of image, then an application marker
    { of: bytes(0xff, 0xd8, 0xff, 0xe0, 0, 16, "JFIF"), is: "image/jpeg" },
    // ISO/IEC 15948 clause 5.2
    { of: bytes(137, 80, 78, 71, 13, 10, 26, 10, 0), is: "image/png" },
    // RFC 9649 section 2.4: RIFF, size, WEBP
    { of: bytes("RIFF", 36, 0, 0, 0, "WEBPVP8 "), is: "image/webp" },
    { of: bytes("GIF89a"), is: null },
    { of: bytes("RIFF", 36, 0, 0, 0, "WAVEfmt "), is: null },
    { of: bytes("<svg onload='alert(1)'>"), is: null },
    { of: bytes("<!doctype html>"), is: null },
    { of: bytes(137, 80, 78, 71), is: null },
    { of: bytes(0xff, 0xd8), is: null },
    { of: bytes(), is: null },
  ])("tells $is by how the bytes begin", ({ of, is }) => {
    expect(pictureType(of)).toBe(is);
  });
});
