import type { Origin } from "./measures.ts";

/** A part of a page that stays in one piece. */
export interface Block {
  readonly height: number;
  readonly draw: (at: Origin) => void;
}

/** Draws blocks one under the other above a bottom; those that have no room are returned, with where it ended. */
export function drawBlocks(
  blocks: readonly Block[],
  { x, y }: Origin,
  bottom: number,
): { readonly rest: readonly Block[]; readonly bottom: number } {
  let below = y;
  for (const [index, block] of blocks.entries()) {
    if (below + block.height > bottom) return { rest: blocks.slice(index), bottom: below };
    block.draw({ x, y: below });
    below += block.height;
  }
  return { rest: [], bottom: below };
}

export const heightOf = (blocks: readonly Block[]): number =>
  blocks.reduce((sum, { height }) => sum + height, 0);
