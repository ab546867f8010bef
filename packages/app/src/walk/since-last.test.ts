import { newId } from "@witnessmark/ledger";
import { expect, it } from "vitest";
import { demoBook, person, ToldLedger } from "../testing/told-ledger.ts";
import { sinceLast } from "./since-last.ts";

const FROM_MS = Date.parse("2026-11-12T08:00:00Z");

it("tells the next who walks it where it stands, what is fitted, what was said and filled up since, what is not right", async () => {
  const book = await demoBook("zz-skr");
  const gear = book.groundGear.find(({ count }) => count === 2);
  if (gear === undefined) throw new Error("expected a pair of something");
  const ledger = new ToldLedger("ZZ-SKR", FROM_MS);
  expect(sinceLast(book, ledger.state)).toEqual([]);
  const pilot = person("MK");
  await ledger.tell(
    pilot,
    {
      type: "servicing.recorded",
      body: { at: "2026-11-12T07:00:00Z", what: "refilled", of: "oil" }, // before the flight
    },
    {
      type: "flight.made",
      body: {
        made: newId(),
        from: "ZZTW",
        to: "ZZQN",
        takeOff: "2026-11-12T07:10:00Z",
        landing: "2026-11-12T07:50:00Z",
        landings: { day: 1, night: 0, nightFullStop: 0 },
        words: "Door light flickers",
      },
    },
    {
      type: "servicing.recorded",
      body: { at: "2026-11-12T07:55:00Z", what: "refilled", of: "fuel" },
    },
    { type: "groundGear.fitted", body: { item: gear.id, count: 2 } },
    { type: "aircraft.parked", body: { at: "2026-11-12T07:58:00Z", where: "Stand 4", secured: "Tied down" } },
    { type: "discrepancy.raised", body: { discrepancy: newId(), words: "Boot is split" } },
  );
  expect(sinceLast(book, ledger.state).map(({ words }) => words)).toEqual([
    "Parked: Stand 4. Tied down",
    "Ground gear fitted: 2 pieces",
    "MK of the last flight: “Door light flickers”",
    "Since then: fuel refilled",
    "One discrepancy open: Boot is split",
  ]);
});
