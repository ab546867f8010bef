import type { Listed } from "./draft.ts";

/** Items by id; of two with one id, which is a fault of its own, the first. */
export const firstById = <T extends { readonly id: string }>(
  items: readonly Listed<T>[],
): ReadonlyMap<string, T> => new Map(items.toReversed().map(({ value }) => [value.id, value]));
