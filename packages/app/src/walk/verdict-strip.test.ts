import { expect, it } from "vitest";
import { stripText } from "./verdict-strip.ts";

it.each([
  [{ status: "clear", says: "", margin: { value: 0.12, text: "0.12 bar" } }, "Inside by 0.12 bar"],
  [
    { status: "caution", says: "", margin: { value: 0.03, text: "0.03 bar" } },
    "Inside by 0.03 bar: too close to call",
  ],
  [
    {
      status: "stop",
      says: "4.20 bar, 4.97 to 5.21 at 4 °C: find the cause",
      margin: { value: -0.77, text: "0.77 bar under" },
    },
    "0.77 bar under: find the cause",
  ],
  [{ status: "stop", says: "95 kg, at most 90", margin: { value: -5, text: "5 kg over" } }, "5 kg over"],
  [
    { status: "open", says: "Tyre temperature not given", margin: { value: 0, text: "not known" } },
    "Tyre temperature not given",
  ],
] as const)("says %j as %s", (verdict, text) => {
  expect(stripText(verdict)).toBe(text);
});
