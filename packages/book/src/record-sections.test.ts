import { describe, expect, it } from "vitest";
import { faultSentence } from "./faults/fault-sentence.ts";
import { readBook } from "./read-book.ts";
import { smallBookText } from "./testing/small-book.ts";

const RECORD = `
counters:
  - { id: hours, name: Airframe hours, of: airframe, unit: h }
timedItems:
  - { id: annual, name: Annual inspection, about: aircraft, limits: [{ by: calendar-months, months: 12 }], why: The rules ask for it. }
  - { id: hundred, name: 100 h inspection, about: aircraft, limits: [{ by: counter, counter: hours, every: 100 }], tolerance: { hours: 10 h, countsFrom: due, rule: 14 CFR 91.409(b) }, why: The rules ask for it. }
equipment:
  - { id: taxi-light, name: Taxi light, jasc: "3340", neededFor: [vfr-night] }
relief:
  minimumEquipmentList:
    approvedOn: 2026-02-16
    letterAboard: true
    items:
      - { equipment: taxi-light, category: C, installed: 1, needed: 0 }
`;

/** The small book ends with its equipment; this stands in its place. */
const withRecord = (change: (text: string) => string = (text) => text): string =>
  `${smallBookText.slice(0, smallBookText.indexOf("\nequipment:"))}${change(RECORD)}`;

const faultsOf = async (text: string): Promise<readonly string[]> => {
  const result = await readBook(text, "a.yaml");
  return result.ok ? [] : result.faults.map(faultSentence);
};

describe("what runs out and what may be flown with", () => {
  it("is read, with its values as measures", async () => {
    const result = await readBook(withRecord(), "a.yaml");
    if (!result.ok) throw new Error(faultSentence(result.faults[0]));
    const { counters, timedItems, relief, equipment } = result.book;
    expect(counters.map(({ id }) => id)).toEqual(["hours"]);
    expect(timedItems.map(({ id, combine, recurring }) => [id, combine, recurring])).toEqual([
      ["annual", "first", true],
      ["hundred", "first", true],
    ]);
    expect(timedItems[1]?.tolerance?.hours?.valueSI).toBe(36_000);
    expect(equipment[0]?.neededFor).toEqual(["vfr-night"]);
    expect(relief?.minimumEquipmentList?.items[0]).toMatchObject({ equipment: "taxi-light", notFor: [] });
  });

  it.each([
    [
      "a counter that is none",
      (text: string) => text.replace("counter: hours", "counter: hour"),
      "did you mean `hours`",
    ],
    ["one id twice", (text: string) => text.replace("id: hundred", "id: annual"), "a second time"],
    [
      "a tolerance of nothing",
      (text: string) => text.replace("hours: 10 h, ", ""),
      "how much: `hours`, `days` or `months`",
    ],
    [
      "a life that begins again",
      (text: string) =>
        text.replace(
          "about: aircraft, limits: [{ by: counter",
          "about: aircraft, endsLife: true, limits: [{ by: counter",
        ),
      "does not begin again",
    ],
    [
      "more needed than there are",
      (text: string) => text.replace("needed: 0", "needed: 2"),
      "at most as many as are installed, 1",
    ],
    [
      "category A without days",
      (text: string) => text.replace("category: C", "category: A"),
      "category A with its days",
    ],
    [
      "a list item that is no equipment",
      (text: string) => text.replace("equipment: taxi-light", "equipment: taxi-lamp"),
      "the id of a piece of equipment",
    ],
    ["a date that does not exist", (text: string) => text.replace("2026-02-16", "2026-02-30"), "approvedOn"],
  ])("%s is told at its place", async (_what, change, says) => {
    const faults = await faultsOf(withRecord(change));
    expect(faults).toHaveLength(1);
    expect(faults[0]).toMatch(/^a\.yaml, line \d+, column \d+/);
    expect(faults[0]).toContain(says);
  });
});
