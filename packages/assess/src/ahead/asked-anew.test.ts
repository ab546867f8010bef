import type { Book } from "@witnessmark/book";
import { emptyState } from "@witnessmark/ledger";
import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import { assessWithCauses } from "../assess.ts";
import type { Flight, Verdict, VerdictTopic } from "../assessment.ts";
import type { Context } from "../context.ts";
import { type Finding, worthOf } from "../finding.ts";
import { massesOf } from "../flight/conditions/condition-verdicts.ts";
import { flightParts, flightVerdicts } from "../flight/flight-verdicts.ts";
import { workLoad } from "../flight/load/load-figures.ts";
import { BADNESS } from "../order.ts";
import { anyFlight } from "../testing/any-flight.ts";
import { demoBook } from "../testing/demo-book.ts";
import { DEMO_NOW_ms, demoFlight } from "../testing/demo-flight.ts";
import { answerOf, worthsOf } from "./answer.ts";
import { type Variable, variablesOf } from "./variables.ts";

const BOOKS = ["zz-skr", "zz-dun", "zz-brk"] as const;

const books = new Map<string, Book>();

beforeAll(async () => {
  for (const name of BOOKS) books.set(name, await demoBook(name));
});

function bookOf(name: (typeof BOOKS)[number]): Book {
  const book = books.get(name);
  if (book === undefined) throw new Error(`expected the book ${name}`);
  return book;
}

const OF_FLIGHT: ReadonlySet<VerdictTopic> = new Set([
  ...(["load", "fuel", "oxygen"] as const),
  ...(["runway", "wind", "weather", "light", "ice"] as const),
]);

const inOrder = (verdicts: readonly Verdict[]): readonly Verdict[] =>
  verdicts.toSorted((a, b) => (a.id < b.id ? -1 : 1));

const toldOf = (findings: readonly Finding[]): readonly Verdict[] =>
  inOrder(findings.map(({ verdict }) => verdict));

const contextOf = (book: Book, flight: Flight) =>
  assessWithCauses(book, emptyState(book.aircraft.registration), flight, DEMO_NOW_ms).context;

/** Asked of copies of the book, its fields and the flight, of which nothing can have been remembered. */
const anew = (book: Book, flight: Flight): readonly Verdict[] =>
  inOrder(
    assessWithCauses(
      structuredClone(book),
      emptyState(book.aircraft.registration),
      structuredClone(flight),
      DEMO_NOW_ms,
    ).assessment.verdicts.filter(({ topic }) => OF_FLIGHT.has(topic)),
  );

function variablesFor(book: Book, flight: Flight): readonly Variable[] {
  const { plan } = flight;
  if (plan === undefined) throw new Error("expected a plan");
  return variablesOf(book, flight, plan, massesOf(workLoad(book, plan).figures), DEMO_NOW_ms);
}

const steps = (maxLength: number) =>
  fc.array(fc.record({ which: fc.nat(), share_1: fc.double({ min: 0, max: 1, noNaN: true }) }), {
    minLength: 1,
    maxLength,
  });

/** Asks of a flight with one value changed at a time, and of the same anew. */
function asked(
  book: Book,
  flight: Flight,
  asks: readonly { readonly which: number; readonly share_1: number }[],
) {
  const context = contextOf(book, flight);
  const variables = variablesFor(book, flight);
  return asks.flatMap(({ which, share_1 }) => {
    const variable = variables[which % variables.length];
    if (variable === undefined) return [];
    const moved = variable.with(variable.low + (variable.high - variable.low) * share_1);
    return [{ findings: flightVerdicts(context, moved), expected: anew(book, moved) }];
  });
}

describe("what is remembered from one question to the next", () => {
  it("changes no answer of the demo's flight: each is word for word the one to the same question asked anew", () => {
    const book = bookOf("zz-skr");
    fc.assert(
      fc.property(steps(8), fc.constantFrom("VFR" as const, "IFR" as const), (asks, flightRules) => {
        const { plan } = demoFlight;
        const flight: Flight =
          plan === undefined ? demoFlight : { ...demoFlight, plan: { ...plan, flightRules } };
        for (const { findings, expected } of asked(book, flight, asks))
          expect(toldOf(findings)).toEqual(expected);
      }),
      { numRuns: 8 },
    );
  });

  it.each(BOOKS)("changes no answer of any flight of %s", (name) => {
    const book = bookOf(name);
    fc.assert(
      fc.property(anyFlight(book), steps(3), (flight, asks) => {
        for (const { findings, expected } of asked(book, flight, asks))
          expect(toldOf(findings)).toEqual(expected);
      }),
      { numRuns: 8 },
    );
  });

  it("changes no answer when a value comes back to what it was", () => {
    const book = bookOf("zz-skr");
    const context = contextOf(book, demoFlight);
    const first = toldOf(flightVerdicts(context, demoFlight));
    for (const { with: moved, low, high } of variablesFor(book, demoFlight)) {
      flightVerdicts(context, moved(low));
      flightVerdicts(context, moved(high));
      expect(toldOf(flightVerdicts(context, demoFlight))).toEqual(first);
    }
    expect(first).toEqual(anew(book, demoFlight));
  });
});

describe("an answer that is looked at no further than it takes", () => {
  /** What may stop a flight, from every part of it. */
  const mayStopIn = (context: Context, flight: Flight) =>
    [...flightParts(context, flight)].flatMap(({ stops }) => stops.map(worthOf));
  /** The worst of everything, all that stops, and all that may stop and is not known, from every verdict. */
  const wholeKey = (context: Context, flight: Flight): string => {
    const all = flightVerdicts(context, flight).map(worthOf);
    const mayStop = mayStopIn(context, flight);
    const worst = [...all, ...mayStop].map(({ status }) => status).sort((a, b) => BADNESS[a] - BADNESS[b])[0];
    const stops = all.flatMap(({ id, status }) => (status === "stop" ? [id] : []));
    const opens = mayStop.flatMap(({ id, status }) => (status === "open" ? [id] : []));
    return JSON.stringify([worst, stops.sort(), opens.sort()]);
  };

  it.each(BOOKS)(
    "is another exactly when the whole of it is, whatever is changed of any flight of %s",
    (name) => {
      const book = bookOf(name);
      fc.assert(
        fc.property(anyFlight(book), steps(6), (flight, asks) => {
          const context = contextOf(book, flight);
          const whole = wholeKey(context, flight);
          const now = answerOf(context, flight);
          const worths = worthsOf(now);
          const variables = variablesFor(book, flight);
          for (const { which, share_1 } of asks) {
            const variable = variables[which % variables.length];
            if (variable === undefined) continue;
            const moved = variable.with(variable.low + (variable.high - variable.low) * share_1);
            const isSame = answerOf(context, moved, worths).key === now.key;
            expect(isSame).toBe(wholeKey(context, moved) === whole);
            // nothing stops a flight that its part does not name among what may
            const mayStop = mayStopIn(context, moved).map(({ id }) => id);
            for (const { id, status } of flightVerdicts(context, moved).map(worthOf))
              if (status === "stop") expect(mayStop).toContain(id);
          }
        }),
        { numRuns: 12 },
      );
    },
  );
});

describe("a verdict that is told when it is read", () => {
  it.each(BOOKS)("is the one that was said before, and worth what was said, for any flight of %s", (name) => {
    const book = bookOf(name);
    const whole = (flight: Flight): readonly Finding[] =>
      assessWithCauses(book, emptyState(book.aircraft.registration), flight, DEMO_NOW_ms).findings;
    fc.assert(
      fc.property(anyFlight(book), (flight) => {
        for (const finding of whole(flight)) {
          const { id, status } = worthOf(finding);
          expect(finding.verdict).toMatchObject({ id, status });
          expect(finding.verdict).toBe(finding.verdict);
        }
      }),
      { numRuns: 12 },
    );
  });
});
