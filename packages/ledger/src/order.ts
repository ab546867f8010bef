/** What orders events on one aircraft, the same on every phone. */
export interface OrderKey {
  readonly hlc: string;
  readonly device: string;
  readonly deviceSeq: number;
}

/** Negative when `a` comes first in the ledger's one total order, positive when `b` does, 0 when neither. */
export function compareOrder(a: OrderKey, b: OrderKey): number {
  if (a.hlc !== b.hlc) return a.hlc < b.hlc ? -1 : 1;
  if (a.device !== b.device) return a.device < b.device ? -1 : 1;
  return a.deviceSeq - b.deviceSeq;
}

/**
 * As `compareOrder`; two events of one device with one deviceSeq (a device that was restored from an old copy) are
 * ordered by id, so that no two different events are equal.
 */
export function compareEvents(
  a: OrderKey & { readonly id: string },
  b: OrderKey & { readonly id: string },
): number {
  const order = compareOrder(a, b);
  if (order !== 0 || a.id === b.id) return order;
  return a.id < b.id ? -1 : 1;
}
