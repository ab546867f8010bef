import { assess } from "@witnessmark/assess";
import { type AddedItem, type AircraftState, fold } from "@witnessmark/ledger";
import { beforeAll, expect, it } from "vitest";
import { demoLedger } from "../testing/demo-ledger.ts";
import { goodFlight } from "../testing/flights.ts";
import { askFlight } from "./flight-ask.ts";
import { numbersOf } from "./numbers.ts";

let before: AircraftState;
let book: Awaited<ReturnType<typeof demoLedger>>["book"];
const NOW_MS = Date.parse(goodFlight.offBlocks) - 20 * 60_000;

beforeAll(async () => {
  const ledger = await demoLedger(goodFlight);
  before = fold(ledger.events);
  ({ book } = ledger);
});

const ITEM: AddedItem = {
  id: "inspection-100h-own",
  name: "100 h",
  about: "aircraft",
  limits: [{ by: "counter", counter: "airframe-hours", every: 100 }],
  combine: "first",
  recurring: true,
  endsLife: false,
  why: "It is asked for.",
};

/** With an inspection after which so many hours were flown. */
function lineAfter(flown_h: number) {
  const origin = {
    event: "e",
    device: "d",
    deviceSeq: 1,
    author: { id: "p", name: "MK", role: "pilot" },
    hlc: "0",
    recordedAt: "2026-11-10T10:00:00Z",
  } as const;
  const shown = 1200 + flown_h;
  const state: AircraftState = {
    ...before,
    happenings: [],
    timedAdded: new Map([[ITEM.id, { ...origin, item: ITEM }]]),
    timedDropped: new Map(book.timedItems.map(({ id }) => [id, { ...origin, why: "Not asked here" }])),
    timedDone: new Map([
      [
        ITEM.id,
        [{ ...origin, item: ITEM.id, on: "2026-10-01", counters: { "airframe-hours": 1200 }, by: "JO" }],
      ],
    ]),
    counters: new Map([
      [
        "airframe-hours",
        [{ ...origin, at: origin.recordedAt, at_ms: NOW_MS, shown, total: shown, backwards: false }],
      ],
    ]),
  };
  const ask = askFlight(book, state, assess(book, state, goodFlight, NOW_MS));
  if (ask === undefined) throw new Error("expected a planned flight");
  return numbersOf(ask, 0).find(({ what }) => what === "Nearest inspection, 100 h");
}

it("says what the flight takes of the hours that are left: 48 min of 12.4 h leave 11.6 h", () => {
  expect(lineAfter(87.6)).toEqual({
    what: "Nearest inspection, 100 h",
    needs: "0.8 h",
    has: "12.4 h",
    left: "11.6 h",
    status: "clear",
  });
});

it("stops a flight that goes on past it: 48 min of 0.4 h are 0.4 h over", () => {
  expect(lineAfter(99.6)).toMatchObject({ needs: "0.8 h", has: "0.4 h", left: "0.4 h over", status: "stop" });
});
