const TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let sum = byte;
  for (let bit = 0; bit < 8; bit += 1) sum = (sum & 1) === 1 ? (sum >>> 1) ^ 0xedb88320 : sum >>> 1;
  return sum;
});

/** The check sum of a ZIP's files. @source ISO 3309, with the reversed polynomial EDB88320 */
export function crc32(bytes: Uint8Array): number {
  let sum = 0xffffffff;
  for (const byte of bytes) sum = (sum >>> 8) ^ (TABLE[(sum ^ byte) & 0xff] ?? 0);
  return (sum ^ 0xffffffff) >>> 0;
}
