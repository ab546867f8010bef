import { expect, it } from "vitest";
import type { LedgerEvent } from "../event.ts";
import { generateHistory } from "../testing/generate.ts";
import { SoundStream } from "./sound-stream.ts";
import { verifyLedger } from "./verify-ledger.ts";

async function isSound(events: readonly LedgerEvent[]): Promise<boolean> {
  const stream = new SoundStream();
  for (let from = 0; from < events.length; from += 50) await stream.see(events.slice(from, from + 50));
  return stream.isSound();
}

const history = await generateHistory({ years: 1, flightsPerYear: 4, seed: 2, seal: "signed" });
const at = Math.floor(history.length / 2);
const decided = history.findIndex(({ type }) => type === "decision.signed");
const changed = (place: number, change: Partial<LedgerEvent>) =>
  history.map(
    (event, index): LedgerEvent => (index === place ? ({ ...event, ...change } as LedgerEvent) : event),
  ); // as a file might hold it

it.each<[string, readonly LedgerEvent[], boolean]>([
  ["a ledger as it was made", history, true],
  ["in any order of arrival", history.toReversed(), true],
  ["one event missing", history.filter((_event, index) => index !== at), false],
  ["one event twice", [...history, ...history.slice(at, at + 1)], false],
  ["one event changed", changed(at, { recordedAt: "2031-05-05T00:00:00.000+00:00" }), false],
  ["another hash", changed(at, { hash: "f".repeat(64) }), false],
  ["another signature", changed(decided, { signature: "A".repeat(86) }), false],
  ["of two aircraft", changed(at, { aircraft: "ZZ-DUN" }), false],
])("says of %s what the whole check says", async (_name, events, sound) => {
  expect(await isSound(events)).toBe(sound);
  expect((await verifyLedger(events)).sound).toBe(sound);
});
