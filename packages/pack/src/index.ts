export { MOST_BOOK_B, MOST_PACK_B, MOST_PHOTO_B, MOST_PHOTOS } from "./limits.ts";
export type { PackFault } from "./pack-fault.ts";
export { endingOf, type PackedPhoto, type PictureType, pictureType, sha256Of } from "./photo.ts";
export { photosOf } from "./photos-of.ts";
export { type PackResult, readPack } from "./read-pack.ts";
export { type Pack, writePack } from "./write-pack.ts";
