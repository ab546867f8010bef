import { editText, flightBookText, plainOf, readBook } from "@witnessmark/book";
import { describe, expect, it } from "vitest";
import { countText, plainWords, toldFault } from "./fault-words.ts";

/** What is told of the flight book after an edit, each as it stands on the page. */
async function told(...edits: Parameters<typeof editText>[1]): Promise<readonly string[]> {
  const text = editText(flightBookText, edits);
  const result = await readBook(text, "draft");
  const plain = plainOf(text, "draft");
  if (result.ok || !plain.ok) throw new Error("expected a draft with faults");
  return result.faults.map((fault) => {
    const { is, text: words } = toldFault(fault, plain.plain);
    return `${is}: ${words}`;
  });
}

describe("a box that was never filled", () => {
  it.each([
    [["loading", "empty", "mass"], "A mass, such as 521 kg."],
    [["loading", "stations", 0, "arm"], "A length, such as 0.94 m."],
    [["fuel", "burn", "taxi"], "A mass or a volume, such as 3 kg or 4 L."],
    [["fuel", "burn", "cruise"], "A mass in an hour or a volume in an hour, such as 23 kg/h or 32 L/h."],
    [["loading", "empty", "weighedOn"], "A date."],
    [["loading", "stations", 0, "name"], "A name."],
    [["performance", "tailwindMax"], "A speed, such as 12 kt; or say that the manual gives none."],
    [["gauges", 0, "accuracy"], "A figure in bar."],
  ])("%j is missing, and says calmly what is put in: %s", async (path, words) => {
    expect(await told({ set: path, to: "" })).toEqual([`missing: ${words}`]);
  });
});

describe("what is wrong in a box", () => {
  it.each([
    [["loading", "empty", "mass"], "12 m", "“12 m” is a length. Write a mass, such as 521 kg."],
    [
      ["loading", "empty", "mass"],
      "12 cubits",
      "“cubits” is no unit known here. Write a mass, such as 521 kg.",
    ],
    [["loading", "empty", "mass"], "heavy", "“heavy” is no figure. Write a mass, such as 521 kg."],
    [
      ["fuel", "burn", "cruise"],
      "32 L",
      "“32 L” is a volume. Write a mass in an hour or a volume in an hour, such as 23 kg/h or 32 L/h.",
    ],
    [["gauges", 0, "accuracy"], "0.5", "“0.5” has no unit. Write a figure in bar."],
    [["loading", "empty", "weighedOn"], "14.3.2026", "“14.3.2026” is no date of the calendar."],
  ])("%j as %s: %s", async (path, to, words) => {
    expect(await told({ set: path, to })).toEqual([`wrong: ${words}`]);
  });

  it("is told by the names that people gave, without the marks of the file", async () => {
    const wrong = [
      ...(await told({ set: ["loading", "groups", 0, "stations"], to: ["bags", "shelfs"] })),
      ...(await told({ set: ["checks", 0, "reading", "gauge"], to: "dipstick" })),
      ...(await told({ set: ["aircraft", "engine"], to: "turboprop" })),
      ...(await told({ set: ["fuel", "order"], to: [["left-tank", "right-tank", "right-tank"]] })),
    ];
    expect(wrong.length).toBeGreaterThan(3);
    for (const words of wrong) expect(words).not.toMatch(/`|[a-z]\.[a-z]|the id of/);
    expect(wrong.join("\n")).toContain("“Oil dipstick”, a gauge of volume");
    expect(wrong.join("\n")).toContain("“Right tank” a second time");
  });
});

it("an id is the name of what has it, a key is words", () => {
  const plain = { loading: { tanks: [{ id: "left-tank", name: "Left tank" }] } };
  expect(plainWords("mend `left-tank`, or `aircraft.typeRating`; write `crew: true`", plain)).toBe(
    "mend “Left tank”, or type rating; write crew: true",
  );
});

it("faults are counted before what is missing", () => {
  const missing = { path: "loading.empty.mass", expected: "a mass", found: "nothing" };
  const wrong = { path: "loading.empty.arm", expected: "an arm", found: "much" };
  const plain = { loading: { empty: { mass: "", arm: "much" } } };
  expect(countText([], plain)).toBe("");
  expect(countText([missing, missing], plain)).toBe("2 missing");
  expect(countText([missing, wrong], plain)).toBe("One fault");
});
