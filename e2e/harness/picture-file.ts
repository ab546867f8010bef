import type { Page } from "playwright-core";

/** A file as a phone's camera or picker hands it over. */
export interface PictureFile {
  readonly name: string;
  readonly mimeType: string;
  readonly buffer: Buffer;
}

/** A real JPEG of the size that a phone takes, drawn by the browser: stripes and noise, so that it does not shrink to nothing. */
export async function jpeg(page: Page): Promise<PictureFile> {
  const base64 = await page.evaluate(async () => {
    const canvas = new OffscreenCanvas(1600, 1200);
    const context = canvas.getContext("2d");
    if (context === null) throw new Error("picture-file: expected a drawing surface");
    for (let at = 0; at < 400; at += 1) {
      context.fillStyle = `hsl(${(at * 47) % 360} 60% 50%)`;
      context.fillRect((at * 211) % 1600, (at * 137) % 1200, 90, 60);
    }
    const blob = await canvas.convertToBlob({ type: "image/jpeg", quality: 0.9 });
    const bytes = new Uint8Array(await blob.arrayBuffer());
    let text = "";
    for (const byte of bytes) text += String.fromCharCode(byte);
    return btoa(text);
  });
  return { name: "IMG_0001.jpg", mimeType: "image/jpeg", buffer: Buffer.from(base64, "base64") };
}
