import type { Loading } from "@witnessmark/book";

/** What the steppers change: a seat, a bay (one thing in it), a tank, or all tanks together. */
export type InHand =
  | { readonly kind: "station"; readonly id: string; readonly item?: string }
  | { readonly kind: "tank"; readonly id: string }
  | { readonly kind: "tanks" };

/** Whether something drawn for a station or a tank is in hand. */
export const isInHand = (hand: InHand, kind: "station" | "tank", id: string): boolean =>
  hand.kind === "tanks" ? kind === "tank" : hand.kind === kind && hand.id === id;

/** What one begins with: the seat that the aircraft is flown from. */
export function firstInHand({ stations }: Loading): InHand {
  const first = stations.find(({ crew }) => crew) ?? stations[0];
  return first === undefined ? { kind: "tanks" } : { kind: "station", id: first.id };
}
