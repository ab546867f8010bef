import type { Book, WalkKind } from "@witnessmark/book";
import { ORDER_VERSION, type WalkOrder } from "@witnessmark/planner";
import { isRecord, stored } from "../../preferences/stored.ts";
import { askOrder } from "./ask-order.ts";
import { numberIn, readStops } from "./stored-order.ts";

/** Orders that were planned, by the book's text, so that a walk is there at once when the app is opened again. */
const MOST_KEPT = 24;

interface Kept {
  readonly key: string;
  readonly order: WalkOrder;
}

const kept = stored<readonly Kept[]>("orders", (found) =>
  Array.isArray(found) ? found.flatMap((one: unknown) => readKept(one) ?? []) : [],
);

function readKept(found: unknown): Kept | undefined {
  const { key, order } = isRecord(found) ? found : {};
  if (typeof key !== "string" || !isRecord(order)) return undefined;
  const stops = readStops(order["stops"]);
  const follows = order["follows"];
  if (stops === undefined || (follows !== "manual" && follows !== "planned")) return undefined;
  const noWay = Array.isArray(order["noWay"]) ? order["noWay"].filter((id) => typeof id === "string") : [];
  const figures = {
    walking_s: numberIn(order, "walking_s"),
    walking_m: numberIn(order, "walking_m"),
    saves_s: numberIn(order, "saves_s"),
  };
  return { key, order: { follows, stops, noWay, ...figures } };
}

const keyOf = ({ sha256 }: Book, kind: WalkKind, also: readonly string[]): string =>
  [ORDER_VERSION, sha256, kind, ...also].join(" ");

const asked = new Map<string, Promise<WalkOrder>>();

/** The order that counts for a walk, where it is known already. */
export const knownOrder = (book: Book, kind: WalkKind, also: readonly string[]): WalkOrder | undefined => {
  const key = keyOf(book, kind, also);
  return kept.get().find((one) => one.key === key)?.order;
};

/** The order that counts, planned away from the screen where it is not known yet, and kept. */
export function plannedOrder(book: Book, kind: WalkKind, also: readonly string[]): Promise<WalkOrder> {
  const known = knownOrder(book, kind, also);
  if (known !== undefined) return Promise.resolve(known);
  const key = keyOf(book, kind, also);
  const waiting =
    asked.get(key) ??
    askOrder({ ask: "counts", book, kind, also }).then((order) => {
      kept.set([{ key, order }, ...kept.get().filter((one) => one.key !== key)].slice(0, MOST_KEPT));
      return order;
    });
  asked.set(key, waiting);
  waiting.then(
    () => asked.delete(key),
    () => asked.delete(key), // it is asked again when it is wanted again; whoever waits is told why
  );
  return waiting;
}

/** Draws again when an order has come to be known. */
export const useKnownOrders = (): unknown => kept.use();
