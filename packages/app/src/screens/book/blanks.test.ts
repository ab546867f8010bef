import { ARCHETYPES, beginBook, editPlain, plainOf, sectionOf, valueAt } from "@witnessmark/book";
import { expect, it } from "vitest";
import { sectionBlank } from "./blanks.ts";

function begun() {
  const [archetype] = ARCHETYPES;
  if (archetype === undefined) throw new Error("expected a kind of aircraft");
  const figures = { registration: "ZZ-NEW", type: "New 1", ...archetype.figures, seats: 3 };
  const plain = plainOf(beginBook({ archetype, figures, by: "A. Example", on: "2026-11-26" }), "new.yaml");
  if (!plain.ok) throw new Error(plain.fault.found);
  return plain.plain;
}

it("an empty mass is put in with a seat for each, tanks and an envelope, and not one figure that the handbook has to give", () => {
  const plain = begun();
  const section = sectionOf("loading");
  if (section === undefined) throw new Error("expected the page of the empty mass");
  const after = sectionBlank(plain, section).reduce(editPlain, plain);
  const at = (...path: readonly (string | number)[]) => valueAt(after, ["loading", ...path]);
  expect(Array.isArray(at("stations")) && at("stations", 2) !== undefined).toBe(true);
  for (const seat of [0, 1, 2]) {
    expect([at("stations", seat, "arm"), at("stations", seat, "max")]).toEqual(["", ""]);
    expect(at("stations", seat, "place", 0)).toBeTypeOf("number");
  }
  for (const tank of [0, 1]) {
    expect(at("tanks", tank, "arms", 0, "arm")).toBe("");
    expect(at("tanks", tank)).not.toHaveProperty("lateralArm");
  }
  expect(at("empty")).toEqual({ weighedOn: "", mass: "", arm: "" });
});
