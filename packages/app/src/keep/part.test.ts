import { expect, it, vi } from "vitest";
import { part } from "./part.ts";

it("is fetched once, however often it is asked for", async () => {
  const load = vi.fn(async () => "here");
  const get = part(load);
  expect(await Promise.all([get(), get()])).toEqual(["here", "here"]);
  expect(await get()).toBe("here");
  expect(load).toHaveBeenCalledTimes(1);
});

it("is fetched again when it did not come", async () => {
  const load = vi.fn(async () => "here").mockRejectedValueOnce(new Error("out of reach"));
  const get = part(load);
  await expect(get()).rejects.toThrow("out of reach");
  expect(await get()).toBe("here");
});
