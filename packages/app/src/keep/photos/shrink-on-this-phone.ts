import { decodeBitmap, encodeOnPage, type SmallPicture, shrinkPicture } from "./shrink.ts";
import type { ShrinkAnswer } from "./shrink-worker.ts";

/** Makes a picture small without holding up the screen, where the browser can. @throws {Error} as `shrinkPicture` */
export function shrinkOnThisPhone(file: Blob): Promise<SmallPicture> {
  if (typeof Worker === "undefined" || typeof OffscreenCanvas === "undefined") {
    return shrinkPicture(file, { decode: decodeBitmap, encode: encodeOnPage });
  }
  const worker = new Worker(new URL("./shrink-worker.ts", import.meta.url), { type: "module" });
  const { promise, resolve, reject } = Promise.withResolvers<SmallPicture>();
  worker.addEventListener("message", (event: MessageEvent<ShrinkAnswer>) => {
    if ("picture" in event.data) resolve(event.data.picture);
    else reject(new Error(event.data.refusal));
  });
  // The worker itself did not start, which says nothing about the picture.
  worker.addEventListener("error", () => {
    resolve(shrinkPicture(file, { decode: decodeBitmap, encode: encodeOnPage }));
  });
  worker.postMessage(file);
  return promise.finally(() => worker.terminate()); // one picture at a time: its memory is given back
}
