import { MOST_PHOTOS } from "./limits.ts";
import { Unreadable } from "./pack-fault.ts";

/** One file of a ZIP, as its directory has it. Nothing of it is believed until its bytes agree. */
export interface ZipEntry {
  readonly name: string;
  readonly method: "stored" | "deflated";
  readonly packed_B: number;
  readonly real_B: number;
  readonly crc32: number;
  /** Where its own header begins. */
  readonly header: number;
  /** Where its packed bytes begin. */
  readonly from: number;
  readonly isLink: boolean;
  readonly isFolder: boolean;
}

const END = 0x06054b50;
const DIRECTORY = 0x02014b50;
const LOCAL = 0x04034b50;
const END_B = 22;
const LONGEST_NOTE_B = 0xffff;
const ENCRYPTED = 0x1;
const FOLDER = 0x10;
const UNIX = 3;
const LINK = 0o120000;
const KIND = 0o170000;
const MOST_ENTRIES = MOST_PHOTOS + 10;

/**
 * The files of a ZIP by its directory, each compared with its own header.
 *
 * @throws {Unreadable} for what is no plain ZIP: cut short, in parts, locked, with files that lie over each other
 * @source PKWARE, APPNOTE.TXT, .ZIP File Format Specification, 6.3.10, sections 4.3.7, 4.3.12 and 4.3.16
 */
export function zipDirectory(bytes: Uint8Array): readonly ZipEntry[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const end = endOf(view);
  const count = view.getUint16(end + 10, true);
  const size = view.getUint32(end + 12, true);
  const start = view.getUint32(end + 16, true);
  if (view.getUint16(end + 4, true) !== 0 || view.getUint16(end + 8, true) !== count) {
    throw new Unreadable("", "Expected one ZIP file, found a part of one. Pack it again in one piece.");
  }
  if (count > MOST_ENTRIES) {
    throw new Unreadable("", `Expected at most ${MOST_ENTRIES} files in the pack, found ${count}.`);
  }
  if (start + size > end) throw damaged();
  const entries: ZipEntry[] = [];
  let at = start;
  for (let i = 0; i < count; i += 1) {
    if (at + 46 > end || view.getUint32(at, true) !== DIRECTORY) throw damaged();
    const next =
      at + 46 + view.getUint16(at + 28, true) + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
    if (next > end) throw damaged();
    entries.push(entryAt(bytes, view, at, start));
    at = next;
  }
  refuseOverlap(entries);
  return entries;
}

const damaged = (): Unreadable =>
  new Unreadable("", "The pack is damaged or was cut short on its way. Have it sent again.");

/** The end record stands at the very end: what hides behind it is no part of a pack. */
function endOf(view: DataView): number {
  const lowest = Math.max(0, view.byteLength - END_B - LONGEST_NOTE_B);
  for (let at = view.byteLength - END_B; at >= lowest; at -= 1) {
    if (view.getUint32(at, true) === END && at + END_B + view.getUint16(at + 20, true) === view.byteLength)
      return at;
  }
  throw new Unreadable(
    "",
    "Expected a ZIP file with a book in it, found something else. Is it the right file?",
  );
}

function entryAt(bytes: Uint8Array, view: DataView, at: number, limit: number): ZipEntry {
  const name = nameAt(bytes, at + 46, view.getUint16(at + 28, true));
  const flags = view.getUint16(at + 8, true);
  const method = view.getUint16(at + 10, true);
  const packed_B = view.getUint32(at + 20, true);
  const real_B = view.getUint32(at + 24, true);
  const attributes = view.getUint32(at + 38, true);
  const local = view.getUint32(at + 42, true);
  if ((flags & ENCRYPTED) !== 0) {
    throw new Unreadable(name, "It is locked with a password. Pack it again without one.");
  }
  if (method !== 0 && method !== 8) {
    throw new Unreadable(
      name,
      `It is packed by method ${method}; expected stored or deflated. Pack it again as a plain ZIP.`,
    );
  }
  if (packed_B === 0xffffffff || real_B === 0xffffffff || local === 0xffffffff) {
    throw new Unreadable(
      name,
      "It is in a form for files of more than 4 GB. A book with its pictures is far smaller.",
    );
  }
  if (local + 30 > limit || view.getUint32(local, true) !== LOCAL) throw damaged();
  const localName = nameAt(bytes, local + 30, view.getUint16(local + 26, true));
  if (localName !== name) {
    throw new Unreadable(
      name,
      `The pack calls it ${shown(localName)} in another place. It was made to mislead, or is damaged.`,
    );
  }
  const from = local + 30 + view.getUint16(local + 26, true) + view.getUint16(local + 28, true);
  if (from + packed_B > limit) throw damaged();
  const isUnix = view.getUint16(at + 4, true) >> 8 === UNIX;
  return {
    name,
    method: method === 0 ? "stored" : "deflated",
    packed_B,
    real_B,
    crc32: view.getUint32(at + 16, true),
    header: local,
    from,
    isLink: isUnix && ((attributes >>> 16) & KIND) === LINK,
    isFolder: name.endsWith("/") || (attributes & FOLDER) !== 0,
  };
}

/** A name in UTF-8; bytes that are none show as such, and then match no name that is allowed. */
const nameAt = (bytes: Uint8Array, from: number, length: number): string =>
  new TextDecoder().decode(bytes.subarray(from, from + length));

/** A name as a person may see it: nothing in it moves the cursor or fills the screen. */
export const shown = (name: string): string =>
  name.replace(/[^\x20-\x7e\u00a1-\uffff]/gu, "?").slice(0, 80) || "a file without a name";

/** Files that share bytes unpack to more than was packed. */
function refuseOverlap(entries: readonly ZipEntry[]): void {
  const sorted = entries.toSorted((one, other) => one.header - other.header);
  for (const [i, entry] of sorted.entries()) {
    const before = sorted[i - 1];
    if (before !== undefined && before.from + before.packed_B > entry.header) {
      throw new Unreadable(
        entry.name,
        `It lies over ${shown(before.name)} in the pack. It was made to mislead, or is damaged.`,
      );
    }
  }
}
