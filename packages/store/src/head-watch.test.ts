import { describe, expect, it } from "vitest";
import { HeadWatch } from "./head-watch.ts";

describe("HeadWatch", () => {
  it("tells a head once, however it is learnt, and heals what was not told", async () => {
    const heads = [
      { aircraft: "a", head: 1 },
      { aircraft: "b", head: 7 },
    ];
    const watch = new HeadWatch(async () => heads);
    const told: string[] = [];
    const stop = watch.add(({ aircraft, head }) => told.push(`${aircraft}${head}`));
    watch.tell({ aircraft: "a", head: 1 });
    watch.tell({ aircraft: "a", head: 1 });
    await watch.refresh();
    expect(told).toEqual(["a1", "b7"]);
    stop();
    watch.tell({ aircraft: "a", head: 2 });
    expect(told).toEqual(["a1", "b7"]);
    expect(watch.isWatched).toBe(false);
  });

  it("reads nothing while nobody watches", async () => {
    let reads = 0;
    const watch = new HeadWatch(async () => {
      reads += 1;
      return [];
    });
    await watch.refresh();
    expect(reads).toBe(0);
  });
});
