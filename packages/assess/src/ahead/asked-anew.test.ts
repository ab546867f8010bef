import type { Book } from "@witnessmark/book";
import { type AircraftState, emptyState } from "@witnessmark/ledger";
import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import { assessWithCauses } from "../assess.ts";
import type { Flight, Verdict, VerdictTopic } from "../assessment.ts";
import { massesOf } from "../flight/conditions/condition-verdicts.ts";
import { flightVerdicts } from "../flight/flight-verdicts.ts";
import { workLoad } from "../flight/load/load-figures.ts";
import { demoBook } from "../testing/demo-book.ts";
import { DEMO_NOW_ms, demoFlight } from "../testing/demo-flight.ts";
import { type Variable, variablesOf } from "./variables.ts";

let book: Book;
let state: AircraftState;
let variables: readonly Variable[];

beforeAll(async () => {
  book = await demoBook();
  state = emptyState("ZZ-SKR");
  const { plan } = demoFlight;
  if (plan === undefined) throw new Error("expected a plan");
  variables = variablesOf(book, demoFlight, plan, massesOf(workLoad(book, plan).figures), DEMO_NOW_ms);
});

const OF_FLIGHT: ReadonlySet<VerdictTopic> = new Set([
  ...(["load", "fuel", "oxygen"] as const),
  ...(["runway", "wind", "weather", "light", "ice"] as const),
]);

const inOrder = (verdicts: readonly Verdict[]): readonly Verdict[] =>
  verdicts.toSorted((a, b) => (a.id < b.id ? -1 : 1));

/** Asked of copies of the book, its fields and the flight, of which nothing can have been remembered. */
const anew = (flight: Flight): readonly Verdict[] =>
  inOrder(
    assessWithCauses(
      structuredClone(book),
      state,
      structuredClone(flight),
      DEMO_NOW_ms,
    ).assessment.verdicts.filter(({ topic }) => OF_FLIGHT.has(topic)),
  );

const values = fc.array(
  fc.record({ which: fc.nat(), share_1: fc.double({ min: 0, max: 1, noNaN: true }), isIfr: fc.boolean() }),
  { minLength: 1, maxLength: 8 },
);

describe("what is remembered from one question to the next", () => {
  it("changes no answer: each is word for word the one to the same question asked anew", () => {
    const { context } = assessWithCauses(book, state, demoFlight, DEMO_NOW_ms);
    fc.assert(
      fc.property(values, (asked) => {
        for (const { which, share_1, isIfr } of asked) {
          const variable = variables[which % variables.length];
          if (variable === undefined) throw new Error("expected variables");
          const { low, high } = variable;
          const moved = variable.with(low + (high - low) * share_1);
          const { plan } = moved;
          const flight: Flight =
            isIfr && plan !== undefined ? { ...moved, plan: { ...plan, flightRules: "IFR" } } : moved;
          const remembered = flightVerdicts(context, flight).map(({ verdict }) => verdict);
          expect(inOrder(remembered)).toEqual(anew(flight));
        }
      }),
      { numRuns: 25 },
    );
  });

  it("changes no answer when a value comes back to what it was", () => {
    const { context } = assessWithCauses(book, state, demoFlight, DEMO_NOW_ms);
    const first = flightVerdicts(context, demoFlight);
    for (const { with: moved, low, high } of variables) {
      flightVerdicts(context, moved(low));
      flightVerdicts(context, moved(high));
      expect(flightVerdicts(context, demoFlight)).toEqual(first);
    }
    expect(inOrder(first.map(({ verdict }) => verdict))).toEqual(anew(demoFlight));
  });
});
