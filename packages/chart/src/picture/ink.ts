/** A grey picture, row by row: 0 is black, 255 is white. */
export interface GreyImage {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8Array | Uint8ClampedArray;
}

/** How much darker than the paper around it each pixel is: 0 is paper, 1 is black. Row by row. */
export interface Ink {
  readonly width: number;
  readonly height: number;
  readonly data: Float32Array;
}

const TILE_px = 32;
/** Of the pixels of a tile, lightest first, the one that is taken for paper: lines and letters cover less than the rest. */
const PAPER_AT_1 = 0.1;

/** Grey from the pixels of a canvas (red, green, blue, opacity), as ITU-R BT.601 weighs them. */
export function greyOf(width: number, height: number, rgba: Uint8ClampedArray): GreyImage {
  const data = new Uint8ClampedArray(width * height);
  for (let i = 0; i < data.length; i += 1) {
    const at = 4 * i;
    data[i] = 0.299 * (rgba[at] ?? 0) + 0.587 * (rgba[at + 1] ?? 0) + 0.114 * (rgba[at + 2] ?? 0);
  }
  return { width, height, data };
}

/** The ink of a picture: light that falls off across the paper, as on a photograph, is taken out. */
export function inkOf(image: GreyImage): Ink {
  const { width, height, data } = image;
  const across = Math.max(1, Math.round(width / TILE_px));
  const down = Math.max(1, Math.round(height / TILE_px));
  const paper = paperOfTiles(image, across, down);
  const ink = new Float32Array(width * height);
  for (let y = 0; y < height; y += 1) {
    const rowAt = clamp(((y + 0.5) * down) / height - 0.5, 0, down - 1);
    const above = Math.floor(rowAt);
    const below = Math.min(above + 1, down - 1);
    for (let x = 0; x < width; x += 1) {
      const columnAt = clamp(((x + 0.5) * across) / width - 0.5, 0, across - 1);
      const left = Math.floor(columnAt);
      const right = Math.min(left + 1, across - 1);
      const upper = mix(paper[above * across + left], paper[above * across + right], columnAt - left);
      const lower = mix(paper[below * across + left], paper[below * across + right], columnAt - left);
      const light = mix(upper, lower, rowAt - above);
      ink[y * width + x] = clamp((light - (data[y * width + x] ?? 0)) / Math.max(light, 1), 0, 1);
    }
  }
  return { width, height, data: ink };
}

function paperOfTiles({ width, height, data }: GreyImage, across: number, down: number): Float32Array {
  const paper = new Float32Array(across * down);
  const counts = new Uint32Array(256);
  for (let row = 0; row < down; row += 1) {
    for (let column = 0; column < across; column += 1) {
      counts.fill(0);
      const fromX = Math.floor((column * width) / across);
      const toX = Math.floor(((column + 1) * width) / across);
      const fromY = Math.floor((row * height) / down);
      const toY = Math.floor(((row + 1) * height) / down);
      for (let y = fromY; y < toY; y += 1) {
        for (let x = fromX; x < toX; x += 1) {
          const grey = data[y * width + x] ?? 0;
          counts[grey] = (counts[grey] ?? 0) + 1;
        }
      }
      let left = PAPER_AT_1 * (toX - fromX) * (toY - fromY);
      let grey = 255;
      while (grey > 0 && left > (counts[grey] ?? 0)) {
        left -= counts[grey] ?? 0;
        grey -= 1;
      }
      paper[row * across + column] = grey;
    }
  }
  return paper;
}

/** The ink at a place between pixels; nothing beyond the edge. */
export function inkAt({ width, height, data }: Ink, x_px: number, y_px: number): number {
  const left = Math.floor(x_px);
  const top = Math.floor(y_px);
  if (left < 0 || top < 0 || left + 1 >= width || top + 1 >= height) return 0;
  const at = top * width + left;
  const upper = mix(data[at], data[at + 1], x_px - left);
  const lower = mix(data[at + width], data[at + width + 1], x_px - left);
  return mix(upper, lower, y_px - top);
}

const clamp = (value: number, least: number, most: number): number => Math.min(Math.max(value, least), most);
const mix = (one = 0, other = 0, share_1: number): number => one + (other - one) * share_1;
