import fc from "fast-check";
import { expect, it } from "vitest";
import { href, type Route, readRoute } from "./route.ts";

const registration = fc.stringMatching(/^[A-Z0-9]{1,3}-[A-Z0-9]{1,5}$/);
const id = fc.stringMatching(/^[a-z0-9]+([.-][a-z0-9]+){0,3}$/);

const anyRoute: fc.Arbitrary<Exclude<Route, { at: "unknown" }>> = fc.oneof(
  fc
    .constantFrom(
      "apron" as const,
      "archived" as const,
      "add" as const,
      "begin" as const,
      "chart" as const,
      "settings" as const,
    )
    .map((name) => ({ at: name })),
  fc.record({
    at: fc.constantFrom(
      "start" as const,
      "left" as const,
      "gear" as const,
      "happened" as const,
      "load" as const,
      "conditions" as const,
      "decide" as const,
      "paper" as const,
      "typed-in" as const,
      "learn" as const,
      "study" as const,
      "import" as const,
    ),
    registration,
  }),
  fc.record({ at: fc.constant("walk" as const), registration }),
  fc.record({
    at: fc.constant("walk" as const),
    registration,
    step: fc.record({ kind: fc.constantFrom("check" as const, "ground-gear" as const), id }),
  }),
  fc.record({ at: fc.constant("decision" as const), registration, decision: fc.uuid() }),
  fc.record({ at: fc.constant("aircraft" as const), registration, check: id }),
  fc.record({ at: fc.constant("calculators" as const), quantity: id }),
  fc.record({ at: fc.constant("rules" as const), question: id }),
);

it("every place has an address that leads back to it", () => {
  fc.assert(
    fc.property(anyRoute, (route) => {
      expect(readRoute(href(route))).toEqual(route);
    }),
  );
});

it("an aircraft alone means its walk, and what is no place says so", () => {
  expect(readRoute("#/ZZ-SKR")).toEqual({ at: "walk", registration: "ZZ-SKR" });
  expect(readRoute("")).toEqual({ at: "apron" });
  expect(readRoute("#/ZZ-SKR/nowhere")).toEqual({ at: "unknown", address: "ZZ-SKR/nowhere" });
  expect(readRoute("#/%E0%A4%A")).toEqual({ at: "walk", registration: "%E0%A4%A" });
});
