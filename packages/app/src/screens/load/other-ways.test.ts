import { fuelFigures, loadFigures } from "@witnessmark/assess";
import { clinicPlan, litresEach } from "@witnessmark/assess/testing/clinic-load";
import { demoFlight } from "@witnessmark/assess/testing/demo-flight";
import { openFit } from "@witnessmark/fit";
import type { PlannedLoad } from "@witnessmark/ledger";
import { describe, expect, it } from "vitest";
import { fitInputOf, thingName } from "../../fit/fit-input-of.ts";
import { inWholeSteps } from "../../fit/in-whole-steps.ts";
import { type NamesOf, othersWords } from "./other-ways.ts";
import { DEMO_BOOK, IN_SI } from "./testing/demo-load.ts";

const fit = openFit();
/** Behind the aft limit on the way; nothing of the fuel mends that, since it all comes by there. */
const aft = clinicPlan.load;
/** Too heavy to land, by the fuel. */
const heavy: PlannedLoad = {
  ...clinicPlan.load,
  items: clinicPlan.load.items.filter(({ station }) => station !== "tail-locker"),
  fuel: litresEach(250),
};
const figuresOf = (load: PlannedLoad) => loadFigures(DEMO_BOOK, { ...clinicPlan, load });
const requiredOf = (load: PlannedLoad) =>
  fuelFigures(DEMO_BOOK, demoFlight, { ...clinicPlan, load }, figuresOf(load)).required_kg;
const names: NamesOf = {
  thing: (id) => thingName({ what: "" }, id === "aft-bay" || id === "tail-locker"),
  place: (id) => DEMO_BOOK.loading?.stations.find((station) => station.id === id)?.name ?? id,
};

async function waysOut(load: PlannedLoad) {
  const input = fitInputOf(DEMO_BOOK, load, figuresOf(load), requiredOf(load));
  if (input === null) throw new Error("all of the load is known");
  const others = await fit.otherWays(input);
  if ("status" in others) throw new Error("it took too long");
  const { lessFuel } = others;
  if (lessFuel === undefined) return others;
  return { ...others, lessFuel: inWholeSteps(lessFuel, input, fit.breaches) };
}

describe("the ways that move nothing", () => {
  it.each([
    ["behind the aft limit", aft, ["Leave it behind", "Take ballast"]],
    ["too heavy to land", heavy, ["Leave it behind", "Take less fuel"]],
  ] as const)("leave a load that is %s within its limits, to dry tanks", async (_name, load, acts) => {
    const ways = othersWords(await waysOut(load), load, IN_SI, names);
    expect(ways.map(({ act }) => act)).toEqual(acts);
    expect(figuresOf(load).status).toBe("stop");
    for (const { act, planned } of ways) {
      const { envelope, status } = figuresOf(planned.load);
      expect([act, envelope?.inside, envelope?.insideUntilDry]).toEqual([act, true, true]);
      expect([act, status]).not.toEqual([act, "stop"]);
    }
  });

  it("name a thing that has no name by its place", async () => {
    const [way] = othersWords(await waysOut(aft), aft, IN_SI, names);
    expect(way?.says.replaceAll("\u00A0", " ")).toBe("Leave behind the bag, in tail locker: 45 kg");
  });

  it("put the least ballast in, in whole kilograms", () => {
    const ballast = { station: "aft-bay", needed_kg: 11.3, most_kg: 40 };
    const [way] = othersWords({ ballast }, aft, IN_SI, names);
    expect(way?.says.replaceAll("\u00A0", " ")).toBe("Take ballast, 12 kg, tied down in aft bay");
    expect(way?.planned.load.items.at(-1)).toMatchObject({ station: "aft-bay", mass: { value: 12 } });
    const tight = othersWords({ ballast: { ...ballast, most_kg: 11.8 } }, aft, IN_SI, names)[0];
    expect(tight?.planned.load.items.at(-1)).toMatchObject({ mass: { value: 11.3, unit: "kg" } });
  });

  it("take no fuel that the rules ask for, and leave it in tenths of a litre", async () => {
    // 10 + 128 + 77.5 kg by day
    expect(requiredOf(heavy)).toBeCloseTo(215.5, 9);
    const { lessFuel } = await waysOut(heavy);
    if (lessFuel === undefined) throw new Error("expected less fuel to help");
    // 2343 + 1.6 × 246 - 138 kg at the landing, of 2585: 13.6 kg too much
    expect(lessFuel.less_kg).toBeGreaterThanOrEqual(13.6);
    expect(lessFuel.less_kg).toBeLessThan(14);
    const planned = othersWords({ lessFuel }, heavy, IN_SI, names)[0]?.planned.load;
    for (const { volume } of planned?.fuel ?? []) expect(volume.value).toBe(Number(volume.value.toFixed(1)));
    expect(planned?.fuel).toHaveLength(2);
  });

  it("do not say how much less to take while nobody knows what must stay aboard", () => {
    const input = fitInputOf(DEMO_BOOK, aft, figuresOf(aft), undefined);
    expect(input?.burn.reserve_kg).toBeUndefined();
    const asked = fitInputOf(DEMO_BOOK, aft, figuresOf(aft), 215.5);
    expect(asked?.burn.reserve_kg).toBeCloseTo(77.5, 9);
    // with less in the tanks than is needed the load is not what is short
    expect(fitInputOf(DEMO_BOOK, aft, figuresOf(aft), 400)?.burn.reserve_kg).toBeUndefined();
  });
});
