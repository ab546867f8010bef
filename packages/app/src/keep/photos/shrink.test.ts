import fc from "fast-check";
import { describe, expect, it, vi } from "vitest";
import { LONGEST_PX, type PictureTools, shrinkPicture, smallSize } from "./shrink.ts";

const bitmap = (width: number, height: number) => ({ width, height, close: vi.fn() });
const tools = (from: ReturnType<typeof bitmap>, type = "image/jpeg"): PictureTools => ({
  decode: async () => from,
  encode: async (_, width_px, height_px) => new Blob([`${width_px} x ${height_px}`], { type }),
});

describe("making a picture small", () => {
  it.each([
    [4_000, 3_000, 1_600, 1_200],
    [3_000, 4_000, 1_200, 1_600],
    [1_600, 900, 1_600, 900],
    [640, 480, 640, 480],
    [20_000, 3, 1_600, 1],
  ])("%i x %i becomes %i x %i", (width, height, width_px, height_px) => {
    expect(smallSize(width, height)).toEqual({ width_px, height_px });
  });

  it("never makes it larger, nor out of shape by more than a pixel", () => {
    const side = fc.integer({ min: 1, max: 12_000 });
    fc.assert(
      fc.property(side, side, (width, height) => {
        const small = smallSize(width, height);
        expect(Math.max(small.width_px, small.height_px)).toBeLessThanOrEqual(LONGEST_PX);
        expect(small.width_px).toBeLessThanOrEqual(width);
        expect(small.height_px).toBeLessThanOrEqual(height);
        const scale = Math.min(1, LONGEST_PX / Math.max(width, height));
        expect(Math.abs(small.width_px - width * scale)).toBeLessThanOrEqual(1);
        expect(Math.abs(small.height_px - height * scale)).toBeLessThanOrEqual(1);
      }),
    );
  });

  it("gives the memory of the large one back", async () => {
    const large = bitmap(4_000, 3_000);
    const small = await shrinkPicture(new Blob(["raw"]), tools(large));
    expect(small).toMatchObject({ mediaType: "image/jpeg", width_px: 1_600, height_px: 1_200 });
    expect(large.close).toHaveBeenCalledOnce();
  });

  it("says what the browser has really written", async () => {
    const small = await shrinkPicture(new Blob(["raw"]), tools(bitmap(8, 8), "image/png"));
    expect(small.mediaType).toBe("image/png");
    await expect(shrinkPicture(new Blob(["raw"]), tools(bitmap(8, 8), ""))).rejects.toThrow(
      "This browser cannot write a JPEG picture (it answered nothing). Use another browser for photos.",
    );
  });

  it("refuses what is no picture, in words", async () => {
    const blind: PictureTools = {
      ...tools(bitmap(1, 1)),
      decode: () =>
        Promise.reject(new DOMException("The source image could not be decoded.", "InvalidStateError")),
    };
    await expect(shrinkPicture(new Blob(["text"], { type: "text/plain" }), blind)).rejects.toThrow(
      "That file is no picture that this browser can read. Take a photo, or choose a JPEG, PNG or WebP file.",
    );
    await expect(shrinkPicture(new Blob(["…"], { type: "image/heic" }), blind)).rejects.toThrow(/HEIC/);
    await expect(shrinkPicture(new File(["…"], "IMG_1.HEIC"), blind)).rejects.toThrow(/HEIC/);
  });
});
