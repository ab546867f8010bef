import { toSI, type Wind } from "@witnessmark/engine";
import { describe, expect, it } from "vitest";
import { plain } from "../../testing/plain.ts";
import { windText } from "./wind-text.ts";

const from = (deg: number, speed_kt: number, gust_kt?: number): Wind => ({
  direction: { kind: "from", from_rad: toSI(deg, "deg") },
  speed_mPerS: toSI(speed_kt, "kt"),
  ...(gust_kt === undefined ? {} : { gust_mPerS: toSI(gust_kt, "kt") }),
});

describe("a wind in words", () => {
  // 14 kt = 7.202 m/s, 22 kt = 11.318 m/s; 25.928 and 40.744 km/h; 16.111 and 25.317 mph: each rounded up
  it.each([
    ["kt", "240° 14 G 22 kt"],
    ["mPerS", "240° 7.5 G 11.5 m/s"],
    ["kmPerH", "240° 26 G 41 km/h"],
    ["mph", "240° 17 G 26 mph"],
  ] as const)("has its speeds in %s, rounded up", (unit, text) => {
    expect(plain(windText(from(240, 14, 22), unit))).toBe(text);
  });

  it("says when it comes from no one direction, and when there is none", () => {
    expect(plain(windText({ direction: { kind: "variable" }, speed_mPerS: toSI(4, "kt") }))).toBe(
      "variable 4 kt",
    );
    expect(windText(from(0, 0))).toBe("calm");
    expect(plain(windText(from(359.9, 3)))).toBe("360° 3 kt");
  });
});
