import "./no-eval.ts";
import { expect, it } from "vitest";
import { config } from "zod/mini";

it("the schemas make no code of text", () => {
  expect(config().jitless).toBe(true);
});
