import { readFileSync } from "node:fs";
import { type Book, readBook } from "@witnessmark/book";
import { beforeAll, describe, expect, it } from "vitest";
import { isInside } from "../geometry/convex.ts";
import { obstaclesOf } from "../geometry/obstacles.ts";
import { planWalk } from "../plan-walk.ts";
import { suggestStances } from "../stances/suggest-stances.ts";
import { stepsOf } from "../steps.ts";
import { orderFaults } from "./order-faults.ts";
import { type PlannedOrder, planOrder, poseWalk } from "./plan-order.ts";
import { type SharedWalk, shareWalk } from "./share-walk.ts";
import { splitWalk } from "./split-walk.ts";
import { look_s, timesLeast } from "./step-times.ts";

let book: Book;
let planned: PlannedOrder;

beforeAll(async () => {
  const file = "zz-brk.yaml";
  const read = await readBook(
    readFileSync(new URL(`../../../../books/${file}`, import.meta.url), "utf8"),
    file,
  );
  if (!read.ok) throw new Error("expected a demo book without faults");
  book = read.book;
  planned = planOrder(book, "first-of-day", { rounds: 4, proofStates: 200 });
});

const idsOf = ({ stops }: Pick<PlannedOrder, "stops">): readonly string[] =>
  stops.flatMap(({ steps }) => steps.map(({ id }) => id));
const none = { missed: [], twice: [], unknown: [], tooEarly: [], afterLast: [] };

describe("the planned order of a walk", () => {
  it("does all that the book asks, once, and nothing too early", () => {
    expect(orderFaults(book, "first-of-day", idsOf(planned))).toEqual(none);
  });

  it("costs no more than the book's order, and no less than its own bound", () => {
    expect(planned.cost_s).toBeLessThanOrEqual(planned.given_s);
    expect(planned.bound_s).toBeLessThanOrEqual(planned.cost_s);
    expect(planned.gap_1).toBeCloseTo(1 - planned.bound_s / planned.cost_s, 12);
    expect(planned.saves_s).toBeCloseTo(planned.given_s - planned.cost_s, 9);
  });

  it("has a way to each stop and back to the door", () => {
    expect(planned.ways).toHaveLength(planned.stops.length + 1);
    expect(planned.ways.at(-1)?.at(-1)).toEqual(planned.ways[0]?.[0]);
  });

  it("looks last where one is to look last", () => {
    const options = { rounds: 0, proofStates: 0, last: ["before-boarding"] };
    const order = idsOf(planOrder(book, "first-of-day", options));
    const { tasks } = poseWalk(book, "first-of-day", options);
    const lasts = tasks.filter(({ step }) => book.checksById.get(step.id)?.stance === "before-boarding");
    expect(lasts.length).toBeGreaterThan(0);
    for (const { step, after } of lasts) {
      // nearly all comes before: only what itself waits for such a look may come later
      expect(after.length).toBeGreaterThan(0.8 * tasks.length);
      for (const one of after) {
        expect(order.indexOf(tasks[one]?.step.id ?? "")).toBeLessThan(order.indexOf(step.id));
      }
    }
  });

  it("is ended when it is told to, with a whole walk", () => {
    const early = planOrder(book, "first-of-day", { onProgress: () => true });
    expect(orderFaults(book, "first-of-day", idsOf(early))).toEqual(none);
  });
});

describe("the order of an approved manual", () => {
  it("is kept, step by step, and shows what another order would save", () => {
    const manual = stepsOf(planWalk(book, "first-of-day")).map(({ id }) => id);
    const followed = planOrder(book, "first-of-day", { manualOrder: manual, rounds: 2, proofStates: 50 });
    expect(idsOf(followed)).toEqual(manual);
    expect(followed.follows).toBe("manual");
    expect(followed.saves_s).toBeGreaterThan(0);
  });

  it("takes in, at its stance, what it does not name", () => {
    const manual = stepsOf(planWalk(book, "first-of-day")).map(({ id }) => id);
    const shorter = manual.toSpliced(7, 1);
    const followed = planOrder(book, "first-of-day", { manualOrder: shorter, rounds: 0, proofStates: 0 });
    expect([...idsOf(followed)].sort()).toEqual([...manual].sort());
    expect(idsOf(followed).filter((id) => id !== manual[7])).toEqual(shorter);
  });
});

describe("an order edited by hand", () => {
  it("is told what it misses, does twice, does not know, and does too early", () => {
    const late = book.checks.find(({ after, walks }) => after.length > 0 && walks.includes("first-of-day"));
    const [first, second, ...rest] = idsOf(planned).filter((id) => id !== late?.id);
    const faults = orderFaults(book, "first-of-day", [
      late?.id ?? "",
      second ?? "",
      second ?? "",
      "no-such",
      ...rest,
    ]);
    expect(faults).toMatchObject({ missed: [first], twice: [second], unknown: ["no-such"] });
    expect(faults.tooEarly).toContainEqual({ id: late?.id, after: late?.after[0] });
  });
});

describe("what is left", () => {
  it("is walked from where the pilot stands, and nothing that is done is done again", () => {
    const left = new Set(idsOf(planned).slice(-20));
    const rest = planOrder(book, "first-of-day", {
      isLeft: ({ id }) => left.has(id),
      from: [8, 3],
      rounds: 2,
      proofStates: 50,
    });
    expect([...idsOf(rest)].sort()).toEqual([...left].sort());
    expect(rest.ways[0]?.[0]).toEqual([8, 3]);
    expect(rest.cost_s).toBeLessThan(planned.cost_s);
  });

  it("is nothing when all is done", () => {
    expect(planOrder(book, "first-of-day", { isLeft: () => false })).toMatchObject({
      stops: [],
      cost_s: 0,
      gap_1: 0,
    });
  });
});

describe("a walk for two", () => {
  it("covers all once, and both are back sooner than one alone", () => {
    const posed = poseWalk(book, "first-of-day");
    const step_s = () => 6;
    const { people, time_s } = splitWalk(posed, planned.visits, { step_s, rounds: 800 });
    const both = people.flatMap(({ stops }) => stops.flatMap(({ steps }) => steps.map(({ id }) => id)));
    expect([...both].sort()).toEqual([...idsOf(planned)].sort());
    const alone_s = planned.cost_s + idsOf(planned).length * 6;
    expect(time_s).toBeLessThan(0.75 * alone_s);
    expect(time_s).toBe(Math.max(people[0].time_s, people[1].time_s));
    expect(Math.min(people[0].time_s, people[1].time_s)).toBeGreaterThan(0.7 * time_s);
  });
});

describe("the halves of a walk for two", () => {
  const rowOf = (stops: SharedWalk["mine"]): readonly string[] => stops.flatMap(({ steps }) => steps);
  const listed = () => stepsOf(planWalk(book, "first-of-day")).map(({ id }) => id);

  it("are each walked in the manual's order, where the book has one", () => {
    const row = listed();
    const steps = row.map((id) => ({ kind: book.checksById.has(id) ? "check" : "ground-gear", id }) as const);
    const withManual: Book = {
      ...book,
      order: { source: "A manual, invented", walks: ["first-of-day"], steps },
    };
    for (const { mine } of shareWalk(withManual, "first-of-day")) {
      const places = rowOf(mine).map((id) => row.indexOf(id));
      expect(places.length).toBeGreaterThan(5);
      expect(places).toEqual(places.toSorted((a, b) => a - b));
    }
  });

  it("are walked in the order made by hand on this phone, and are the same two for the other's phone", () => {
    const hand = listed().toReversed();
    const [theirs, ours] = [
      shareWalk(book, "first-of-day"),
      shareWalk(book, "first-of-day", new Set(), hand),
    ];
    for (const half of [0, 1] as const) {
      const row = rowOf(ours[half].mine);
      expect(new Set(row)).toEqual(new Set(rowOf(theirs[half].mine)));
      expect(row).toEqual(hand.filter((id) => row.includes(id)));
      expect([...row, ...rowOf(ours[half].others)].sort()).toEqual(listed().sort());
      expect(ours[half].time_s).toBeGreaterThanOrEqual(theirs[half].time_s);
    }
  });
});

describe("how long a look takes", () => {
  it("is twice the book's least where nothing was timed", () => {
    expect(look_s({ method: "look", least_s: 4 }, timesLeast([]))).toBe(8);
  });

  it("follows the median of past looks of its method as they grow many, whatever one interruption took", () => {
    const past = Array.from({ length: 95 }, (_, i) => ({
      method: "drain" as const,
      least_s: 10,
      took_s: i === 0 ? 9000 : 40,
    }));
    // by hand: (95 × 4 + 5 × 2) / 100 = 3.9 times the least
    expect(look_s({ method: "drain", least_s: 10 }, timesLeast(past))).toBeCloseTo(39, 9);
    expect(look_s({ method: "look", least_s: 10 }, timesLeast(past))).toBe(20);
  });

  it("learns nothing from a time that is none", () => {
    const bad = [0, -3, Number.NaN, Number.POSITIVE_INFINITY];
    expect(timesLeast(bad.map((took_s) => ({ method: "look" as const, least_s: 2, took_s }))).size).toBe(0);
  });
});

describe("stances for a book that has none", () => {
  it("are outside all that one walks round, and serve every target that can be served", () => {
    const wanted = new Set(["left-main-tyre", "right-main-tyre", "rudder", "left-aileron"]);
    const targets = [...book.points.values()]
      .filter(({ id }) => wanted.has(id))
      .map(({ id, place }) => ({ id, place, method: "look" as const }));
    expect(targets).toHaveLength(wanted.size);
    const { stances, outOfReach, cost_s, bound_s } = suggestStances(book.geometry, targets, {
      rounds: 1,
      proofStates: 50,
    });
    const obstacles = obstaclesOf(book.geometry);
    for (const { place } of stances) {
      expect(obstacles.filter(({ corners }) => isInside(corners, place))).toEqual([]);
    }
    expect(outOfReach).toEqual([]);
    expect(stances.flatMap(({ serves }) => serves).sort()).toEqual([0, 1, 2, 3]);
    expect(bound_s).toBeLessThanOrEqual(cost_s);
  });

  it("stand in the arc of a propeller only for what is in it", () => {
    const [propeller] = book.geometry.propellers;
    if (propeller === undefined) throw new Error("expected a propeller");
    const { x, y, z, radius } = propeller;
    const blade = { id: "blade", place: [x, y + 0.3, z] as const, method: "touch" as const };
    const { stances } = suggestStances(book.geometry, [blade], { rounds: 0, proofStates: 0 });
    expect(radius).toBeGreaterThan(0.3);
    for (const { isInArc, place } of stances) {
      expect(isInArc).toBe(obstaclesOf(book.geometry).some(({ corners }) => isInside(corners, place)));
    }
    expect(stances).toHaveLength(1);
  });
});
