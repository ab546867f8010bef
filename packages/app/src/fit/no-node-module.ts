/**
 * Stands for `node:module` in the built app. The solver's loader asks for it in Node alone, and a browser has none; with
 * this in its place the build knows that nothing is forgotten.
 */
export function createRequire(): never {
  throw new Error("expected a browser: `createRequire` is for Node alone");
}
