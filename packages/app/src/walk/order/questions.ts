import type { Book, WalkKind } from "@witnessmark/book";
import type { SharedWalk, WalkOrder } from "@witnessmark/planner";

/** What the worker that plans is asked. Ids are those of checks and ground gear. */
export type OrderQuestion = {
  readonly book: Book;
  readonly kind: WalkKind;
  readonly also: readonly string[];
} & (
  | { readonly ask: "counts" }
  | { readonly ask: "by-hand"; readonly order: readonly string[] }
  | {
      readonly ask: "left";
      readonly left: readonly string[];
      readonly from: readonly [number, number] | undefined;
    }
  | {
      readonly ask: "shared";
      /** The order made by hand on this phone, where there is one. */
      readonly by: readonly string[] | undefined;
    }
);

export type OrderAnswer =
  | { readonly kind: "order"; readonly order: WalkOrder }
  | { readonly kind: "shared"; readonly shared: readonly [SharedWalk, SharedWalk] };
