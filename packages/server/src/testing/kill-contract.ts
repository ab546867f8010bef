import type { TestDatabase } from "@witnessmark/store/testing/backend";
import { expect, it, onTestFinished } from "vitest";
import { type Client, makeClient } from "../client.ts";
import { type Child, inOneFile, spawnServer } from "./child.ts";
import { randomFrom, seedOfRun } from "./random.ts";
import { AIRCRAFT, OPERATOR } from "./test-device.ts";
import { isGone, TestPhone } from "./test-phone.ts";

const KILLS = 20;
/** A server is killed after so many acknowledged pushes at most, and then so long at most. */
const MOST_PUSHES = 8;
const LONGEST_WAIT_MS = 25;

/** Kills a server with SIGKILL while phones send to it, again and again, and looks at what is left. */
export function killContract(
  name: string,
  create: () => Promise<TestDatabase & { readonly environment: Readonly<Record<string, string>> }>,
): void {
  it(`on ${name}: whatever was acknowledged is there, once, after ${KILLS} kills in mid-push`, async () => {
    const random = randomFrom(seedOfRun(`kills on ${name}`));
    const database = await create();
    onTestFinished(database.remove);
    const program = await inOneFile();
    onTestFinished(program.remove);
    const phones = [new TestPhone(), new TestPhone(), new TestPhone()];
    let inFlight = 0;
    let cutInFlight = 0;
    let enough: { readonly pushes: number; readonly reached: () => void } | null = null;
    let pushes = 0;
    const sendUntilGone = async (phone: TestPhone, client: Client) => {
      try {
        for (;;) {
          await phone.record(1 + Math.floor(random() * 20));
          inFlight += 1;
          await phone.push(client, 1 + Math.floor(random() * 12));
          inFlight -= 1;
          pushes += 1;
          if (enough !== null && pushes >= enough.pushes) enough.reached();
        }
      } catch (error) {
        if (!isGone(error)) throw error;
      }
    };

    let next: Child = spawnServer(program, database.environment);
    try {
      for (let kill = 0; kill < KILLS; kill += 1) {
        const child = next;
        next = spawnServer(program, database.environment);
        const client = makeClient(await child.go());
        inFlight = 0;
        pushes = 0;
        const reached = new Promise<void>((resolve) => {
          enough = { pushes: 1 + Math.floor(random() * MOST_PUSHES), reached: resolve };
        });
        const sending = phones.map((phone) => sendUntilGone(phone, client));
        await Promise.race([reached, Promise.all(sending)]);
        await new Promise((resolve) => setTimeout(resolve, random() * LONGEST_WAIT_MS));
        cutInFlight += inFlight > 0 ? 1 : 0;
        await child.kill();
        await Promise.all(sending);
      }
    } finally {
      await next.kill();
    }

    const store = await database.open();
    const { head, events } = await store
      .forOperator(OPERATOR)
      .page(AIRCRAFT, { after: 0, limit: 1_000_000, most_B: 1e9 });
    const numbers = new Map(events.map(({ ledgerSeq, text }) => [String(JSON.parse(text).id), ledgerSeq]));
    const acknowledged = phones.flatMap((phone) => [...phone.acknowledged]);
    console.log(
      `${name}: ${head} events kept, ${acknowledged.length} acknowledged, ${cutInFlight} of ${KILLS} kills cut a push`,
    );
    expect(events.map(({ ledgerSeq }) => ledgerSeq)).toEqual(
      Array.from({ length: head }, (_, index) => index + 1),
    );
    expect(numbers.size).toBe(events.length);
    expect(acknowledged.filter(([id, ledgerSeq]) => numbers.get(id) !== ledgerSeq)).toEqual([]);
    expect(acknowledged.length).toBeGreaterThan(KILLS);
    expect(cutInFlight).toBeGreaterThan(KILLS / 2);
    expect(await store.check()).toEqual([]);
  }, 300_000);
}
