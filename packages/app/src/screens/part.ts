import { type ComponentType, type LazyExoticComponent, lazy } from "react";

/** A part of the app that comes in a file of its own. */
export interface Part<P> {
  readonly Screen: LazyExoticComponent<ComponentType<P>>;
  /** Brings it before it is wanted. */
  fetch(): Promise<unknown>;
}

/**
 * A screen that is fetched when it is wanted, or before that. One that is there already is drawn at once: what has to
 * wait even for a moment, React shows 300 ms later.
 *
 * @param load brings the file and picks the screen out of it
 */
export function partOf<P>(load: () => Promise<ComponentType<P>>): Part<P> {
  let there: ComponentType<P> | undefined;
  const fetch = async (): Promise<ComponentType<P>> => {
    there ??= await load();
    return there;
  };
  const wanted = async () => ({ default: await fetch() });
  return { Screen: lazy(() => (there === undefined ? wanted() : atOnce({ default: there }))), fetch };
}

/** A promise that tells what it holds while it is asked; a real one does so after everything else. */
function atOnce<T>(value: T): Promise<T> {
  const told = {
    // biome-ignore lint/suspicious/noThenProperty: React asks for nothing else of it
    then: (tell: (value: T) => void) => tell(value),
  };
  return told as unknown as Promise<T>; // React calls its `then` alone, with what to do with the value
}
