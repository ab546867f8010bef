import { toSI } from "@witnessmark/engine";
import { expect, it } from "vitest";
import { exactLeft_m, leftText, safeText, toLimitText } from "./conditions-units.ts";

const plain = (text: string) => text.replaceAll("\u00A0", " ");

it("a margin of wind is told to the limit, for left is a side", () => {
  expect(plain(toLimitText(toSI(12.4, "kt"), "kt"))).toBe("12 kt to the limit");
  expect(plain(toLimitText(toSI(-1.2, "kt"), "kt"))).toBe("2 kt over");
});

it("a distance is rounded once, in the unit that is read", () => {
  // 540.1 m are 1,772 ft; × 1.15 = 621.1 m, 2,037.8 ft; of 870 m, 2,854.3 ft, 816.5 ft are left
  const need = { exact_m: 540.1 * 1.15, available_m: 870 };
  expect(plain(safeText(need.exact_m, "ft", "up"))).toBe("2,038 ft");
  expect(plain(leftText(exactLeft_m(need), "ft"))).toBe("816 ft left");
  expect(plain(leftText(exactLeft_m(need), "m"))).toBe("248 m left");
});
