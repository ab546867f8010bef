import { weatherCodeOf } from "@witnessmark/weather";
import { expect, it } from "vitest";
import { fallingThere } from "./falling.ts";

const falling = (...codes: string[]) =>
  fallingThere({
    weather: { value: codes.flatMap((code) => weatherCodeOf(code) ?? []), from: [], missing: [] },
  });

it("names what wets a surface, each once", () => {
  expect(falling("SHRA", "SHRA", "BR")).toBe("moderate rain shower");
  expect(falling("-RA", "+SN")).toBe("light rain, heavy snow");
});

it("is silent on what does not fall there", () => {
  expect(falling()).toBeUndefined();
  expect(falling("BR", "FG", "HZ")).toBeUndefined();
  expect(falling("VCSH")).toBeUndefined();
});
