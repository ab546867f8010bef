import { decodeBitmap, encodeOffscreen, type SmallPicture, shrinkPicture } from "./shrink.ts";

/** Answers each picture with a small one, or with the sentence that says why not. */
export type ShrinkAnswer = { readonly picture: SmallPicture } | { readonly refusal: string };

addEventListener("message", (event: MessageEvent<Blob>) => {
  shrinkPicture(event.data, { decode: decodeBitmap, encode: encodeOffscreen }).then(
    (picture) => postMessage({ picture } satisfies ShrinkAnswer),
    (error: unknown) => {
      const refusal = error instanceof Error ? error.message : String(error);
      postMessage({ refusal } satisfies ShrinkAnswer);
    },
  );
});
