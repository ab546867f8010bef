import "fake-indexeddb/auto";
import { readBook } from "@witnessmark/book";
import { reachServer } from "../exchange/reach-server.ts";
import { type OpenKeep, openKeep } from "../keep.ts";
import type { KeepOptions } from "../options.ts";
import type { FakeServer } from "./fake-server.ts";

let phones = 0;

/** A new phone's name: nothing is kept under it yet. */
export const newPhone = (): string => `phone-${++phones}-${Math.random()}`;

/** 12 November 2026, 06:00 UTC: an invented morning. */
export const MORNING_MS = Date.UTC(2026, 10, 12, 6);

/** Opens a phone with someone in whose hand it lies. */
export async function pickUp(
  server: FakeServer,
  name: string,
  options: Partial<KeepOptions> = {},
): Promise<OpenKeep> {
  const keep = await openKeep({
    name,
    server: reachServer(server.fetch),
    now_ms: () => MORNING_MS,
    liveSource: null,
    automatic: false,
    later: () => {},
    report: () => {},
    readBook, // there are no workers here
    ...options,
  });
  if (keep.snapshot().phase === "ready" && keep.snapshot().person === null) {
    await keep.introduce({ name: "Ida Holm", role: "pilot" });
  }
  return keep;
}
