import type { Read } from "@witnessmark/ledger";
import { describe, expect, it } from "vitest";
import { assess } from "../../assess.ts";
import type { Verdict } from "../../assessment.ts";
import { clinicPlan } from "../../testing/clinic-load.ts";
import { demoBook } from "../../testing/demo-book.ts";
import { demoFlight } from "../../testing/demo-flight.ts";
import { at, atText, Story } from "../../testing/story.ts";
import { fuelSinceLastFlight } from "./from-last-flight.ts";

const book = await demoBook();
const DENSITY = 800;

/** Landed at 10:00 the day before; the after-flight walk reads both gauges at 10:10, 130 L each, 4 of each unusable. */
function flown(read: readonly number[] = [130, 130]): Story {
  const story = new Story(book, "07:00");
  story.at("10:00", -1);
  story.ada.happen("flown", atText("10:00", -1));
  story.at("10:10", -1);
  story.ada.start("after-flight");
  const checks = ["fuel-gauge.left-fuel-gauge", "fuel-gauge.right-fuel-gauge"];
  for (const [i, litres] of read.entries()) story.ada.read(checks[i] ?? "", litres, "L");
  story.ada.finish();
  return story;
}

function serviced(
  story: Story,
  what: "refilled" | "drained" | "adjusted",
  amount?: Read,
  time = "16:00",
): void {
  story.at(time, -1);
  story.ada.tell({
    type: "servicing.recorded",
    body: { at: atText(time, -1), what, of: "fuel", ...(amount === undefined ? {} : { amount }) },
  });
}
const litres = (value: number): Read => ({ value, unit: "L" });
const last = ({ state }: Story) => fuelSinceLastFlight(book, state, DENSITY);

describe("the fuel by arithmetic from the last flight", () => {
  it("is what was read after it, plus what was filled in, less what was drained", () => {
    const story = flown();
    serviced(story, "refilled", litres(140));
    serviced(story, "drained", litres(1), "16:10");
    // (130 + 130 − 8) L at 0.8 kg/L is 201.6 kg; 140 L are 112 kg; 1 L is 0.8 kg
    expect(last(story)?.left_kg).toBeCloseTo(201.6, 9);
    expect(last(story)?.added_kg).toBeCloseTo(112, 9);
    expect(last(story)?.drained_kg).toBeCloseTo(0.8, 9);
    expect(last(story)?.fuel_kg).toBeCloseTo(312.8, 9);
  });

  it("takes an amount by mass as it is", () => {
    const story = flown();
    serviced(story, "refilled", { value: 112, unit: "kg" });
    expect(last(story)?.fuel_kg).toBeCloseTo(313.6, 9);
  });

  it("is not known without a flight, with a tank that nobody read, or with fuel of no amount", () => {
    expect(last(new Story(book))).toBeUndefined();
    expect(last(flown([130]))).toBeUndefined();
    const story = flown();
    serviced(story, "refilled");
    expect(last(story)).toBeUndefined();
    const oil = flown();
    serviced(oil, "refilled", { value: 3, unit: "psi" });
    expect(last(oil)).toBeUndefined();
  });

  it("is not known when somebody only said that it was fuelled", () => {
    const story = flown();
    story.at("16:00", -1).ada.happen("fuelled");
    expect(last(story)).toBeUndefined();
    serviced(story, "refilled", litres(140), "16:05");
    expect(last(story)?.added_kg).toBeCloseTo(112, 9);
  });

  it("does not count what was read before the landing, nor after fuel went in", () => {
    const story = flown([130]);
    serviced(story, "refilled", litres(140));
    story.at("17:00", -1);
    story.ada.start("turnaround");
    story.ada.read("fuel-gauge.right-fuel-gauge", 200, "L");
    expect(last(story)).toBeUndefined();
  });
});

describe("gauges and arithmetic from the last flight", () => {
  const together = (story: Story, gauge_L: number): Verdict | undefined => {
    story.at("07:30");
    story.ada.start("first-of-day");
    for (const check of ["fuel-gauge.left-fuel-gauge", "fuel-gauge.right-fuel-gauge"]) {
      story.ada.answer(check);
      story.ada.read(check, gauge_L, "L");
    }
    const flight = { ...demoFlight, offBlocks: atText("09:00"), plan: clinicPlan };
    return assess(book, story.state, flight, at("08:00")).verdicts.find(({ id }) => id === "fuel:together");
  };

  it("that agree are clear, and name it", () => {
    const story = flown();
    serviced(story, "refilled", litres(140));
    const verdict = together(story, 200);
    expect(verdict?.says).toContain("From the last flight");
    expect(verdict?.status).toBe("clear");
  });

  it("warn when what was filled in is not there", () => {
    const story = flown();
    serviced(story, "refilled", litres(140));
    expect(together(story, 150)?.status).toBe("caution");
  });

  it("are not told where one reading would be both", () => {
    const story = flown([200, 200]);
    const flight = { ...demoFlight, offBlocks: atText("12:00", -1), plan: clinicPlan };
    const ids = assess(book, story.state, flight, at("11:00", -1)).verdicts.map(({ id }) => id);
    expect(ids).not.toContain("fuel:together");
  });
});
