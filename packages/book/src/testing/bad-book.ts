/** A book with one thing wrong: a good book for tests after some edits, each of a text that is there once. */
export interface BadBook {
  readonly wrong: string;
  /** ▶ stands where a fault is to be found. */
  readonly edits: readonly (readonly [from: string, to: string])[];
  /** What is said at each ▶, in the order of the text: the path and the rest of the sentence. */
  readonly says: readonly string[];
}
