import { emptyState } from "@witnessmark/ledger";
import { expect, it } from "vitest";
import { timedDoneOf } from "./timed-record.ts";

const ORIGIN = {
  event: "e1",
  device: "d",
  deviceSeq: 1,
  author: { id: "p", name: "Cy Instance", role: "owner" },
  hlc: "1",
  recordedAt: "2026-05-02T10:00:00Z",
} as const;

it("which component went in is told with what it and the aircraft had run, among what was done", () => {
  const state = {
    ...emptyState("ZZ-SML"),
    componentMoves: [
      {
        ...ORIGIN,
        component: "magnetos",
        serial: "MG-17",
        on: "2026-05-01",
        ran: { hours: 295 },
        counters: { hours: 1030.5 },
        fitted: true,
      },
    ],
    timedDone: new Map([
      [
        "magnetos",
        [
          {
            ...ORIGIN,
            event: "e2",
            item: "magnetos",
            on: "2025-03-01",
            counters: { hours: 260 },
            by: "As its papers say",
            serial: "MG-17",
          },
        ],
      ],
    ]),
  };
  const told = timedDoneOf(state, { book: undefined, state }, new Set(["e1"]), () => true);
  expect(told.map(({ on, signed, says }) => ({ on, signed, says }))).toEqual([
    {
      on: "2025-03-01",
      signed: false,
      says: ["Done by As its papers say", "To number MG-17, by its own count", "hours: 260"],
    },
    {
      on: "2026-05-01",
      signed: true,
      says: ["Number MG-17 was fitted", "It had run itself, hours: 295", "The aircraft then, hours: 1,030.5"],
    },
  ]);
});
