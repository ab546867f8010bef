import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { nearestChange } from "./nearest-change.ts";

const search = (answerAt: (value: number) => string, now: number, end: number, resolution = 0.01) =>
  nearestChange({ now, end, resolution, answerAt, isSame: (a, b) => a === b });

describe("the nearest change", () => {
  it("is bracketed within the resolution, on either side of now", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -50, max: 50, noNaN: true }),
        fc.double({ min: 0.1, max: 99, noNaN: true }),
        fc.boolean(),
        (now, away, up) => {
          const edge = up ? now + away : now - away;
          const answerAt = (value: number) => ((up ? value < edge : value > edge) ? "clear" : "stop");
          const found = search(answerAt, now, up ? now + 100 : now - 100);
          if (found === undefined) throw new Error("expected a change");
          expect(answerAt(found.holds)).toBe("clear");
          expect(answerAt(found.changes)).toBe("stop");
          expect(found.answer).toBe("stop");
          expect(Math.abs(found.changes - found.holds)).toBeLessThanOrEqual(0.01);
          expect(Math.abs(found.changes - edge)).toBeLessThanOrEqual(0.01);
        },
      ),
    );
  });

  it("is the first of several when the answer goes and comes", () => {
    const answerAt = (value: number) => (value > 20 && value < 40 ? "stop" : value > 70 ? "open" : "clear");
    const found = search(answerAt, 0, 100);
    expect(found?.answer).toBe("stop");
    expect(found?.changes).toBeCloseTo(20, 1);
  });

  it("is found where halving alone finds it, whatever is guessed on the way", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 99, noNaN: true }),
        fc.array(fc.double({ min: -20, max: 120, noNaN: true }), { maxLength: 4 }),
        fc.boolean(),
        (edge, guesses, up) => {
          const end = up ? 100 : -100;
          const answerAt = (value: number) => (Math.abs(value) < edge ? "clear" : "stop");
          const isSame = (a: string, b: string) => a === b;
          const plain = { now: 0, end, resolution: 0.01, answerAt, isSame };
          const left = guesses.map((value) => (up ? value : -value));
          expect(nearestChange({ ...plain, guess: () => left.shift() })).toEqual(nearestChange(plain));
        },
      ),
    );
  });

  it("costs fewer questions with a good guess", () => {
    const questions = (guess: (() => number) | undefined): number => {
      let count = 0;
      const answerAt = (value: number) => {
        count += 1;
        return value < 73.2 ? "clear" : "stop";
      };
      const isSame = (a: string, b: string) => a === b;
      nearestChange({ now: 0, end: 100, resolution: 0.01, answerAt, isSame, ...(guess && { guess }) });
      return count;
    };
    expect(questions(() => 73.2)).toBeLessThanOrEqual(questions(undefined) - 5);
  });

  it("is none where the answer stays, or there is no way to go", () => {
    expect(search(() => "clear", 0, 100)).toBeUndefined();
    expect(search((value) => (value === 3 ? "clear" : "stop"), 3, 3)).toBeUndefined();
  });
});
