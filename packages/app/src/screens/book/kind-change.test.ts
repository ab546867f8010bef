import { type BookField, type Plain, sectionOf } from "@witnessmark/book";
import { describe, expect, it } from "vitest";
import { asKind, temperatureEdits } from "./kind-change.ts";

type Kinds = Extract<BookField, { readonly is: "kinds" }>;

function limitField(): Kinds {
  const reading = sectionOf("checks")?.fields.find(({ key }) => key === "reading");
  const limit = reading?.is === "part" ? reading.fields.find(({ key }) => key === "limit") : undefined;
  if (limit?.is !== "kinds") throw new Error("expected the limit of a reading");
  return limit;
}

const LIMIT = limitField();
const NOTHING = new Map();

describe("another kind of limit", () => {
  const fixed: Plain = { by: "fixed", low: "22 psi", high: "26 psi" };

  it("keeps what both kinds have", () => {
    expect(asKind(LIMIT, fixed, NOTHING, "gas-law")).toEqual({
      by: "gas-law",
      at: "15 °C",
      low: "22 psi",
      high: "26 psi",
    });
    const at10 = { by: "gas-law", at: "10 °C", low: "22 psi" };
    expect(asKind(LIMIT, at10, NOTHING, "tyre")).toEqual({ by: "tyre", service: "", at: "10 °C" });
  });

  it("gives back what was typed under it before, with what was changed since", () => {
    const typed = new Map([["fixed", { by: "fixed", low: "22 psi", high: "26 psi" }]]);
    const tyre = { by: "tyre", service: "24 psi", at: "15 °C" };
    expect(asKind(LIMIT, tyre, typed, "fixed")).toEqual(fixed);
    const gas = { by: "gas-law", at: "15 °C", low: "21 psi", high: "" };
    expect(asKind(LIMIT, gas, typed, "fixed")).toEqual({ by: "fixed", low: "21 psi", high: "26 psi" });
  });

  it("has what one two kinds before had in common with it", () => {
    const typed = new Map([["fixed", { by: "fixed", low: "22 psi", high: "26 psi" }]]);
    const tyre = { by: "tyre", service: "", at: "10 °C" };
    expect(asKind(LIMIT, tyre, typed, "gas-law")).toEqual({
      by: "gas-law",
      at: "10 °C",
      low: "22 psi",
      high: "26 psi",
    });
  });

  it("has a sentence of what it is for, each of them", () => {
    for (const [kind, { says }] of Object.entries(LIMIT.kinds)) expect([kind, says]).not.toContain(undefined);
  });
});

describe("whose temperature moves it", () => {
  const path = ["checks", 0, "reading", "limit"];
  const of = (reading: Plain): Plain => ({ checks: [{ reading }] });

  it("is named where it moves, and taken out where it does not", () => {
    const set = { set: ["checks", 0, "reading", "temperatureOf"] };
    expect(temperatureEdits(of({}), path, "tyre")).toEqual([{ ...set, to: "tyre" }]);
    expect(temperatureEdits(of({ quantity: "strut pressure" }), path, "gas-law")).toEqual([
      { ...set, to: "strut" },
    ]);
    expect(temperatureEdits(of({ temperatureOf: "oil" }), path, "table")).toEqual([]);
    expect(temperatureEdits(of({ temperatureOf: "oil" }), path, "fixed")).toEqual([
      { remove: ["checks", 0, "reading", "temperatureOf"] },
    ]);
  });

  it("is nobody's where the kind is of something else", () => {
    expect(temperatureEdits({}, ["timedItems", 0, "limits", 0], "date")).toEqual([]);
  });
});
