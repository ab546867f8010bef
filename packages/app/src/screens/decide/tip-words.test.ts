import type { TippingPoint } from "@witnessmark/assess";
import { expect, it } from "vitest";
import { tipWords } from "./tip-words.ts";

const POINT: TippingPoint = {
  variable: "oat:destination",
  title: "temperature at ZZQN",
  unit: "degC",
  now: 5,
  holds: 40,
  changes: 40.2,
  low: -35,
  high: 45,
  verdict: "runway:destination:landing",
  verdictTitle: "Landing at ZZQN",
  says: "Not known",
  was: "clear",
  becomes: "open",
  better: false,
  likelihood_1: 8.8,
};
const plain = (text: string) => text.replaceAll("\u00A0", " ");

it("tells a value rounded towards now", () => {
  const { value, what, now } = tipWords(POINT, 0);
  expect([plain(value), what, plain(now)]).toEqual([
    "40 °C",
    "temperature at ZZQN. Landing at ZZQN: open",
    "5 °C now",
  ]);
});

it("tells tenths where whole figures would be those of now", () => {
  const { value, now } = tipWords({ ...POINT, holds: 5, changes: 5.18 }, 0);
  expect([plain(value), plain(now)]).toEqual(["5.1 °C", "5.0 °C now"]);
});
