import { expect, it } from "vitest";
import { remembered } from "./remembered.ts";

it("is made again only from other things, or when it was not asked for lately", () => {
  const made: string[] = [];
  const remember = remembered<string>(2);
  const ask = (of: object, name: string, from = "same") =>
    remember(of, [from], () => {
      made.push(name);
      return name;
    });
  const [a, b, c] = [{}, {}, {}];
  expect(ask(a, "a")).toBe("a");
  ask(b, "b");
  ask(a, "not made"); // asked for again: it is b that was not asked for lately
  ask(c, "c");
  expect(ask(a, "not made")).toBe("a");
  expect(ask(b, "b again")).toBe("b again");
  expect(ask(b, "b from another", "another")).toBe("b from another");
  expect(made).toEqual(["a", "b", "c", "b again", "b from another"]);
});
