import { describe, expect, it } from "vitest";
import { euPartNco } from "./eu-part-nco/pack.ts";
import type { DepositPlace, DepositsInput, RulePack } from "./rule-pack.ts";
import { decodedCases } from "./testing/decoded-cases.ts";
import { DEPOSIT_CITATIONS } from "./us-part-91/deposits.ts";
import { usPart91 } from "./us-part-91/pack.ts";

const CASES = decodedCases("rules-frost.json", 3);
const caseOf = (id: string): (typeof CASES)[number] => {
  const found = CASES.find((one) => one.id === id);
  if (found === undefined) throw new Error(`no case ${id}`);
  return found;
};

const takeOff = (pack: RulePack, input: DepositsInput): string => {
  const result = pack.takeOffWithDeposits(input);
  return result.known ? result.takeOff : "open";
};

describe.each([usPart91, euPartNco])("taking off with deposits by $id", (pack) => {
  const { inputs, expected } = caseOf("rule-91-527-adhering");
  // The six places of the rule, in its order.
  const places = inputs["contaminatedSurface"] as readonly DepositPlace[];

  it.each(places)("is forbidden with any on: %s", (place) => {
    expect(expected["takeoffAllowed"]).toBe(false);
    expect(takeOff(pack, { adheringTo: [place] })).toBe("forbidden");
    expect(takeOff(pack, { adheringTo: [place], underWingAllowed: true })).toBe("forbidden");
  });

  it("is forbidden with frost that is polished smooth, whatever else is said", () => {
    expect(caseOf("rule-91-527-polished").expected["takeoffAllowed"]).toBe(false);
    expect(takeOff(pack, { polished: true })).toBe("forbidden");
    expect(takeOff(pack, { polished: true, adheringTo: [], underWingAllowed: true })).toBe("forbidden");
  });

  it("beneath the wing at the tanks hangs on what has been authorised", () => {
    const under = { adheringTo: ["wing lower surface at the tanks"] } as const;
    expect(takeOff(pack, under)).toBe("open");
    expect(takeOff(pack, { ...under, underWingAllowed: false })).toBe("forbidden");
    expect(takeOff(pack, { ...under, underWingAllowed: true })).toBe("not-hindered");
  });

  it("is not told when nobody has looked, and not hindered when somebody has and found none", () => {
    expect(takeOff(pack, {})).toBe("open");
    expect(takeOff(pack, { adheringTo: [] })).toBe("not-hindered");
  });
});

it("cites the circular that replaced AC 91-51A", () => {
  expect(caseOf("ac-91-51a-status").expected).toMatchObject({ replacedBy: "AC 91-74B of 8 October 2015" });
  const titles = DEPOSIT_CITATIONS.map(({ title }) => title);
  expect(titles.some((title) => title.startsWith("AC 91-74B"))).toBe(true);
  expect(titles.some((title) => title.includes("91-51A"))).toBe(false);
});
