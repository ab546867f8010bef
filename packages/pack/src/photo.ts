/** A picture of what right looks like. It is known by its hash: a check of the book names it so. */
export interface PackedPhoto {
  /** SHA-256 of its bytes, hexadecimal. */
  readonly sha256: string;
  readonly mediaType: PictureType;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

export type PictureType = "image/jpeg" | "image/png" | "image/webp";

const ENDINGS = { "image/jpeg": "jpg", "image/png": "png", "image/webp": "webp" } as const;

/** What a picture is by its first bytes, whatever its name says; `undefined` for anything else. */
export function pictureType(bytes: Uint8Array): PictureType | undefined {
  const starts = (at: number, ...expected: readonly number[]) =>
    expected.every((byte, i) => bytes[at + i] === byte);
  if (starts(0, 0xff, 0xd8, 0xff)) return "image/jpeg";
  if (starts(0, 0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a)) return "image/png";
  if (starts(0, 0x52, 0x49, 0x46, 0x46) && starts(8, 0x57, 0x45, 0x42, 0x50)) return "image/webp";
  return undefined;
}

/** Its name in a pack. */
export const photoName = ({ sha256, mediaType }: PackedPhoto): string =>
  `photos/${sha256}.${ENDINGS[mediaType]}`;

export const endingOf = (mediaType: PictureType): string => ENDINGS[mediaType];

/** SHA-256 of bytes, hexadecimal. */
export async function sha256Of(bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  const digest = await crypto.subtle.digest("SHA-256", bytes);
  return Array.from(new Uint8Array(digest), (byte) => byte.toString(16).padStart(2, "0")).join("");
}
