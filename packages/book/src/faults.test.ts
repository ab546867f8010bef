import { describe, expect, it } from "vitest";
import { faultSentence } from "./faults/fault-sentence.ts";
import { readBook } from "./read-book.ts";
import type { BadBook } from "./testing/bad-book.ts";
import { badFields } from "./testing/bad-fields.ts";
import { badFlight } from "./testing/bad-flight.ts";
import { badLoading } from "./testing/bad-loading.ts";
import { badMeasures } from "./testing/bad-measures.ts";
import { badOrder } from "./testing/bad-order.ts";
import { badPerformance } from "./testing/bad-performance.ts";
import { badPlaces } from "./testing/bad-places.ts";
import { badReferences } from "./testing/bad-references.ts";
import { badShapes } from "./testing/bad-shapes.ts";
import { badTanks } from "./testing/bad-tanks.ts";
import { badYaml } from "./testing/bad-yaml.ts";
import { flightBookText } from "./testing/flight-book.ts";
import { smallBookText } from "./testing/small-book.ts";

const MARK = "▶";

async function sentences(text: string): Promise<readonly string[]> {
  const result = await readBook(text, "zz.yaml");
  return result.ok ? [] : result.faults.map(faultSentence);
}

/** The bad text without its marks, and the place of each mark as a fault names it. */
function marked(
  { edits }: BadBook,
  good = smallBookText,
): { readonly text: string; readonly places: readonly string[] } {
  let text = good;
  for (const [from, to] of edits) {
    const parts = text.split(from);
    if (parts.length !== 2) throw new Error(`the book has "${from}" ${parts.length - 1} times, not once`);
    text = parts.join(to);
  }
  const pieces = text.split(MARK);
  const places = pieces.slice(0, -1).map((_, i) => {
    const lines = pieces
      .slice(0, i + 1)
      .join("")
      .split("\n");
    return `line ${lines.length}, column ${(lines.at(-1) ?? "").length + 1}`;
  });
  return { text: pieces.join(""), places };
}

describe.each([
  ["text that is not the YAML of a book", badYaml, smallBookText],
  ["values of the wrong shape", badShapes, smallBookText],
  ["measures, gauges and limits", badMeasures, smallBookText],
  ["references and order", badReferences, smallBookText],
  ["the order of the manual, and where one is not to be", badOrder, smallBookText],
  ["places and the shape of the aircraft", badPlaces, smallBookText],
  ["masses, arms, limits and stations", badLoading, flightBookText],
  ["tanks and envelopes", badTanks, flightBookText],
  ["fuel, oxygen, cabin and ice protection", badFlight, flightBookText],
  ["performance tables", badPerformance, flightBookText],
  ["fields and runways", badFields, flightBookText],
])("of %s, the reader names every fault, its place and the way out:", (_, books, good) => {
  it.each(books)("$wrong", async (bad) => {
    const { text, places } = marked(bad, good);
    expect(places).toHaveLength(bad.says.length);
    const expected = bad.says.map(
      (says, i) => `zz.yaml, ${places[i]}${says.startsWith("expected") ? ": " : ", "}${says}`,
    );
    expect(await sentences(text)).toEqual(expected);
  });
});

describe("a file that is no book at all", () => {
  it.each<[string, string, string]>([
    ["is empty", "", "zz.yaml: expected a book, found an empty file; begin with `witnessmark: 1`"],
    ["is blank", " \n\n", "zz.yaml: expected a book, found blank lines only; begin with `witnessmark: 1`"],
    [
      "has only a comment",
      "# nothing yet\n",
      "zz.yaml, line 1, column 1: expected a book: keys and values, the first `witnessmark: 1`, found nothing",
    ],
    [
      "is prose",
      "Dear pilot\n",
      'zz.yaml, line 1, column 1: expected a book: keys and values, the first `witnessmark: 1`, found "Dear pilot"',
    ],
    [
      "is a list",
      "- 1\n- 2\n",
      "zz.yaml, line 1, column 1: expected a book: keys and values, the first `witnessmark: 1`, found a list of 2",
    ],
    [
      "is a picture",
      "\u0089PNG\r\n\u001a\n\u0000\u0000",
      "zz.yaml, line 2, column 1: expected text, found a control character, code 26; is it the right file? A book is a text file in YAML",
    ],
    [
      "is in another encoding",
      "notice: 21 \uFFFDC\n",
      "zz.yaml, line 1, column 12: expected text in UTF-8, found a character that could not be decoded; save the file as UTF-8 in your editor",
    ],
    [
      "is far too large",
      "#".repeat(1_000_001),
      "zz.yaml: expected a book of at most 1 MB, found 1.0 million characters; is it the right file?",
    ],
  ])("says so: it %s", async (_, text, sentence) => {
    expect(await sentences(text)).toEqual([sentence]);
  });

  it("says so once, when its brackets go too deep", async () => {
    const [only, ...more] = await sentences(`${smallBookText}x: ${"[".repeat(20_000)}`);
    expect(more).toEqual([]);
    expect(only).toMatch(
      /expected a book, which is at most a few levels deep, found brackets inside brackets, too many/,
    );
  });

  it("says so once, when its levels are more than a book has", async () => {
    const text = `${smallBookText}x: ${"[".repeat(60)}1${"]".repeat(60)}\n`;
    expect(await sentences(text)).toEqual([
      expect.stringMatching(
        /expected a book of at most 100000 values, 40 levels deep, found more, counting what is repeated/,
      ),
    ]);
  });

  it("says so quickly, when aliases of aliases stand for more than a machine holds", async () => {
    const names = "abcdefghijklmnop".split("");
    const bomb = names.map((name, i) => {
      const before = names[i - 1];
      return `${name}: &${name} [${(before === undefined ? "1" : `*${before}`).concat(", ").repeat(10)}1]`;
    });
    const [only, ...more] = await sentences(`${smallBookText}\n${bomb.join("\n")}\n`);
    expect(more).toEqual([]);
    expect(only).toMatch(
      /found more, counting what is repeated by aliases; write it with fewer aliases and levels$/,
    );
  });

  it("lists at most 500 faults, and says how many there are", async () => {
    const many = Array.from({ length: 700 }, (_, i) => `x${i}: 1\n`).join("");
    const all = await sentences(smallBookText + many);
    expect(all).toHaveLength(501);
    expect(all.at(-1)).toBe(
      "zz.yaml: expected at most 500 faults, found 700; only the first 500 are listed; mend these first",
    );
  });
});

describe("a book with several faults", () => {
  it("has all of them told at once, in the order of its lines, whatever their kind", async () => {
    const { text, places } = marked({
      wrong: "six things",
      edits: [
        ["seats: 4", "seats: ▶many"], // the shape of a section
        ["accuracy: 0.05 bar", "accuracy: ▶0.05 mm"], // a gauge that is used further down
        ["area: engine", "area: ▶motor"], // a reference
        ["low: 1500 psi", "low: ▶1900 psi"], // a limit
        ["title: Read the dipstick", "▶titel: Read the dipstick"], // the shape of a check
        ['jasc: "7932"', 'jasc: "7999"'], // not told: its check has no sound shape
        ["stance: right-wheel, stowedIn", "stance: ▶wing, stowedIn"],
      ],
      says: [],
    });
    const paths = [
      "aircraft.seats",
      "gauges[0].accuracy",
      "points[3].area",
      "checks[0].reading.limit.low",
      "checks[3].titel",
      "groundGear[0].stance",
    ];
    expect((await sentences(text)).map((sentence) => sentence.split(": expected")[0])).toEqual(
      paths.map((path, i) => `zz.yaml, ${places[i]}, ${path}`),
    );
  });

  it("does not call a reference dangling when what it names is there, but at fault itself", async () => {
    const text = smallBookText.replace("id: oil, name: Oil filler", "id: oil, name: 7");
    expect(await sentences(text)).toEqual([
      'zz.yaml, line 83, column 22, points[3].name: expected text, found 7; put it in quotes: "7"',
    ]);
  });

  it("has its faults in Windows line ends at the same places", async () => {
    const bad = smallBookText.replace("seats: 4", "seats: many");
    expect(await sentences(bad.replaceAll("\n", "\r\n"))).toEqual(await sentences(bad));
  });

  it("has a fault of an anchored value told where the value is written", async () => {
    const text = smallBookText
      .replace("holds: { until: [flown] }", "holds: &flown { until: [flewn] }")
      .replace("holds: { until: [flown] }", "holds: *flown");
    const above = text.slice(0, text.indexOf("flewn")).split("\n");
    const place = `zz.yaml, line ${above.length}, column ${(above.at(-1) ?? "").length + 1}`;
    const all = await sentences(text);
    expect(all.map((sentence) => sentence.split(": expected")[0])).toEqual([
      `${place}, checks[1].holds.until[0]`,
      `${place}, checks[4].holds.until[0]`,
    ]);
  });
});
