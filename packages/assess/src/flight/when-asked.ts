/** Made when somebody first asks for it, and kept. @param make gives the same whenever it is called */
export function whenAsked<T>(make: () => T): () => T {
  let made: { readonly value: T } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}
