import { describe, expect, it } from "vitest";
import { makeLocks } from "./locks.ts";
import { newPhone } from "./testing/phone.ts";

describe.each([
  ["with the browser's locks", navigator.locks],
  ["without", undefined],
])("locks %s", (_, manager) => {
  it("let one work at a time under a name, in the order of asking", async () => {
    const locks = makeLocks(manager, newPhone());
    const said: string[] = [];
    const work = (who: string) =>
      locks.hold("append", async () => {
        said.push(`${who} begins`);
        await Promise.resolve();
        said.push(`${who} ends`);
      });
    await Promise.all(["a", "b", "c"].map(work));
    expect(said).toEqual(["a begins", "a ends", "b begins", "b ends", "c begins", "c ends"]);
  });

  it("go on after work that failed", async () => {
    const locks = makeLocks(manager, newPhone());
    await expect(locks.hold("append", () => Promise.reject(new Error("no")))).rejects.toThrow("no");
    expect(await locks.hold("append", async () => "yes")).toBe("yes");
  });
});

describe("a tab that was frozen in its turn", () => {
  it("does not hold up the one in the hand for ever", async () => {
    const name = newPhone();
    const thaw = Promise.withResolvers<void>();
    const frozen = makeLocks(navigator.locks, name).hold("append", () => thaw.promise);
    const inHand = makeLocks(navigator.locks, name, 1).hold("append", async () => "kept");
    expect(await inHand).toBe("kept");
    thaw.resolve();
    await frozen;
  });
});
