/** The first 16 figures of a hash in groups of four, as a person compares them. */
export const grouped = (hash: string): string =>
  (hash.slice(0, 16).toUpperCase().match(/.{4}/g) ?? []).join(" ");
