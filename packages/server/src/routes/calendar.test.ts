import { type EventDraft, makeEvents, newId } from "@witnessmark/ledger";
import { walkedLedger } from "@witnessmark/sheet/testing/walked-ledger";
import { describe, expect, it } from "vitest";
import { makeClient } from "../client.ts";
import { rawRequest } from "../testing/raw-request.ts";
import { serve } from "../testing/serve.ts";

const AIRCRAFT = "ZZ-SML";

const ITEM = {
  id: "annual",
  name: "Annual inspection",
  about: "aircraft",
  limits: [{ by: "calendar-months", months: 12 }],
  combine: "first",
  recurring: true,
  endsLife: false,
  why: "The rule asks for it.",
} as const;

const done = (on: string): EventDraft => ({
  type: "timedItem.done",
  body: { item: "annual", on, counters: {}, by: "Example Works" },
});

async function serverWithBook() {
  const { url } = await serve({ operator: "own" });
  const client = makeClient(url);
  await client.push(AIRCRAFT, (await walkedLedger()).events);
  const device = newId();
  let last: Parameters<typeof makeEvents>[0]["last"] = null;
  let clock: string | null = null;
  const say = async (...drafts: readonly EventDraft[]) => {
    const author = { id: newId(), name: "MK", role: "pilot" as const };
    const given = { operator: "own", aircraft: AIRCRAFT, device, author, zone_min: 0, newId, key: null };
    const made = await makeEvents({ ...given, last, clock, now_ms: Date.now() }, drafts);
    ({ last, clock } = made);
    const { results } = await client.push(AIRCRAFT, made.events);
    expect(results.every(({ outcome }) => outcome === "accepted")).toBe(true);
  };
  return { url, say, feed: () => fetch(`${url}/api/aircraft/${AIRCRAFT}/runs-out.ics`) };
}

describe("the calendar of what runs out", () => {
  it("has the last day of each as a whole day, and follows what is done", async () => {
    const { say, feed } = await serverWithBook();
    await say(
      {
        type: "device.introduced",
        body: { label: "a test", key: { kind: "none", why: "A test wrote it." } },
      },
      { type: "timedItem.added", body: { item: ITEM } },
      done("2025-11-06"),
    );
    const first = await feed();
    expect(first.status).toBe(200);
    expect(first.headers.get("content-type")).toMatch(/^text\/calendar/);
    // 14 CFR 91.409(a): within the preceding 12 calendar months, so through the last day of November
    expect(await first.text()).toMatch(/DTSTART;VALUE=DATE:20261130.*Annual inspection/s);
    await say(done("2026-10-02"));
    const second = await (await feed()).text();
    expect(second).toContain("DTSTART;VALUE=DATE:20271031");
    expect(second).not.toContain("20261130");
  });

  it("of an aircraft that is not here is refused in words", async () => {
    const { url } = await serve({ operator: "own" });
    const { status, body } = await rawRequest(url, "/api/aircraft/ZZ-NON/runs-out.ics");
    expect(status).toBe(404);
    expect(JSON.parse(body).error.message).toBe("There are no events of ZZ-NON here.");
  });
});
