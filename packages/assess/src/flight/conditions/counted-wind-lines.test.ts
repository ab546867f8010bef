import { toSI } from "@witnessmark/engine";
import { expect, it } from "vitest";
import { plain } from "../../testing/plain.ts";
import { countedWindLines } from "./counted-wind-lines.ts";

const wind = (isUsed: boolean) => ({
  along_mPerS: toSI(8.2, "kt"),
  counted_mPerS: toSI(4.1, "kt"),
  performance: { headwindCredit_1: 0.5, tailwindCharge_1: 1.5 },
  isUsed,
});
const told = (isUsed: boolean) => countedWindLines(wind(isUsed)).map(({ value }) => plain(value));

it("tells how much of a wind counts, and that none does where the book's table knows no wind", () => {
  expect(told(true)).toEqual(["headwind 8.2 kt", "50 % of it, headwind 4.1 kt"]);
  expect(told(false)).toEqual(["headwind 8.2 kt", "none: the book's table has no wind"]);
});
