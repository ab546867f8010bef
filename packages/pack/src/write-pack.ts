import { strToU8, type Zippable, zipSync } from "fflate";
import { MOST_PHOTO_B, MOST_PHOTOS } from "./limits.ts";
import { sizeText } from "./pack-fault.ts";
import { type PackedPhoto, photoName, pictureType, sha256Of } from "./photo.ts";

export interface Pack {
  /** The book, as YAML. */
  readonly text: string;
  readonly photos: readonly PackedPhoto[];
}

/** The same book and pictures give the same bytes: no clock goes in. */
const NO_TIME = new Date(1980, 0, 1);

/**
 * A book with its pictures as one ZIP file.
 *
 * @throws {RangeError} for a picture that no reader would take: too large, none, or not of its hash
 */
export async function writePack({ text, photos }: Pack): Promise<Uint8Array<ArrayBuffer>> {
  if (photos.length > MOST_PHOTOS) {
    throw new RangeError(`Expected at most ${MOST_PHOTOS} pictures, received ${photos.length}.`);
  }
  const files: Zippable = { "book.yaml": [strToU8(text), { level: 6, mtime: NO_TIME }] };
  for (const photo of photos) {
    if (photo.bytes.length > MOST_PHOTO_B) {
      throw new RangeError(
        `The picture ${photo.sha256} has ${sizeText(photo.bytes.length)}; at most ${sizeText(MOST_PHOTO_B)} are taken. Make it smaller.`,
      );
    }
    if (pictureType(photo.bytes) !== photo.mediaType || (await sha256Of(photo.bytes)) !== photo.sha256) {
      throw new RangeError(`The picture ${photo.sha256} is not what it is said to be.`);
    }
    // a picture is packed already
    files[photoName(photo)] = [photo.bytes, { level: 0, mtime: NO_TIME }];
  }
  return zipSync(files);
}
