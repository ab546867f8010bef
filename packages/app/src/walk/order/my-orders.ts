import type { WalkKind } from "@witnessmark/book";
import type { OrderedStop } from "@witnessmark/planner";
import { isRecord, stored } from "../../preferences/stored.ts";
import { numberIn, readStops } from "./stored-order.ts";

/** An order that a person made by hand, with the stances that were chosen for it. */
export interface MyOrder {
  readonly stops: readonly OrderedStop[];
  readonly walking_s: number;
  readonly walking_m: number;
}

/**
 * Orders made by hand, on this phone. An order is the habit of the one who walks: it changes nothing of what is asked
 * or counted, so it stands in no ledger, and nobody else's walk changes with it.
 */
const orders = stored<Readonly<Record<string, MyOrder>>>("my-orders", (found) =>
  Object.fromEntries(
    Object.entries(isRecord(found) ? found : {}).flatMap(([key, one]) => {
      const stops = isRecord(one) ? readStops(one["stops"]) : undefined;
      if (stops === undefined || !isRecord(one)) return [];
      return [[key, { stops, walking_s: numberIn(one, "walking_s"), walking_m: numberIn(one, "walking_m") }]];
    }),
  ),
);

const keyOf = (registration: string, kind: WalkKind): string => `${registration} ${kind}`;

export const myOrder = (registration: string, kind: WalkKind): MyOrder | undefined =>
  orders.get()[keyOf(registration, kind)];

/** The steps of an order made by hand, where there is one. */
export const myRow = (registration: string, kind: WalkKind): readonly string[] | undefined =>
  myOrder(registration, kind)?.stops.flatMap(({ steps }) => steps);

/** Keeps an order; nothing takes it back to the planned one. */
export function setMyOrder(registration: string, kind: WalkKind, order: MyOrder | undefined): void {
  const { [keyOf(registration, kind)]: _before, ...others } = orders.get();
  orders.set(order === undefined ? others : { ...others, [keyOf(registration, kind)]: order });
}

export const useMyOrders = (): unknown => orders.use();
