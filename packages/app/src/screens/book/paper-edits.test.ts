import { editText, plainOf, sectionOf, valueAt } from "@witnessmark/book";
import { expect, it } from "vitest";
import type { FromPaper } from "../chart/wanted.ts";
import { paperEdits } from "./paper-edits.ts";

const TABLE: FromPaper = {
  kind: "table",
  at: ["performance", "tables"],
  value: {
    id: "landing",
    quantity: "landing-over-50ft",
    title: "Landing over 50 ft",
    axes: [
      { name: "pressureAltitude", unit: "ft", values: [0, 2000] },
      { name: "oat", unit: "°C", values: [0, 20] },
    ],
    unit: "m",
    cells: [
      [400, 430],
      [450, null],
    ],
  },
  yaml: "",
};

function plain(text: string) {
  const read = plainOf(text, "the draft");
  if (!read.ok) throw new Error(read.fault.found);
  return read.plain;
}

function section(id: string) {
  const found = sectionOf(id);
  if (found === undefined) throw new Error(`expected the section ${id}`);
  return found;
}

it("a table from paper is one more of the book, under a short name that is free", () => {
  const bare = "aircraft:\n  registration: ZZ-WREN\n";
  const first = paperEdits(plain(bare), section("tables"), TABLE, undefined);
  const one = editText(bare, first.edits);
  expect(first.item).toBe("landing");
  expect(valueAt(plain(one), ["performance", "tables"])).toEqual([TABLE.value]);
  const second = paperEdits(plain(one), section("tables"), TABLE, undefined);
  expect(second.item).toBe("landing-2");
  const two = plain(editText(one, second.edits));
  expect(valueAt(two, ["performance", "tables", 1])).toEqual({ ...TABLE.value, id: "landing-2" });
  expect(valueAt(two, ["performance", "tables", 0])).toEqual(TABLE.value);
});

it("over one that is there it changes the figures alone: its short name and what the paper does not tell stay", () => {
  const text =
    "performance:\n  tables:\n    - id: my-landing\n      quantity: landing-over-50ft\n      title: Landing over 50 ft\n      speed: 62 kt # from the manual\n      axes:\n        - { name: mass, unit: kg, values: [900] }\n      cells: [500]\n";
  const { edits, item } = paperEdits(plain(text), section("tables"), TABLE, 0);
  const after = editText(text, edits);
  expect(item).toBe("my-landing");
  expect(after).toContain("speed: 62 kt # from the manual");
  expect(valueAt(plain(after), ["performance", "tables", 0])).toEqual({
    ...TABLE.value,
    id: "my-landing",
    speed: "62 kt",
  });
});

it("an envelope that was traced takes the place of the corners in the draft", () => {
  const made: FromPaper = {
    kind: "envelope",
    at: ["loading", "envelopes"],
    value: { id: "normal", name: "Normal", points: [{ arm: "2.10 m", mass: "900 kg" }] },
    yaml: "",
  };
  const text =
    "loading:\n  envelopes:\n    - id: normal\n      name: Normal\n      points:\n        - { arm: '', mass: '' }\n";
  const { edits, item } = paperEdits(plain(text), section("envelopes"), made, 0);
  expect(item).toBe("normal");
  expect(valueAt(plain(editText(text, edits)), ["loading", "envelopes", 0])).toEqual(made.value);
});
