import { inflateSync } from "node:zlib";

/**
 * How much of a PNG differs from the pixel beside or above it: 0 for a sheet of one colour, some hundredths for a
 * screen with words and lines.
 *
 * @throws {Error} when it is no PNG
 */
export function busyShare_1(png: Buffer): number {
  if (png.subarray(1, 4).toString("latin1") !== "PNG") throw new Error("png: expected a PNG");
  const parts: Buffer[] = [];
  for (let at = 8; at < png.length; ) {
    const size_B = png.readUInt32BE(at);
    if (png.toString("latin1", at + 4, at + 8) === "IDAT") parts.push(png.subarray(at + 8, at + 8 + size_B));
    at += size_B + 12;
  }
  // what PNG keeps of a line are its differences, so that a plain sheet is all zeros
  const differences = inflateSync(Buffer.concat(parts));
  const busy = differences.reduce((count, value) => count + (value === 0 ? 0 : 1), 0);
  return busy / differences.length;
}
