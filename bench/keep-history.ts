import { canonical, type LedgerEvent } from "@witnessmark/ledger";
import type { OperatorStore } from "@witnessmark/store";

/** As a phone sends them: so many at once. */
const PAGE = 1000;

/** Puts a made history into a store, page by page, as if phones had sent it. */
export async function keepHistory(
  own: OperatorStore,
  aircraft: string,
  history: readonly LedgerEvent[],
): Promise<void> {
  for (let from = 0; from < history.length; from += PAGE) {
    const arrivals = history.slice(from, from + PAGE).map((event) => ({
      kind: "sound" as const,
      id: event.id,
      device: event.device,
      deviceSeq: event.deviceSeq,
      text: canonical(event),
    }));
    await own.append(aircraft, arrivals, Date.now());
  }
}
