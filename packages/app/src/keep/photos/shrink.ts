/** A picture made small enough to keep and send. */
export interface SmallPicture {
  readonly blob: Blob;
  readonly mediaType: "image/jpeg" | "image/png" | "image/webp";
  readonly width_px: number;
  readonly height_px: number;
}

/** The longer side of a kept picture: a crack in a fairing can still be seen, and a walk's pictures fit the phone. */
export const LONGEST_PX = 1_600;
const QUALITY = 0.75;

/** What of a browser this needs, so that the rules can be tried without one. */
export interface PictureTools {
  decode(file: Blob): Promise<ImageBitmap>;
  /** Draws at a size and encodes as JPEG; some browsers answer with another type. */
  encode(bitmap: ImageBitmap, width_px: number, height_px: number, quality: number): Promise<Blob>;
}

/**
 * Turns the picture upright and makes it at most 1600 px long. Encoding again drops what a camera writes into a file:
 * place and time of day stay out of it.
 *
 * @throws {Error} with a sentence for a person when it is no picture that this browser reads
 */
export async function shrinkPicture(file: Blob, tools: PictureTools): Promise<SmallPicture> {
  const bitmap = await decode(file, tools);
  try {
    const { width_px, height_px } = smallSize(bitmap.width, bitmap.height);
    const blob = await tools.encode(bitmap, width_px, height_px, QUALITY);
    return { blob, mediaType: mediaTypeOf(blob), width_px, height_px };
  } finally {
    bitmap.close();
  }
}

async function decode(file: Blob, tools: PictureTools): Promise<ImageBitmap> {
  try {
    return await tools.decode(file);
  } catch (error) {
    const isHeic = /hei[cf]/i.test(file.type) || (file instanceof File && /\.hei[cf]$/i.test(file.name));
    throw new Error(
      isHeic
        ? "This browser cannot read HEIC pictures. Set the camera to JPEG (most compatible), or take the photo from here."
        : "That file is no picture that this browser can read. Take a photo, or choose a JPEG, PNG or WebP file.",
      { cause: error },
    );
  }
}

/** The same shape, with the longer side at most 1600 px, and at least a pixel each way. */
export function smallSize(
  width_px: number,
  height_px: number,
): { readonly width_px: number; readonly height_px: number } {
  const scale = Math.min(1, LONGEST_PX / Math.max(width_px, height_px));
  return {
    width_px: Math.max(1, Math.round(width_px * scale)),
    height_px: Math.max(1, Math.round(height_px * scale)),
  };
}

function mediaTypeOf(blob: Blob): SmallPicture["mediaType"] {
  switch (blob.type) {
    case "image/jpeg":
    case "image/png":
    case "image/webp":
      return blob.type;
    default:
      throw new Error(
        `This browser cannot write a JPEG picture (it answered ${blob.type || "nothing"}). Use another browser for photos.`,
      );
  }
}

/** Decoding is the same on the page and in a worker. */
export const decodeBitmap = (file: Blob): Promise<ImageBitmap> =>
  createImageBitmap(file, { imageOrientation: "from-image" });

/** For a worker, and for a page whose browser has it. */
export async function encodeOffscreen(
  bitmap: ImageBitmap,
  width_px: number,
  height_px: number,
  quality: number,
): Promise<Blob> {
  const canvas = new OffscreenCanvas(width_px, height_px);
  draw(canvas.getContext("2d"), bitmap, width_px, height_px);
  return await canvas.convertToBlob({ type: "image/jpeg", quality });
}

/** For a page whose browser has no OffscreenCanvas. */
export async function encodeOnPage(
  bitmap: ImageBitmap,
  width_px: number,
  height_px: number,
  quality: number,
): Promise<Blob> {
  const canvas = document.createElement("canvas");
  canvas.width = width_px;
  canvas.height = height_px;
  draw(canvas.getContext("2d"), bitmap, width_px, height_px);
  const blob = await new Promise<Blob | null>((resolve) => {
    canvas.toBlob(resolve, "image/jpeg", quality);
  });
  canvas.width = 0; // gives the memory back at once; phones have little for canvases
  if (blob === null)
    throw new Error("The picture is too large for this phone. Take it again at a smaller size.");
  return blob;
}

function draw(
  context: CanvasRenderingContext2D | OffscreenCanvasRenderingContext2D | null,
  bitmap: ImageBitmap,
  width_px: number,
  height_px: number,
): void {
  if (context === null)
    throw new Error("This browser has no room to draw the picture. Close other pages and try again.");
  context.fillStyle = "#fff"; // JPEG has no see-through
  context.fillRect(0, 0, width_px, height_px);
  context.imageSmoothingQuality = "high";
  context.drawImage(bitmap, 0, 0, width_px, height_px);
}
