import type { Book, Stance } from "@witnessmark/book";
import { isInside } from "../geometry/convex.ts";
import { obstaclesOf } from "../geometry/obstacles.ts";

/** Whether one stands where a propeller would turn, or so near beside it that a blade may be touched. */
export const isInArc = (book: Pick<Book, "geometry">, { place, posture }: Stance): boolean =>
  posture !== "inside" &&
  obstaclesOf(book.geometry).some(
    ({ propeller, corners }) => propeller !== undefined && isInside(corners, place),
  );
