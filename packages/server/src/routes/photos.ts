import { createRoute } from "@hono/zod-openapi";
import { sha256 as sha256Of } from "@witnessmark/ledger";
import { bodyLimit } from "hono/body-limit";
import { z } from "zod";
import { PHOTO_MOST_B } from "../guard/limits.ts";
import { ENDINGS, pictureType } from "../picture-type.ts";
import { Refusal } from "../refusal.ts";
import { Sha256Param } from "../schemas.ts";
import { newRoutes, refusals } from "./new-routes.ts";
import type { Parts } from "./parts.ts";

const params = z.object({ sha256: Sha256Param });
const picture = { schema: z.custom<ArrayBuffer>(() => true).meta({ type: "string", format: "binary" }) };
const pictures = { "image/jpeg": picture, "image/png": picture, "image/webp": picture };

const put = createRoute({
  method: "put",
  path: "/photos/{sha256}",
  summary: "Send a picture; sending it again changes nothing",
  description: `JPEG, PNG or WebP, at most ${PHOTO_MOST_B} bytes. Its bytes must have the hash in the address.`,
  middleware: [
    bodyLimit({
      maxSize: PHOTO_MOST_B,
      onError: () => {
        throw new Refusal(
          413,
          "too-large",
          `A picture is at most ${PHOTO_MOST_B} bytes. Send a smaller one.`,
        );
      },
    }),
  ],
  // The body is described for readers; its bytes are judged below, whatever type is given.
  request: { params, body: { required: true, content: pictures } },
  responses: { 201: { description: "Kept" }, 204: { description: "It was there already" }, ...refusals },
});

const get = createRoute({
  method: "get",
  path: "/photos/{sha256}",
  summary: "Get a picture; HEAD asks whether it is here",
  request: { params },
  responses: { 200: { description: "The picture", content: pictures }, ...refusals },
});

export function photoRoutes({ own, now_ms }: Parts) {
  return newRoutes()
    .openapi(put, async (c) => {
      const { sha256 } = c.req.valid("param");
      // Known by its hash: nothing new can be in it, so its bytes need not be looked at.
      if (await own.hasPhoto(sha256)) return c.body(null, 204);
      const bytes = new Uint8Array(await c.req.arrayBuffer());
      const mediaType = pictureType(bytes);
      if (mediaType === null) {
        throw new Refusal(
          415,
          "no-picture",
          "Expected a JPEG, PNG or WebP picture; the bytes are none of these.",
        );
      }
      const hash = await sha256Of(bytes);
      if (hash !== sha256) {
        throw new Refusal(
          422,
          "another-hash",
          `The bytes have the SHA-256 ${hash}, not ${sha256}: they were changed on the way. Send the picture again.`,
        );
      }
      const outcome = await own.putPhoto(sha256, { mediaType, bytes }, now_ms());
      return c.body(null, outcome === "stored" ? 201 : 204);
    })
    .openapi(get, async (c) => {
      const { sha256 } = c.req.valid("param");
      if (c.req.method === "HEAD") {
        if (!(await own.hasPhoto(sha256))) throw missing(sha256);
        return c.body(null, 200);
      }
      const photo = await own.getPhoto(sha256);
      if (photo === null) throw missing(sha256);
      const mediaType = pictureType(photo.bytes);
      if (mediaType === null) throw new Refusal(500, "database-damaged", `The picture ${sha256} is damaged.`);
      return c.body(photo.bytes, 200, {
        "Content-Type": mediaType,
        "Content-Disposition": `inline; filename="${sha256.slice(0, 16)}.${ENDINGS[mediaType]}"`,
        // Opened by itself, a picture is a picture: nothing in it runs.
        "Content-Security-Policy": "default-src 'none'; img-src 'self'; sandbox",
        "Cache-Control": "private, max-age=31536000, immutable",
      });
    });
}

function missing(sha256: string): Refusal {
  return new Refusal(
    404,
    "no-such-photo",
    `There is no picture ${sha256} here (yet). The phone that took it may not have sent it.`,
  );
}
