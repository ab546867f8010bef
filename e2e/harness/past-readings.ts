import {
  type ChainEnd,
  type EventDraft,
  type LedgerEvent,
  makeEvents,
  newId,
  type Read,
} from "@witnessmark/ledger";
import { PAGE_EVENTS, PROTOCOL_VERSION, type PushAnswer } from "@witnessmark/server";

/** What another phone did on one day so long ago. */
export interface PastDay {
  readonly daysAgo: number;
  /** One walk with these readings, by the id of their check. */
  readonly readings?: readonly {
    readonly check: string;
    readonly gauge: string;
    readonly read: Read;
    readonly temperature?: Read;
  }[];
  /** Other facts of that day, told an hour after the walk; `at` is their moment. */
  readonly facts?: (at: string) => readonly EventDraft[];
}

const DAY_MS = 86_400_000;
const HOUR_MS = 3_600_000;
const START_HOUR = 7;

/** An invented past of one aircraft, pushed to the server as a second phone would. Oldest day first. */
export async function pushPast(url: string, aircraft: string, days: readonly PastDay[]): Promise<void> {
  const about = (await (await fetch(`${url}/api/about`)).json()) as { readonly operator: string };
  const midnight_ms = new Date().setUTCHours(0, 0, 0, 0);
  const common = {
    operator: about.operator,
    aircraft,
    device: newId(),
    author: { id: newId(), name: "AB", role: "pilot" as const },
    zone_min: 0,
    newId,
    key: null,
  };
  let last: ChainEnd | null = null;
  let clock: string | null = null;
  const events: LedgerEvent[] = [];
  const tell = async (at_ms: number, drafts: readonly EventDraft[]) => {
    const made = await makeEvents({ ...common, last, clock, now_ms: at_ms }, drafts);
    events.push(...made.events);
    ({ last, clock } = made);
  };
  for (const { daysAgo, readings = [], facts } of days) {
    const at_ms = midnight_ms - daysAgo * DAY_MS + START_HOUR * HOUR_MS;
    if (last === null) await tell(at_ms, [introduced]);
    if (readings.length > 0) {
      const walk = newId();
      await tell(at_ms, [
        { type: "walk.started", body: { walk, kind: "first-of-day", bookSha256: "b0".repeat(32) } },
        ...readings.map((reading): EventDraft => ({ type: "reading.recorded", body: { walk, ...reading } })),
        { type: "walk.finished", body: { walk } },
      ]);
    }
    if (facts !== undefined) {
      const at = new Date(at_ms + HOUR_MS).toISOString().replace(".000Z", "+00:00");
      await tell(at_ms + HOUR_MS, facts(at));
    }
  }
  await pushAll(url, aircraft, events);
}

/** Sends events to the server as phones do, page by page. */
export async function pushAll(url: string, aircraft: string, events: readonly LedgerEvent[]): Promise<void> {
  for (let from = 0; from < events.length; from += PAGE_EVENTS) {
    await push(url, aircraft, events.slice(from, from + PAGE_EVENTS));
  }
}

const introduced: EventDraft = {
  type: "device.introduced",
  body: { label: "another phone", key: { kind: "none", why: "A test wrote it." } },
};

async function push(url: string, aircraft: string, events: readonly LedgerEvent[]): Promise<void> {
  const answer = await fetch(`${url}/api/aircraft/${aircraft}/events`, {
    method: "POST",
    headers: { "content-type": "application/json" },
    body: JSON.stringify({ protocolVersion: PROTOCOL_VERSION, events }),
  });
  const said = await answer.text();
  if (!answer.ok) throw new Error(`past readings: expected them to be taken, found ${answer.status} ${said}`);
  const { results } = JSON.parse(said) as PushAnswer;
  const refused = results.find(({ outcome }) => outcome !== "accepted");
  if (refused !== undefined)
    throw new Error(`past readings: expected accepted, found ${JSON.stringify(refused)}`);
}
