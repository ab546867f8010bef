import fc from "fast-check";
import type { Geometry } from "../schema/geometry.ts";

/** Any geometry that the schema accepts, with no more sense than that: flat, inside out, all in one place. */
export function arbitraryGeometry(): fc.Arbitrary<Geometry> {
  const metres = fc.oneof(
    fc.double({ min: -100, max: 100, noNaN: true }),
    fc.constantFrom(0, 1, -1, 100, -100, 5e-324),
  );
  const notNegative = metres.map(Math.abs);
  const positive = notNegative.map((value) => value || 1);
  const fraction = fc.double({ min: 0, max: 1, noNaN: true });
  const pair = fc.tuple(metres, metres);
  const station = fc.tuple(metres, notNegative, metres, metres);
  const maybe = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined });
  const end = fc.record({ y: notNegative, leadingEdge: metres, chord: positive, z: metres });
  const hinged = fc.record({ from: notNegative, to: positive, hinge: fraction });
  const place = fc.tuple(metres, metres, metres);
  const few = { maxLength: 3 };
  return fc
    .record({
      fuselage: fc.array(station, { minLength: 3, maxLength: 6 }),
      wing: fc.record({
        root: end,
        kinks: maybe(fc.array(end, few)),
        tip: end,
        tipRound: notNegative,
        flap: maybe(hinged),
        aileron: maybe(hinged),
        boot: maybe(fc.record({ span: pair, joints: fc.array(metres, few) })),
        tank: maybe(pair),
        struts: maybe(fc.array(fc.record({ foot: place, head: place }), few)),
      }),
      tailplane: fc.record({
        root: end,
        tip: end,
        tipRound: notNegative,
        elevator: fraction,
        boot: maybe(fc.boolean()),
        trimTab: maybe(fc.constantFrom("left", "right", "both")),
      }),
      fin: maybe(
        fc.record({
          span: pair,
          outline: fc.array(pair, { minLength: 3, maxLength: 6 }),
          hinge: fc.tuple(pair, pair),
        }),
      ),
      nacelles: fc.array(
        fc.record({ y: metres, stations: fc.array(station, { minLength: 2, maxLength: 4 }) }),
        few,
      ),
      propellers: fc.array(
        fc.record({
          x: metres,
          y: metres,
          z: positive,
          radius: positive,
          spinner: fc.boolean(),
          blades: maybe(fc.integer({ min: 2, max: 6 })),
        }),
        { minLength: 1, maxLength: 2 },
      ),
      wheels: fc.array(
        fc.record({
          x: metres,
          y: metres,
          width: positive,
          diameter: positive,
          top: positive,
          rake: maybe(metres),
          topY: maybe(metres),
          cover: maybe(fc.constantFrom("spat", "door")),
        }),
        { minLength: 3, maxLength: 4 },
      ),
      frames: fc.array(metres, few),
      exhaust: maybe(metres),
      windscreen: maybe(
        fc.record({ x: pair, halfWidth: positive, side: maybe(fc.array(pair, { maxLength: 5 })) }),
      ),
      windows: fc.array(pair, few),
      sideWindows: fc.array(fc.record({ x: pair, z: pair }), few),
      door: maybe(fc.record({ x: pair, z: pair, side: fc.constantFrom("left", "right") })),
      hatch: maybe(fc.record({ x: pair, halfWidth: positive })),
    })
    .map(withoutUndefined);
}

/** Optional keys are left out, not set to `undefined`: what YAML would give. */
function withoutUndefined<T>(value: T): T {
  return JSON.parse(JSON.stringify(value)); // plain data of finite numbers: comes back as it went in
}
