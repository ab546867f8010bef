import { type EventDraft, makeEvents, newId } from "@witnessmark/ledger";
import { expect, it } from "vitest";
import { correctionsOf } from "./writers.ts";

it("a file that was taken back in one step is one correction, which says how much it was", async () => {
  const bundle = newId();
  const read = (at: string): EventDraft => ({
    type: "reading.imported",
    body: { import: bundle, check: "tyre", gauge: "g", at, read: { value: 5.2, unit: "bar" } },
  });
  const { events } = await makeEvents(
    {
      operator: "own",
      aircraft: "ZZ-SKR",
      device: newId(),
      author: { id: newId(), name: "MK", role: "pilot" },
      last: null,
      clock: null,
      now_ms: Date.UTC(2026, 10, 12, 8),
      zone_min: 0,
      newId,
      key: null,
    },
    [
      read("2024-03-01T09:00:00Z"),
      read("2024-03-02T09:00:00Z"),
      { type: "event.withdrawn", body: { event: bundle, why: "The wrong file" } },
    ],
  );
  expect(correctionsOf(events, () => true)).toMatchObject([
    { what: "What a file brought in, 2 entries", taken: bundle, why: "The wrong file" },
  ]);
});
