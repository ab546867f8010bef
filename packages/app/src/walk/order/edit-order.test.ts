import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { beginEdit, idsIn, type OrderEdit, stepMoved, stopMoved, undone } from "./edit-order.ts";

const begun = beginEdit([
  { stance: "nose", steps: ["oil", "propeller"] },
  { stance: "left", steps: ["tyre"] },
  { stance: "tail", steps: ["rudder", "lamp"] },
]);
const nowhere = () => false;
const rows = ({ stops }: OrderEdit) => stops.map(({ stance, steps }) => `${stance}: ${steps.join(" ")}`);

describe("an order that is edited by hand", () => {
  it("takes a stop elsewhere as a whole", () => {
    expect(rows(stopMoved(begun, 2, 0))).toEqual(["tail: rudder lamp", "nose: oil propeller", "left: tyre"]);
  });

  it("stays as it is where there is no further place", () => {
    expect(stopMoved(begun, 0, -1)).toBe(begun);
    expect(stopMoved(begun, 2, 3)).toBe(begun);
    expect(stepMoved(begun, "lamp", 1, nowhere)).toBe(begun);
  });

  it("moves a step within its stop", () => {
    expect(rows(stepMoved(begun, "oil", 1, nowhere))).toEqual([
      "nose: propeller oil",
      "left: tyre",
      "tail: rudder lamp",
    ]);
  });

  it("takes a step into the next stop where it can be done there, else past it as a stop of its own", () => {
    expect(rows(stepMoved(begun, "propeller", 1, () => true))).toEqual([
      "nose: oil",
      "left: propeller tyre",
      "tail: rudder lamp",
    ]);
    expect(rows(stepMoved(begun, "propeller", 1, nowhere))).toEqual([
      "nose: oil",
      "left: tyre",
      "nose: propeller",
      "tail: rudder lamp",
    ]);
    expect(rows(stepMoved(begun, "rudder", -1, nowhere))).toEqual([
      "nose: oil propeller",
      "tail: rudder",
      "left: tyre",
      "tail: lamp",
    ]);
  });

  it("makes one stop of two at one stance that have become neighbours", () => {
    const apart = beginEdit([
      { stance: "nose", steps: ["oil"] },
      { stance: "left", steps: ["tyre"] },
      { stance: "nose", steps: ["propeller"] },
    ]);
    expect(rows(stopMoved(apart, 1, 2))).toEqual(["nose: oil propeller", "left: tyre"]);
  });

  it("never loses a step nor has one twice, and Undo leads all the way back", () => {
    const move = fc.oneof(
      fc.record({ from: fc.nat(4), to: fc.integer({ min: -1, max: 5 }) }),
      fc.record({
        id: fc.constantFrom("oil", "propeller", "tyre", "rudder", "lamp"),
        way: fc.constantFrom<1 | -1>(1, -1),
        served: fc.boolean(),
      }),
    );
    fc.assert(
      fc.property(fc.array(move, { maxLength: 30 }), (moves) => {
        let edit = begun;
        for (const one of moves) {
          edit =
            "from" in one
              ? stopMoved(edit, one.from, one.to)
              : stepMoved(edit, one.id, one.way, () => one.served);
          expect([...idsIn(edit.stops)].sort()).toEqual([...idsIn(begun.stops)].sort());
        }
        while (edit.before.length > 0) edit = undone(edit);
        expect(edit.stops).toEqual(begun.stops);
      }),
      { numRuns: 100 },
    );
  });
});
