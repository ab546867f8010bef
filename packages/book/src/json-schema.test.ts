import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { parse } from "yaml";
import { z } from "zod";
import { bookJsonSchema } from "./json-schema.ts";
import { flightBookText } from "./testing/flight-book.ts";
import { smallBookText } from "./testing/small-book.ts";

const written: unknown = JSON.parse(readFileSync(new URL("../book.schema.json", import.meta.url), "utf8"));

it("is the schema that is kept for editors; after a change run: node packages/book/write-schema.ts", () => {
  expect(written).toEqual(bookJsonSchema());
});

it("accepts a good book, and refuses it with an unknown key, a wrong type and a missing value", () => {
  const schema = z.fromJSONSchema(bookJsonSchema());
  const accepts = (text: string): boolean => schema.safeParse(parse(text)).success;
  expect(accepts(smallBookText)).toBe(true);
  expect(accepts(flightBookText)).toBe(true);
  expect(accepts(flightBookText.replace("capacity: 100 L", "capacity: [100]"))).toBe(false);
  expect(accepts(flightBookText.replace("takeOff: 1300 kg, ", ""))).toBe(false);
  expect(accepts(smallBookText.replace("shouldBe:", "shouldbe:"))).toBe(false);
  expect(accepts(smallBookText.replace("revision: 3", "revision: three"))).toBe(false);
  expect(accepts(smallBookText.replace("revision: 3\n", ""))).toBe(false);
});

it("tells an editor what a key means", () => {
  expect(JSON.stringify(written)).toContain("What to do, in the imperative");
});
