import canonicalize from "canonicalize";

/**
 * RFC 8785 canonical JSON: one text for one value, whatever wrote it, so that its hash means something.
 *
 * @throws {Error} when the value has no such text: NaN, an infinity, a lone surrogate, `undefined`, a circle
 */
export function canonical(value: unknown): string {
  const text = canonicalize(value);
  if (text === undefined) {
    throw new Error(`canonical JSON: expected a JSON value, received ${typeof value}`);
  }
  return text;
}
