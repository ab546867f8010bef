import { describe, expect, it } from "vitest";
import { nameOf } from "./mark-buttons.tsx";
import { walkMarks } from "./walk-marks.ts";
import type { ScenePoint } from "./walk-scene.ts";

const point = (id: string, status: ScenePoint["status"], more: Partial<ScenePoint> = {}): ScenePoint => ({
  id,
  name: `The ${id}`,
  x_m: 1,
  y_m: 2,
  z_m: 3,
  status,
  inHand: false,
  near: false,
  inside: false,
  ...more,
});

describe("the points of a walk as marks", () => {
  const hand = point("strut", "open", { inHand: true, near: true });
  const points = [
    point("door", "open"),
    point("tyre", "clear"),
    hand,
    point("brake", "stop"),
    point("drain", "open"),
  ];
  const marks = walkMarks({ points, inHand: hand });

  it("stand in the order of the walk, each with what is known of it", () => {
    expect(marks.map(({ id, state }) => `${id} ${state}`)).toEqual([
      "door left",
      "tyre done",
      "strut here",
      "brake done",
      "drain next",
    ]);
  });

  it("are read aloud with their status, and the one in hand and the next as such", () => {
    expect(marks.map(nameOf)).toEqual([
      "The door, open",
      "The tyre, clear",
      "The strut, open, in hand",
      "The brake, stop",
      "The drain, open, next",
    ]);
  });

  it("come round to what was passed over when nothing is left ahead", () => {
    const last = walkMarks({ points: points.slice(0, 4), inHand: hand });
    expect(last.find(({ state }) => state === "next")?.id).toBe("door");
    expect(walkMarks({ points: [hand], inHand: hand }).map(({ state }) => state)).toEqual(["here"]);
  });

  it("are larger where one stands, but not inside, where many lie close together", () => {
    const sizes = walkMarks({
      points: [
        point("a", "open", { near: true }),
        point("b", "open", { near: true, inside: true }),
        point("c", "open", { inside: true }),
        point("d", "open"),
      ],
      inHand: undefined,
    }).map(({ size }) => size);
    expect(sizes).toEqual(["large", undefined, "small", undefined]);
  });
});
