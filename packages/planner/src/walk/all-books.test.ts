import { readFileSync } from "node:fs";
import { ARCHETYPES, type Book, beginBook, readBook, WALK_KINDS } from "@witnessmark/book";
import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import { isInside, passesThrough, readyShape } from "../geometry/convex.ts";
import { obstaclesOf } from "../geometry/obstacles.ts";
import { planWalk } from "../plan-walk.ts";
import { stepsOf } from "../steps.ts";
import { checkAt, gearAt, stanceAt, tinyBook } from "../testing/tiny-book.ts";
import { hasFaults, orderFaults } from "./order-faults.ts";
import { planOrder, poseWalk } from "./plan-order.ts";
import { shareWalk } from "./share-walk.ts";
import { splitWalk } from "./split-walk.ts";
import { walkInOrder } from "./walk-in-order.ts";
import { orderedWalk, orderLeft, orderOf } from "./walk-order.ts";

const FILES = ["zz-skr.yaml", "zz-dun.yaml", "zz-brk.yaml"];
const books = new Map<string, Book>();

beforeAll(async () => {
  for (const file of FILES) {
    const read = await readBook(
      readFileSync(new URL(`../../../../books/${file}`, import.meta.url), "utf8"),
      file,
    );
    if (!read.ok) throw new Error(`${file}: expected a book without faults`);
    books.set(file, read.book);
  }
});

const bookOf = (file: string): Book => {
  const book = books.get(file);
  if (book === undefined) throw new Error(`${file}: expected it to be read`);
  return book;
};

describe("the walk of every book", () => {
  it.each(FILES)(
    "makes no check of %s across the arc of a propeller that is not so from its own stance",
    (file) => {
      const book = bookOf(file);
      const arcs = obstaclesOf(book.geometry).flatMap(({ propeller, corners }) =>
        propeller === undefined ? [] : [readyShape(corners)],
      );
      const isThrough = (from: readonly [number, number], [x, y]: readonly number[]) =>
        arcs.some((arc) => passesThrough(arc, from, [x ?? Number.NaN, y ?? Number.NaN]));
      const plan = planWalk(book, "first-of-day");
      const own = new Map(
        plan.stops.flatMap(({ stance, steps }) => steps.map(({ id }) => [id, stance] as const)),
      );
      let checked = 0;
      for (const { stance, steps } of walkInOrder(plan, book, orderOf(book, "first-of-day")).stops) {
        for (const step of steps) {
          const point = step.kind === "check" ? book.points.get(step.check.point) : undefined;
          const its = own.get(step.id);
          if (point === undefined || its === undefined || stance.posture === "inside") continue;
          checked += 1;
          if (isThrough(stance.place, point.place))
            expect(isThrough(its.place, point.place), step.id).toBe(true);
        }
      }
      expect(checked).toBeGreaterThan(30);
    },
  );
});

describe("the walk of a book begun for a high wing on a tail wheel", () => {
  it("looks at a wheel, its brake and its leg from beside it, and into a tank standing", async () => {
    const archetype = ARCHETYPES.find(({ id }) => id === "piston-single-tail-wheel");
    if (archetype === undefined) throw new Error("expected the kind to be known");
    const text = beginBook({
      archetype,
      figures: { registration: "ZZ-NEW", type: "New 1", ...archetype.figures },
      by: "A. Example",
      on: "2026-11-26",
    });
    const read = await readBook(text, "new.yaml");
    if (!read.ok) throw new Error("expected a book without faults");
    const { book } = read;
    const { stops } = walkInOrder(planWalk(book, "first-of-day"), book, orderOf(book, "first-of-day"));
    const stanceOf = (point: string) =>
      new Set(
        stops.flatMap(({ stance, steps }) =>
          steps.some((step) => step.kind === "check" && step.check.point === point) ? [stance] : [],
        ),
      );
    for (const side of ["left", "right"]) {
      const [wheel, ...others] = new Set(
        ["tyre", "brake", "leg"].flatMap((part) => [...stanceOf(`${side}-main-${part}`)]),
      );
      expect([wheel?.id, wheel?.posture, others]).toEqual([`${side}-main-wheel`, "crouch", []]);
      expect([...stanceOf(`${side}-fuel-cap`)].map(({ posture }) => posture)).toEqual(["stand"]);
    }
  });
});

describe.each(FILES)("the walks of %s", (file) => {
  it("miss nothing, do nothing twice or too early, and end with the last looks", () => {
    for (const kind of WALK_KINDS) {
      const order = orderOf(bookOf(file), kind).stops.flatMap(({ steps }) => steps);
      expect(hasFaults(orderFaults(bookOf(file), kind, order))).toBe(false);
    }
  });

  it("make each look in the posture that the book makes it in, from whichever stance", () => {
    const book = bookOf(file);
    const plan = walkInOrder(planWalk(book, "first-of-day"), book, orderOf(book, "first-of-day"));
    for (const { stance, steps } of plan.stops)
      for (const step of steps)
        if (step.kind === "check" && step.check.stance !== stance.id)
          expect(book.stancesById.get(step.check.stance)?.posture, step.id).toBe(stance.posture);
  });

  it("are the same each time they are planned", () => {
    expect(orderOf(bookOf(file), "turnaround")).toEqual(orderOf(bookOf(file), "turnaround"));
  });

  it("go round everything that is in the way, apart from the step out of where one stands close to it", () => {
    const book = bookOf(file);
    const obstacles = obstaclesOf(book.geometry, book.hazards);
    const { ways } = planOrder(book, "after-flight", { rounds: 0, proofStates: 0 });
    for (const way of ways) {
      for (const [i, to] of way.slice(1).entries()) {
        const from = way[i] ?? to;
        const crossed = obstacles.filter(
          ({ corners }) =>
            passesThrough(readyShape(corners), from, to) &&
            !isInside(corners, from) &&
            !isInside(corners, to),
        );
        // inside the cabin one walks in a straight line
        const isWithin =
          way.length === 2 &&
          book.stances.some(
            ({ place, posture }) => posture === "inside" && place[0] === from[0] && place[1] === from[1],
          );
        if (!isWithin) expect(crossed.map(({ name }) => name)).toEqual([]);
      }
    }
  });

  it("are shared by two so that all is done once, both at work about as long, and each half followed by the other", () => {
    const book = bookOf(file);
    const all = stepsOf(planWalk(book, "first-of-day"))
      .map(({ id }) => id)
      .sort();
    const shares = shareWalk(book, "first-of-day");
    const idsOf = (stops: (typeof shares)[0]["mine"]) => stops.flatMap(({ steps }) => steps);
    expect([...idsOf(shares[0].mine), ...idsOf(shares[1].mine)].sort()).toEqual(all);
    for (const { mine, others } of shares) expect([...idsOf(mine), ...idsOf(others)].sort()).toEqual(all);
    const [long_s, short_s] = [shares[0].time_s, shares[1].time_s].sort((a, b) => b - a);
    expect(short_s ?? 0).toBeGreaterThan(0.75 * (long_s ?? 0));
    expect(long_s ?? 0).toBeLessThan(0.7 * orderedWalk(book, "first-of-day").estimate_s);
  });

  it("are walked the shortest way for whatever is left, from wherever one stands", () => {
    const book = bookOf(file);
    const all = stepsOf(planWalk(book, "turnaround")).map(({ id }) => id);
    fc.assert(
      fc.property(
        fc.subarray(all),
        fc.tuple(fc.integer({ min: -4, max: 12 }), fc.integer({ min: -8, max: 8 })),
        (left, from) => {
          const set = new Set(left);
          const order = orderLeft(book, "turnaround", { isLeft: ({ id }) => set.has(id), from });
          const row = order.stops.flatMap(({ steps }) => steps);
          expect([...row].sort()).toEqual([...left].sort());
          expect(orderFaults(book, "turnaround", row).tooEarly).toEqual([]);
        },
      ),
      { numRuns: 2 },
    );
  });
});

/** Books of a few stances round a tube, with checks that wait for earlier ones. */
const someBook = fc
  .record({
    places: fc.array(
      fc.tuple(fc.integer({ min: -6, max: 14 }), fc.integer({ min: 1, max: 7 }), fc.boolean()),
      {
        minLength: 2,
        maxLength: 6,
      },
    ),
    checks: fc.array(fc.tuple(fc.nat(5), fc.array(fc.nat(11), { maxLength: 2 })), {
      minLength: 1,
      maxLength: 12,
    }),
    covers: fc.array(fc.nat(5), { maxLength: 2 }),
    isLast: fc.boolean(),
  })
  .map(({ places, checks, covers, isLast }): Book => {
    const stances = places.map(([x, y, isLeft], i) => stanceAt(`s${i}`, x, isLeft ? -y : y));
    const nameOf = (i: number): string => `s${i % stances.length}`;
    // as the reader gives them: by stance, and what comes first before what waits for it
    const made = checks
      .map(([at]) => at % stances.length)
      .sort((a, b) => a - b)
      .map((at, i) => ({
        ...checkAt(`c${i}`, nameOf(at), ["first-of-day"]),
        after: (checks[i]?.[1] ?? []).filter((one) => one < i).map((one) => `c${one}`),
      }));
    const gear = [...new Set(covers.map((at) => at % stances.length))].map((at) =>
      gearAt(`g${at}`, `${nameOf(at)}-point`),
    );
    const far = { y: 0.1, leadingEdge: 90, chord: 1, z: 90 };
    const geometry = {
      fuselage: [
        [0, 0.5, 2, 1],
        [4, 0.6, 2, 1],
        [8, 0.3, 2, 1],
      ] as const,
      wing: {
        root: { y: 0.5, leadingEdge: 3, chord: 1.5, z: 1 },
        tip: { y: 5, leadingEdge: 3, chord: 1, z: 1.2 },
        tipRound: 0,
      },
      tailplane: { root: far, tip: { ...far, y: 1 }, tipRound: 0, elevator: 0.5 },
      fin: {
        span: [7, 8] as const,
        outline: [
          [7, 2],
          [7.5, 3],
          [8, 2],
        ] as const,
        hinge: [
          [7.8, 3],
          [7.8, 2],
        ] as const,
      },
      nacelles: [],
      propellers: [{ x: -0.2, y: 0, z: 1.4, radius: 0.9, spinner: true }],
      wheels: [],
      frames: [],
      windows: [],
      sideWindows: [],
    };
    return {
      ...tinyBook({ stances, checks: made, gear }),
      geometry,
      ...(isLast ? { last: [nameOf(stances.length - 1)] } : {}),
    };
  });

describe("any walk", () => {
  it("is whole, keeps every rule, and is never worse than the order it started from", () => {
    fc.assert(
      fc.property(someBook, (book) => {
        const order = orderOf(book, "first-of-day");
        const row = order.stops.flatMap(({ steps }) => steps);
        expect(orderFaults(book, "first-of-day", row)).toEqual({
          missed: [],
          twice: [],
          unknown: [],
          tooEarly: [],
          afterLast: [],
        });
        const { cost_s, given_s, bound_s } = planOrder(book, "first-of-day", { rounds: 2, proofStates: 50 });
        expect(cost_s).toBeLessThanOrEqual(given_s + 1e-9);
        expect(bound_s).toBeLessThanOrEqual(cost_s + 1e-9);
      }),
      { numRuns: 20 },
    );
  });

  it("is shared by two without loss, and never takes the two longer than the one", () => {
    fc.assert(
      fc.property(someBook, fc.integer(), (book, seed) => {
        const posed = poseWalk(book, "first-of-day");
        const { visits, cost_s, stops } = planOrder(book, "first-of-day", { rounds: 2, proofStates: 0 });
        const { people, time_s } = splitWalk(posed, visits, { step_s: () => 5, rounds: 200, seed });
        const idsOf = (row: typeof stops) => row.flatMap(({ steps }) => steps.map(({ id }) => id));
        const all = idsOf(stops);
        expect([...idsOf(people[0].stops), ...idsOf(people[1].stops)].sort()).toEqual([...all].sort());
        expect(time_s).toBeLessThanOrEqual(cost_s + 5 * all.length + 1e-9);
      }),
      { numRuns: 20 },
    );
  });

  it("tells every step that was left out, doubled, or put before what it waits for", () => {
    fc.assert(
      fc.property(someBook, fc.nat(), fc.nat(), (book, a, b) => {
        const row = orderOf(book, "first-of-day").stops.flatMap(({ steps }) => steps);
        const [from, to] = [a % row.length, b % row.length];
        const id = row[from] ?? "";
        expect(orderFaults(book, "first-of-day", row.toSpliced(from, 1)).missed).toEqual([id]);
        expect(orderFaults(book, "first-of-day", row.toSpliced(to, 0, id)).twice).toEqual([id]);
        const moved = row.toSpliced(from, 1).toSpliced(to, 0, id);
        const told = new Set(
          orderFaults(book, "first-of-day", moved).tooEarly.map((one) => `${one.id} ${one.after}`),
        );
        for (const check of book.checks) {
          for (const after of check.after) {
            expect(told.has(`${check.id} ${after}`)).toBe(moved.indexOf(check.id) < moved.indexOf(after));
          }
        }
      }),
      { numRuns: 20 },
    );
  });

  it("has every step once, whatever order was kept for it", () => {
    const stop = fc.record({
      stance: fc.constantFrom("s0", "s1", "gone"),
      steps: fc.array(fc.constantFrom("c0", "c1", "c2", "g0", "old")),
    });
    fc.assert(
      fc.property(someBook, fc.array(stop, { maxLength: 6 }), (book, stops) => {
        const plan = planWalk(book, "first-of-day");
        const walked = walkInOrder(plan, book, { stops });
        expect(
          stepsOf(walked)
            .map(({ id }) => id)
            .sort(),
        ).toEqual(
          stepsOf(plan)
            .map(({ id }) => id)
            .sort(),
        );
      }),
      { numRuns: 20 },
    );
  });
});

describe("a stance that no way reaches", () => {
  it("fails its own stop alone, and its steps are walked all the same", () => {
    const stances = [stanceAt("out", -4, -4), stanceAt("walled", 20, 0), stanceAt("beyond", 4, -6)];
    const checks = [
      checkAt("a", "out", ["first-of-day"]),
      checkAt("b", "walled", ["first-of-day"]),
      checkAt("c", "beyond", ["first-of-day"]),
    ];
    const [book] = fc.sample(someBook, 1);
    if (book === undefined) throw new Error("expected a book");
    // four chocks close a ring round it
    const hazards = (
      [
        [1, 0],
        [-1, 0],
        [0, 1],
        [0, -1],
      ] as const
    ).map(([dx, dy], i) => ({
      name: `Chock ${i}`,
      kind: "chock" as const,
      place: [20 + 1.2 * dx, 1.2 * dy] as const,
      radius: 0.8,
    }));
    const { last: _last, ...rest } = {
      ...tinyBook({ stances, checks }),
      geometry: book.geometry,
      hazards,
      last: [],
    };
    const order = orderOf(rest, "first-of-day");
    expect(order.noWay).toEqual(["walled"]);
    expect(order.stops.map(({ stance }) => stance).sort()).toEqual(["beyond", "out", "walled"]);
    const plan = orderedWalk(rest, "first-of-day");
    expect(plan.stops.filter(({ noWay }) => noWay).map(({ stance }) => stance.id)).toEqual(["walled"]);
  });
});
