import { MOST_BOOK_B, MOST_PACK_B, MOST_PHOTO_B, MOST_PHOTOS } from "./limits.ts";
import { type PackFault, sizeText, Unreadable } from "./pack-fault.ts";
import { endingOf, type PackedPhoto, pictureType, sha256Of } from "./photo.ts";
import { unpackEntry } from "./unpack-entry.ts";
import type { Pack } from "./write-pack.ts";
import { shown, type ZipEntry, zipDirectory } from "./zip-directory.ts";

export type PackResult =
  | { readonly ok: true; readonly pack: Pack }
  | { readonly ok: false; readonly faults: readonly [PackFault, ...PackFault[]] };

const BOOK = "book.yaml";
const PHOTO = /^photos\/([0-9a-f]{64})\.(jpg|jpeg|png|webp)$/;
/** A folder stands for nothing, and unpacks to nothing. */
const FOLDER = "photos/";

/**
 * Reads a pack that came from anywhere. Nothing in it is trusted: only `book.yaml` and pictures that are pictures, each
 * of the hash it is named by, are taken, and never more bytes are unpacked than are allowed. The book's own text is for
 * `readBook` to judge.
 */
export async function readPack(bytes: Uint8Array<ArrayBuffer>): Promise<PackResult> {
  if (bytes.length > MOST_PACK_B) {
    return failed([
      {
        entry: "",
        says: `The pack has ${sizeText(bytes.length)}; at most ${sizeText(MOST_PACK_B)} are taken.`,
      },
    ]);
  }
  try {
    return await read(bytes, zipDirectory(bytes));
  } catch (error) {
    if (error instanceof Unreadable) return failed([error.fault]);
    throw error;
  }
}

async function read(bytes: Uint8Array, entries: readonly ZipEntry[]): Promise<PackResult> {
  const faults: PackFault[] = [];
  const files = entries.filter((entry) => !(entry.name === FOLDER && entry.real_B === 0 && !entry.isLink));
  const names = new Set<string>();
  for (const entry of files) {
    const says = nameFault(entry, names);
    if (says !== undefined) faults.push({ entry: shown(entry.name), says });
    names.add(entry.name.toLowerCase());
  }
  if (!files.some(({ name }) => name === BOOK)) {
    faults.push({ entry: "", says: "Expected a book.yaml in the pack, found none. Is it the right file?" });
  }
  if (files.length > MOST_PHOTOS + 1) {
    faults.push({ entry: "", says: `Expected at most ${MOST_PHOTOS} pictures, found ${files.length - 1}.` });
  }
  if (faults.length > 0) return failed(faults);
  let text = "";
  const photos: PackedPhoto[] = [];
  for (const entry of files) {
    try {
      if (entry.name === BOOK) text = textOf(unpackEntry(bytes, entry, MOST_BOOK_B));
      else photos.push(await photoOf(entry, unpackEntry(bytes, entry, MOST_PHOTO_B)));
    } catch (error) {
      if (!(error instanceof Unreadable)) throw error;
      faults.push({ ...error.fault, entry: shown(entry.name) });
    }
  }
  return faults.length > 0 ? failed(faults) : { ok: true, pack: { text, photos } };
}

function failed(faults: readonly PackFault[]): PackResult {
  const [first = { entry: "", says: "The pack cannot be read." }, ...rest] = faults;
  return { ok: false, faults: [first, ...rest] };
}

function nameFault(entry: ZipEntry, before: ReadonlySet<string>): string | undefined {
  const { name } = entry;
  if (entry.isLink) return "It is a link to another file. A pack holds files only.";
  if (name.startsWith("/") || /^[a-z]:/i.test(name) || name.includes("\\")) {
    return "It has an address outside the pack. A pack holds book.yaml and photos/ only.";
  }
  if (name.split("/").includes("..")) return "Its path climbs out of the pack. It was made to mislead.";
  if (before.has(name.toLowerCase())) return "It is in the pack twice. Pack it again.";
  if (name === BOOK && !entry.isFolder) return undefined;
  if (entry.isFolder || !PHOTO.test(name)) {
    return "Expected book.yaml, and pictures in photos/ named by their SHA-256 (.jpg, .png, .webp) only. Take it out, or pack the book again.";
  }
  return undefined;
}

async function photoOf({ name }: ZipEntry, bytes: Uint8Array<ArrayBuffer>): Promise<PackedPhoto> {
  const mediaType = pictureType(bytes);
  if (mediaType === undefined) throw new Unreadable(name, "It is no picture: expected JPEG, PNG or WebP.");
  const [, said = "", ending = ""] = PHOTO.exec(name) ?? [];
  if (ending.replace("jpeg", "jpg") !== endingOf(mediaType)) {
    throw new Unreadable(
      name,
      `It is called .${ending} and is a picture of another kind: .${endingOf(mediaType)}.`,
    );
  }
  const sha256 = await sha256Of(bytes);
  if (sha256 !== said) {
    throw new Unreadable(
      name,
      `Its bytes have the SHA-256 ${sha256}: the picture was changed. Pack the book again.`,
    );
  }
  return { sha256, mediaType, bytes };
}

function textOf(bytes: Uint8Array): string {
  try {
    return new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch (error) {
    if (error instanceof TypeError)
      throw new Unreadable(BOOK, "It is not text in UTF-8. Save the book as UTF-8 and pack it again.");
    throw error;
  }
}
