import { describe, expect, it } from "vitest";
import { feet } from "./feet.ts";
import { groundLine } from "./ground-line.ts";
import { elevation, noseLeft, noseUp } from "./projection.ts";
import { walkLine } from "./walk-line.ts";

const stance = (id: string, x: number, y: number, posture: "stand" | "inside" = "stand") =>
  ({ id, place: [x, y], posture }) as const;
const STANCES = [stance("cabin", 3, 0, "inside"), stance("a", 6, -2), stance("b", 8, 0), stance("c", 6, 2)];
const project = noseUp(10, 0, 0);
const legs = (d: string): number => d.split("M").length - 1;

describe("the walk line", () => {
  it("is all ahead before the walk has begun, and while one is inside", () => {
    for (const here of [undefined, "cabin"]) {
      const line = walkLine(STANCES, here, project);
      expect([legs(line.walked), legs(line.ahead), legs(line.heads)]).toEqual([0, 2, 2]);
    }
  });

  it("is walked up to the stance one is at", () => {
    expect(walkLine(STANCES, "b", project)).toMatchObject({
      walked: expect.stringMatching(/^M-20,60C.* 0,80$/),
      ahead: expect.stringMatching(/^M0,80C.* 20,60$/),
    });
    const last = walkLine(STANCES, "c", project);
    expect([legs(last.walked), legs(last.ahead)]).toEqual([2, 0]);
  });

  it("starts at the door when it is told where that is", () => {
    const line = walkLine(STANCES, "a", project, { start: [5, -1] });
    expect(line.walked).toMatch(/^M-10,50C.* -20,60$/);
    expect(legs(line.ahead)).toBe(2);
  });

  it("has no line for one stance and none for none", () => {
    expect(walkLine([stance("a", 1, 1)], "a", project)).toMatchObject({ walked: "", ahead: "", heads: "" });
    expect(walkLine([], undefined, project)).toMatchObject({ walked: "", ahead: "", heads: "" });
    expect(walkLine([], undefined, project).trace).toEqual([]);
  });

  it("points its heads the way one goes", () => {
    const straight = walkLine([stance("a", 0, 0), stance("b", 0, 10)], "a", project, { head_px: 6 });
    const [tip = Number.NaN, left = Number.NaN, right = Number.NaN] = [
      ...straight.heads.matchAll(/(-?[\d.]+),/g),
    ].map((m) => Number(m[1]));
    expect(tip).toBeGreaterThan(left);
    expect(left).toBe(right);
  });
});

describe("the soles", () => {
  const box = (d: string) => {
    const all = [...d.matchAll(/(-?[\d.]+),(-?[\d.]+)/g)].map((m) => [Number(m[1]), Number(m[2])] as const);
    const xs = all.map(([x]) => x);
    const ys = all.map(([, y]) => y);
    return { wide: Math.max(...xs) - Math.min(...xs), tall: Math.max(...ys) - Math.min(...ys) };
  };

  it("are 30 cm long on a large drawing and never shorter than 13 px", () => {
    expect(box(feet([0, 0], 0, noseUp(200, 0, 0))).tall).toBeCloseTo(62, 0); // 60 px and the swing of the curves
    expect(box(feet([0, 0], 0, noseUp(5, 0, 0))).tall).toBeGreaterThanOrEqual(13);
  });

  it("turn with the toes: towards the nose they stand upright, across they lie", () => {
    const up = box(feet([1, 1], 0, noseUp(100, 0, 0)));
    const across = box(feet([1, 1], 90, noseUp(100, 0, 0)));
    expect(across.wide).toBeCloseTo(up.tall, 1);
    expect(across.tall).toBeCloseTo(up.wide, 1);
    const noseLeftwards = box(feet([1, 1], 0, noseLeft(100, 0, 0)));
    expect(noseLeftwards.wide).toBeCloseTo(up.tall, 1);
  });

  it("have their toes, the end without the heel, towards where one looks", () => {
    const [first = ""] = feet([0, 0], 0, noseUp(100, 0, 0)).split("C");
    expect(Number(first.split(",")[1])).toBeLessThan(0); // the path starts at the toes; up is −y
    const [turned = ""] = feet([0, 0], 180, noseUp(100, 0, 0)).split("C");
    expect(Number(turned.split(",")[1])).toBeGreaterThan(0);
  });
});

describe("the ground line", () => {
  it("lies at z = 0 with its hatching below", () => {
    const [surface, hatch] = groundLine(elevation(10, 0, 100), 0, 10);
    expect(surface?.d).toBe("M0,100L100,100");
    expect([...(hatch?.d ?? "").matchAll(/,([\d.]+)/g)].every((m) => Number(m[1]) >= 100)).toBe(true);
    expect(legs(hatch?.d ?? "")).toBeGreaterThan(10);
  });

  it("is known by places along it, from stance to stance and nowhere far apart", () => {
    const { trace } = walkLine(STANCES, undefined, project);
    expect([trace[0], trace.at(-1)]).toEqual([project(6, -2), project(6, 2)]);
    expect(trace).toContainEqual(project(8, 0));
    for (const [index, [x, y]] of trace.slice(1).entries()) {
      const [x0 = 0, y0 = 0] = trace[index] ?? [];
      expect(Math.hypot(x - x0, y - y0)).toBeLessThan(10);
    }
  });
});
