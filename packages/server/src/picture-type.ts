export type PictureType = "image/jpeg" | "image/png" | "image/webp";

/**
 * What kind of picture the bytes are, by how they begin; `null` when they are none of these. What the sender says of
 * them counts for nothing.
 *
 * @source JPEG: ITU-T T.81 annex B, SOI marker then another marker; PNG: ISO/IEC 15948 clause 5.2; WebP: RFC 9649 section 2.4
 */
export function pictureType(bytes: Uint8Array): PictureType | null {
  const begins = (at: number, ...with_: readonly number[]) =>
    with_.every((byte, index) => bytes[at + index] === byte);
  if (begins(0, 0xff, 0xd8, 0xff)) return "image/jpeg";
  if (begins(0, 0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a)) return "image/png";
  if (begins(0, 0x52, 0x49, 0x46, 0x46) && begins(8, 0x57, 0x45, 0x42, 0x50)) return "image/webp";
  return null;
}

export const ENDINGS: Readonly<Record<PictureType, string>> = {
  "image/jpeg": "jpg",
  "image/png": "png",
  "image/webp": "webp",
};
