import { greyOf, type Ink, inkOf } from "@witnessmark/chart";
import { shrinkOnThisPhone } from "../../keep/photos/shrink-on-this-phone.ts";

/** A picture of a paper, small enough to work on. */
export interface PaperPicture {
  /** For an `img`; to be given back with `URL.revokeObjectURL`. */
  readonly address: string;
  readonly width: number;
  readonly height: number;
  readonly ink: Ink;
}

/** No camera makes more; beyond it a phone has no room to open it. */
const MOST_BYTES = 80_000_000;

/** Makes a picture small and reads its ink. @throws {Error} with a sentence for a person */
export async function readPicture(file: Blob): Promise<PaperPicture> {
  if (file.size > MOST_BYTES) {
    throw new Error(
      `The picture has ${Math.round(file.size / 1_000_000)} MB; at most ${MOST_BYTES / 1_000_000} MB can be opened. Take it again at a smaller size.`,
    );
  }
  const small = await shrinkOnThisPhone(file);
  const bitmap = await createImageBitmap(small.blob);
  try {
    const canvas = document.createElement("canvas");
    canvas.width = bitmap.width;
    canvas.height = bitmap.height;
    const context = canvas.getContext("2d", { willReadFrequently: true });
    if (context === null) {
      throw new Error("This browser has no room to open the picture. Close other pages and try again.");
    }
    context.drawImage(bitmap, 0, 0);
    const { width, height, data } = context.getImageData(0, 0, bitmap.width, bitmap.height);
    canvas.width = 0; // gives the memory back at once
    return {
      address: URL.createObjectURL(small.blob),
      width,
      height,
      ink: inkOf(greyOf(width, height, data)),
    };
  } finally {
    bitmap.close();
  }
}
