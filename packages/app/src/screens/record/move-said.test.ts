import type { ComponentAboard } from "@witnessmark/assess";
import type { Counter } from "@witnessmark/book";
import { emptyState } from "@witnessmark/ledger";
import { expect, it } from "vitest";
import { type MoveSaid, moveDrafts, moveFault } from "./move-said.ts";

const HOURS: Counter = { id: "hours", name: "Airframe hours", of: "airframe", unit: "h" };
// it had run 420 h when the aircraft had 1,000 h: it began at 580 h of the aircraft's
const ABOARD: ComponentAboard = {
  serial: "M-17",
  on: "2026-01-10",
  isFitted: true,
  ran: { hours: 420 },
  event: "e",
  began: () => 580,
};
const where = {
  state: emptyState("ZZ-SML"),
  component: "magneto",
  counters: [HOURS],
  aboard: ABOARD,
  today: "2026-06-01",
};
const said = (more: Partial<MoveSaid>): MoveSaid => ({
  act: "fitted",
  serial: "M-18",
  on: "2026-05-01",
  shown: { hours: "1030" },
  ran: { hours: "0" },
  lastOn: "",
  lastRan: {},
  ...more,
});

it("the one aboard goes out with what it has run, 1,030 − 580 = 450 h, and the other comes in", () => {
  expect(moveDrafts(said({}), "magneto", where)).toEqual([
    {
      type: "component.removed",
      body: {
        component: "magneto",
        serial: "M-17",
        on: "2026-05-01",
        ran: { hours: 450 },
        counters: { hours: 1030 },
      },
    },
    {
      type: "component.fitted",
      body: {
        component: "magneto",
        serial: "M-18",
        on: "2026-05-01",
        ran: { hours: 0 },
        counters: { hours: 1030 },
      },
    },
  ]);
});

it("what was done to it before, by its own hours, comes in with it", () => {
  const drafts = moveDrafts(
    said({ ran: { hours: "310,5" }, lastOn: "2025-11-01", lastRan: { hours: "300" } }),
    "magneto",
    where,
  );
  expect(drafts.at(-1)).toMatchObject({
    type: "timedItem.done",
    body: { item: "magneto", on: "2025-11-01", counters: { hours: 300 }, serial: "M-18" },
  });
});

it("one that is taken out alone leaves its place empty", () => {
  const drafts = moveDrafts(said({ act: "removed", serial: "M-17" }), "magneto", where);
  expect(drafts.map(({ type }) => type)).toEqual(["component.removed"]);
});

it.each([
  [{ serial: " " }, "Write the serial number that stands on it."],
  [{ on: "2026-06-02" }, "Say on which day it was; it cannot be still to come."],
  [{ on: "2026-01-09" }, "Number M-17 was fitted on 2026-01-10: this cannot have been before."],
  [{ serial: "M-17" }, "Number M-17 is fitted already."],
  [{ shown: { hours: "many" } }, "Airframe hours: “many” is not a number. Type one such as 100.0 h."],
  [{ ran: {} }, "Airframe hours: expected what it had run when it was fitted; 0 for a new one."],
  [{ ran: { hours: "-3" } }, "Airframe hours: expected what it had run when it was fitted; 0 for a new one."],
  [{ lastOn: "2026-05-02" }, "It was last done before it was fitted: look at the two days."],
  [
    { ran: { hours: "100" }, lastOn: "2026-03-01", lastRan: { hours: "120" } },
    "Airframe hours: expected what it had run itself when it was last done, at most 100.",
  ],
] as const)("%o is told at its place", (more, words) => {
  expect(moveFault(said(more), where)).toBe(words);
});

it("and what can be has no fault", () => {
  expect(moveFault(said({}), where)).toBeNull();
  expect(moveFault(said({ act: "removed", serial: "M-17", ran: {} }), where)).toBeNull();
});
