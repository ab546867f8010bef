/*
 * Draws the icons into public/ from the mark's own geometry: a nut with its stripe running off both edges.
 * Run with `node make-icons.ts` after a change here; the pictures are kept in the repository.
 */
import { writeFileSync } from "node:fs";
import { crc32, deflateSync } from "node:zlib";

/** Day paper, ink and paint. */
const PAPER = "#FBFCF9";
const INK = "#0F1C28";
const PAINT = "#E9107A";

/** The 48 cut of the mark, in units of a 48-unit square about 0,0. */
const STRIPE = 7.2;
const EDGE = 2.2;
/** Larger than the mark's 15.5, because nothing stands beside an icon. */
const NUT = 17;
/** Inside the circle of 80 % that a maskable icon is sure to keep. */
const NUT_MASKABLE = 14.5;

function corners(radius: number): [number, number][] {
  return Array.from({ length: 6 }, (_, i) => {
    const angle = ((i * 60 - 90) * Math.PI) / 180;
    return [radius * Math.cos(angle), radius * Math.sin(angle)];
  });
}

function svg(radius: number): string {
  const points = corners(radius)
    .map(([x, y]) => `${x.toFixed(2)},${y.toFixed(2)}`)
    .join(" ");
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="-24 -24 48 48" width="512" height="512">
  <title>Witnessmark</title>
  <rect x="-24" y="-24" width="48" height="48" fill="${PAPER}"/>
  <polygon points="${points}" fill="${PAPER}" stroke="${INK}" stroke-width="${EDGE}" stroke-linejoin="round"/>
  <rect x="${-STRIPE / 2}" y="-24" width="${STRIPE}" height="48" fill="${PAINT}"/>
</svg>
`;
}

function rgb(hex: string): [number, number, number] {
  const value = Number.parseInt(hex.slice(1), 16);
  return [value >> 16, (value >> 8) & 255, value & 255];
}

/** The colour at one place of the 48-unit square; stripe over nut's edge over paper, as in the SVG. */
function colourAt(x: number, y: number, nut: readonly [number, number][]): [number, number, number] {
  if (Math.abs(x) <= STRIPE / 2) return rgb(PAINT);
  for (const [i, [ax, ay]] of nut.entries()) {
    const [bx, by] = nut[(i + 1) % nut.length] ?? [ax, ay];
    const [dx, dy] = [bx - ax, by - ay];
    const along = Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy)));
    if (Math.hypot(x - ax - along * dx, y - ay - along * dy) <= EDGE / 2) return rgb(INK);
  }
  return rgb(PAPER);
}

function chunk(type: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(type, "latin1"), data]);
  const out = Buffer.alloc(body.length + 8);
  out.writeUInt32BE(data.length, 0);
  body.copy(out, 4);
  out.writeUInt32BE(crc32(body), body.length + 4);
  return out;
}

function png(size_px: number, radius: number): Buffer {
  const nut = corners(radius);
  const samples = 6;
  const rows = Buffer.alloc(size_px * (size_px * 3 + 1));
  for (let row = 0; row < size_px; row++) {
    for (let column = 0; column < size_px; column++) {
      const sum = [0, 0, 0];
      for (let s = 0; s < samples * samples; s++) {
        const x = ((column + ((s % samples) + 0.5) / samples) / size_px) * 48 - 24;
        const y = ((row + (Math.floor(s / samples) + 0.5) / samples) / size_px) * 48 - 24;
        for (const [i, part] of colourAt(x, y, nut).entries()) sum[i] = (sum[i] ?? 0) + part;
      }
      const at = row * (size_px * 3 + 1) + 1 + column * 3;
      for (const [i, part] of sum.entries()) rows[at + i] = Math.round(part / samples ** 2);
    }
  }
  const header = Buffer.alloc(13);
  header.writeUInt32BE(size_px, 0);
  header.writeUInt32BE(size_px, 4);
  header.set([8, 2, 0, 0, 0], 8); // 8 bits a channel, RGB, no interlace
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk("IHDR", header),
    chunk("IDAT", deflateSync(rows, { level: 9 })),
    chunk("IEND", Buffer.alloc(0)),
  ]);
}

const into = (name: string) => new URL(`public/${name}`, import.meta.url);
writeFileSync(into("icon.svg"), svg(NUT));
writeFileSync(into("icon-192.png"), png(192, NUT));
writeFileSync(into("icon-512.png"), png(512, NUT));
writeFileSync(into("icon-maskable-512.png"), png(512, NUT_MASKABLE));
writeFileSync(into("apple-touch-icon.png"), png(180, NUT_MASKABLE));
