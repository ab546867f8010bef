import { readFileSync } from "node:fs";
import { extent, readBook } from "@witnessmark/book";
import { describe, expect, it } from "vitest";
import { cabinLayout, planAndSideLayout } from "./plan-layout.ts";

const BOOKS = ["zz-skr", "zz-dun", "zz-brk"] as const;

async function demo(name: string) {
  const url = new URL(`../../../../../books/${name}.yaml`, import.meta.url);
  const found = await readBook(readFileSync(url, "utf8"), `${name}.yaml`);
  if (!found.ok || found.book.loading === undefined)
    throw new Error(`${name}: expected a book with a loading`);
  return { geometry: found.book.geometry, loading: found.book.loading };
}

describe.each(BOOKS)("the drawing of %s", (name) => {
  it.each([
    { width_px: 648, height_px: 600 },
    { width_px: 500, height_px: 480 },
    { width_px: 900, height_px: 900 },
  ])("plan and elevation go in a room of $width_px by $height_px, and do not touch", async (room) => {
    const { geometry, loading } = await demo(name);
    const at = planAndSideLayout(geometry, room);
    const box = extent(geometry);
    const half_px = (at.cut_m ?? box.right_m) * at.pxPerMetre;
    expect(at.originX_px + box.aft_m * at.pxPerMetre).toBeLessThanOrEqual(room.width_px);
    expect(at.planY_px - half_px).toBeGreaterThanOrEqual(0);
    const roof_px = (at.groundY_px ?? 0) - box.top_m * at.pxPerMetre;
    expect(at.planY_px + half_px).toBeLessThanOrEqual(roof_px + 1);
    for (const { place } of loading.stations) {
      expect(Math.abs(place[1])).toBeLessThan(at.cut_m ?? Number.POSITIVE_INFINITY);
    }
  });

  it("the cabin alone shows every seat and bay, and some of each tank", async () => {
    const { geometry, loading } = await demo(name);
    const room = { width_px: 360, height_px: 236 };
    const at = cabinLayout(geometry, loading, room);
    for (const { place } of loading.stations) {
      const x = at.originX_px + place[0] * at.pxPerMetre;
      const y = at.planY_px - place[1] * at.pxPerMetre;
      expect(x).toBeGreaterThan(10);
      expect(x).toBeLessThan(room.width_px - 10);
      expect(y).toBeGreaterThan(10);
      expect(y).toBeLessThan(room.height_px - 10);
    }
    const [inner_m = 0] = geometry.wing.tank ?? [];
    expect(at.cut_m ?? Number.POSITIVE_INFINITY).toBeGreaterThan(inner_m + 0.25);
  });
});
