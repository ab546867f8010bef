import fc from "fast-check";
import { describe, expect, it } from "vitest";
import * as face from "../index.ts";
import { InputError } from "../input-error.ts";
import { quantities } from "./quantities.ts";
import type { AnyQuantity, InputSpec, InputValue } from "./quantity.ts";

const all = [...quantities.values()];
const named = all.map((quantity) => ({ id: quantity.id, quantity }));

const isQuantity = (value: unknown): value is AnyQuantity =>
  typeof value === "object" && value !== null && "compute" in value && "sources" in value;

const middleOf = ({ range: [low, high] }: InputSpec): number => (low + high) / 2;

/** A value for an input: as it is, or in a list behind the middle of the range. */
const placed = (spec: InputSpec, value: number): InputValue => (spec.many ? [middleOf(spec), value] : value);

const middle = (quantity: AnyQuantity): Record<string, InputValue> =>
  Object.fromEntries(quantity.inputs.map((spec) => [spec.name, placed(spec, middleOf(spec))]));

/** The error that a call ends in, or nothing. */
function refusal(call: () => unknown): InputError | undefined {
  try {
    call();
    return undefined;
  } catch (error) {
    if (error instanceof InputError) return error;
    throw error;
  }
}

const valueInRange = ({ range: [min, max], unit }: InputSpec): fc.Arbitrary<number> =>
  unit === "count"
    ? fc.integer({ min, max })
    : fc.oneof(fc.constantFrom(min, max), fc.double({ min, max, noNaN: true, noDefaultInfinity: true }));

/** Lists of one length, since most belong together; now and then of any length. */
const inRange = (quantity: AnyQuantity): fc.Arbitrary<Record<string, InputValue>> =>
  fc
    .tuple(fc.integer({ min: 1, max: 5 }), fc.integer({ min: 0, max: 9 }))
    .chain(([length, odd]) =>
      fc.record(
        Object.fromEntries(
          quantity.inputs.map((spec) => [
            spec.name,
            spec.many
              ? fc.array(
                  valueInRange(spec),
                  odd === 0 ? { minLength: 1, maxLength: 5 } : { minLength: length, maxLength: length },
                )
              : valueInRange(spec),
          ]),
        ),
      ),
    );

describe("the registry", () => {
  it("holds every quantity that the package shows, by its own id", () => {
    const shown = Object.values<unknown>(face).filter(isQuantity);
    expect(shown.length).toBeGreaterThanOrEqual(80);
    expect(new Set(shown.map(({ id }) => id))).toEqual(new Set(quantities.keys()));
    for (const quantity of shown) expect(quantities.get(quantity.id)).toBe(quantity);
  });

  it("marks every rule of thumb as for cross-checks only", () => {
    const rules = all.filter(({ id }) => id.includes("-rule"));
    expect(rules.length).toBeGreaterThan(5);
    expect(rules.filter(({ crossCheckOnly }) => crossCheckOnly !== true)).toEqual([]);
  });
});

describe.each(named)("$id", ({ quantity }) => {
  it("gives a finite number or a reason, wherever its inputs lie in their ranges", () => {
    fc.assert(
      fc.property(inRange(quantity), (inputs) => {
        let value = 0;
        const refused = refusal(() => {
          value = quantity.compute(inputs);
        });
        expect(Number.isFinite(value)).toBe(true);
        if (refused !== undefined) {
          expect(refused.detail.quantity).toBe(quantity.id);
          expect(["out-of-range", "not-a-number"]).toContain(refused.code);
          expect(refused.code, "a result that is not finite has slipped past the checks").toBe(
            "out-of-range",
          );
        }
      }),
      { numRuns: 60 },
    );
  });

  it.each(quantity.inputs.map((spec) => ({ name: spec.name, spec })))(
    "takes $name to both ends of its range and not beyond",
    ({ spec, spec: { name, range } }) => {
      for (const [end, beyond] of [
        [range[0], range[0] - Math.max(1e-9, Math.abs(range[0]) * 1e-9)],
        [range[1], range[1] + Math.max(1e-9, Math.abs(range[1]) * 1e-9)],
      ] as const) {
        const inside = refusal(() => quantity.compute({ ...middle(quantity), [name]: placed(spec, end) }));
        expect(inside?.detail.value === end && inside.detail.range === range).toBe(false);
        const outside = refusal(() =>
          quantity.compute({ ...middle(quantity), [name]: placed(spec, beyond) }),
        );
        expect(outside?.code).toBe("out-of-range");
        expect(outside?.field).toBe(name);
        expect(outside?.detail.quantity).toBe(quantity.id);
        expect(outside?.detail.range).toEqual(range);
      }
      for (const none of [Number.NaN, Number.POSITIVE_INFINITY]) {
        const refused = refusal(() => quantity.compute({ ...middle(quantity), [name]: placed(spec, none) }));
        expect([refused?.code, refused?.field]).toEqual(["not-a-number", name]);
      }
    },
  );
});
