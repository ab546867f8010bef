/** The key with its value where there is one, else nothing: an absent key and an `undefined` one are not the same. */
export function given<K extends string, V>(key: K, value: V | undefined): { readonly [P in K]?: V } {
  // The compiler takes a computed key for any string.
  return (value === undefined ? {} : { [key]: value }) as { readonly [P in K]?: V };
}
