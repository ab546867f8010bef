import { Inflate } from "fflate";
import { crc32 } from "./crc32.ts";
import { sizeText, Unreadable } from "./pack-fault.ts";
import type { ZipEntry } from "./zip-directory.ts";

/** Packed bytes are unpacked in pieces of this size, so that a bomb is noticed before it is whole. */
const PIECE_B = 16_384;

/**
 * The bytes of one file: at most `most_B` are ever unpacked, whatever the pack says of their number.
 *
 * @throws {Unreadable} when it is too large, damaged, or not of the size and sum that the pack says
 */
export function unpackEntry(bytes: Uint8Array, entry: ZipEntry, most_B: number): Uint8Array<ArrayBuffer> {
  if (entry.real_B > most_B) throw tooLarge(entry, entry.real_B, most_B);
  const packed = bytes.subarray(entry.from, entry.from + entry.packed_B);
  const real = entry.method === "stored" ? new Uint8Array(packed) : inflated(packed, entry, most_B);
  if (real.length > most_B) throw tooLarge(entry, real.length, most_B);
  if (real.length !== entry.real_B || crc32(real) !== entry.crc32) {
    throw new Unreadable(
      entry.name,
      "Its bytes are not those that were packed: it is damaged. Have the pack sent again.",
    );
  }
  return real;
}

const tooLarge = ({ name }: ZipEntry, size: number, most_B: number): Unreadable =>
  new Unreadable(
    name,
    name.startsWith("photos/")
      ? `The picture has ${sizeText(size)}; at most ${sizeText(most_B)} are taken. Make it smaller and pack it again.`
      : `It has ${sizeText(size)}; at most ${sizeText(most_B)} are taken. Is it the right file?`,
  );

function inflated(packed: Uint8Array, entry: ZipEntry, most_B: number): Uint8Array<ArrayBuffer> {
  const pieces: Uint8Array[] = [];
  let size = 0;
  const inflate = new Inflate((piece) => {
    size += piece.length;
    pieces.push(piece);
  });
  try {
    for (let at = 0; at < packed.length; at += PIECE_B) {
      inflate.push(packed.subarray(at, at + PIECE_B), at + PIECE_B >= packed.length);
      if (size > Math.min(most_B, entry.real_B)) throw tooLarge(entry, size, Math.min(most_B, entry.real_B));
    }
  } catch (error) {
    if (error instanceof Unreadable) throw error;
    throw new Unreadable(entry.name, "It cannot be unpacked: it is damaged. Have the pack sent again.");
  }
  const whole = new Uint8Array(size);
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}
