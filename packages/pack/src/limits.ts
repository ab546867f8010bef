/** A book and its pictures, as one file. */
export const MOST_PACK_B = 120_000_000;
/** A book of the reader's own limit. */
export const MOST_BOOK_B = 1_000_000;
/** What a server takes of one picture. */
export const MOST_PHOTO_B = 8 * 1024 * 1024;
export const MOST_PHOTOS = 400;
