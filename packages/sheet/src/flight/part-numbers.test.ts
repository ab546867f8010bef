import fc from "fast-check";
import { expect, it } from "vitest";
import type { SheetNumber } from "./number-line.ts";
import { partNumbers } from "./part-numbers.ts";

const numbers = fc
  .array(fc.constantFrom("clear" as const, "caution" as const, "stop" as const, "open" as const), {
    maxLength: 20,
  })
  .map((all) =>
    all.map((status, index): SheetNumber => ({ what: `${index}`, needs: "", has: "", left: "", status })),
  );

it("loses none, keeps the order of both parts, and lays no number overleaf that is not clear", () => {
  fc.assert(
    fc.property(numbers, fc.nat({ max: 25 }), (all, room) => {
      const parted = partNumbers(all, (here, follow) => here.length + (follow > 0 ? 1 : 0) <= room);
      if (parted === undefined) return;
      const { here, overleaf } = parted;
      expect([...here, ...overleaf].toSorted((a, b) => all.indexOf(a) - all.indexOf(b))).toEqual(all);
      for (const part of [here, overleaf])
        expect(part).toEqual(part.toSorted((a, b) => all.indexOf(a) - all.indexOf(b)));
      expect(overleaf.every(({ status }) => status === "clear")).toBe(true);
      expect(here.length + (overleaf.length > 0 ? 1 : 0)).toBeLessThanOrEqual(room);
    }),
  );
});

it("has all of them where there is room for all, and none where what is not clear has none", () => {
  const [stop, clear] = (["stop", "clear"] as const).map(
    (status): SheetNumber => ({ what: status, needs: "", has: "", left: "", status }),
  ) as [SheetNumber, SheetNumber];
  expect(partNumbers([clear, stop], () => true)).toEqual({ here: [clear, stop], overleaf: [] });
  expect(partNumbers([clear, stop], () => false)).toBeUndefined();
});
