import { type LedgerEvent, type ReadLedger, readLedger } from "@witnessmark/ledger";
import type { Page } from "playwright-core";
import { go } from "./screens.ts";

/** Every event of an aircraft that the server has, in the order of its ledger. */
export async function serverEvents(url: string, aircraft: string): Promise<readonly LedgerEvent[]> {
  const events: LedgerEvent[] = [];
  for (let after = 0; ; ) {
    const page = await json<{
      head: number;
      events: { ledgerSeq: number; event: LedgerEvent }[];
    }>(`${url}/api/aircraft/${aircraft}/events?after=${after}&limit=500`);
    for (const { ledgerSeq, event } of page.events) {
      if (ledgerSeq !== after + 1)
        throw new Error(`records: expected number ${after + 1}, found ${ledgerSeq}`);
      after = ledgerSeq;
      events.push(event);
    }
    if (page.events.length === 0) return events;
  }
}

/** How far the ledger of an aircraft goes on the server. */
export async function serverHead(url: string, aircraft: string): Promise<number> {
  const list = await json<{ aircraft: { aircraft: string; head: number }[] }>(`${url}/api/aircraft`);
  return list.aircraft.find((each) => each.aircraft === aircraft)?.head ?? 0;
}

/** The server's ledger file, read and checked in full: what `witnessmark ledger verify` does. */
export async function serverLedger(url: string, aircraft: string): Promise<ReadLedger> {
  const answer = await fetch(`${url}/api/aircraft/${aircraft}/ledger.jsonl`);
  if (!answer.ok) throw new Error(`records: expected the ledger of ${aircraft}, found ${answer.status}`);
  return readLedger(await answer.text());
}

/** The ledger file that the phone saves, read and checked in full. Works with no net. */
export async function phoneLedger(page: Page, aircraft: string): Promise<ReadLedger> {
  const place = new URL(page.url()).hash;
  await go(page, `#/${aircraft}/aircraft`);
  const saved = page.waitForEvent("download");
  await page.getByRole("button", { name: "Save the ledger as a file" }).click();
  const text = await new Response(
    // the file is small, and only the driver can read what was downloaded
    (await (await saved).createReadStream()) as unknown as ReadableStream,
  ).text();
  await go(page, place);
  return readLedger(text);
}

async function json<T>(url: string): Promise<T> {
  const answer = await fetch(url);
  if (!answer.ok) throw new Error(`records: expected an answer from ${url}, found ${answer.status}`);
  return (await answer.json()) as T; // the server's own shape, which its contract suite holds
}
