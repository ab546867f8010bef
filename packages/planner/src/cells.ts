// Reads of typed arrays at places that are inside by construction. The casts are safe there, and spare the innermost
// loops of the search a comparison at every step. One function for each type keeps each of them fast.

export const i32 = (cells: Int32Array, at: number): number => cells[at] as number; // inside by construction
export const f64 = (cells: Float64Array, at: number): number => cells[at] as number; // inside by construction
export const u8 = (cells: Uint8Array, at: number): number => cells[at] as number; // inside by construction
