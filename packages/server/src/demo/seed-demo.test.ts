import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { assess, judge } from "@witnessmark/assess";
import { type Book, readBook, smallBookText } from "@witnessmark/book";
import { fold, type LedgerEvent, newId, parseEvent, verifyLedger } from "@witnessmark/ledger";
import type { OperatorStore } from "@witnessmark/store";
import { createSqlite } from "@witnessmark/store/testing/sqlite-backend";
import { temporaryFolder } from "@witnessmark/store/testing/temporary-folder";
import { describe, expect, it, onTestFinished } from "vitest";
import { demoHistory } from "./demo-history.ts";
import { seedDemo } from "./seed-demo.ts";

const BOOKS = join(import.meta.dirname, "../../../../books");
const NOW_MS = Date.UTC(2031, 4, 6, 9, 0, 0);
const DAY_MS = 86_400_000;
const CONTEXT = { operator: "own", now_ms: NOW_MS, zone_min: 120, past: "short" } as const;

const texts: readonly (readonly [string, string])[] = [
  ["the small book", smallBookText],
  ...readdirSync(BOOKS)
    .filter((file) => file.endsWith(".yaml"))
    .map((file) => [file, readFileSync(join(BOOKS, file), "utf8")] as const),
];

async function read(text: string): Promise<Book> {
  const result = await readBook(text, "test.yaml");
  if (!result.ok) throw new Error(JSON.stringify(result.faults[0]));
  return result.book;
}

/** Made by the first test that asks; none changes it. */
function once<T>(make: () => Promise<T>): () => Promise<T> {
  let made: Promise<T> | null = null;
  return () => {
    made ??= make();
    return made;
  };
}

async function emptyStore(): Promise<OperatorStore> {
  const database = await createSqlite();
  onTestFinished(database.remove);
  return (await database.open()).forOperator("own");
}

function folderWith(text: string): string {
  const folder = temporaryFolder();
  onTestFinished(folder.remove);
  writeFileSync(join(folder.path, "a.yaml"), text);
  writeFileSync(join(folder.path, "README.md"), "not a book");
  return folder.path;
}

describe.each(texts)("the demo's history of %s", (_, text) => {
  const made = once(async () => {
    const book = await read(text);
    const author = { id: newId(), name: "Demo", role: "owner" } as const;
    return { book, events: await demoHistory(book, text, { ...CONTEXT, device: newId(), author }) };
  });

  it("is a ledger that verifies, ends before now, and fits into one push", async () => {
    const { events } = await made();
    expect((await verifyLedger(events)).faults).toEqual([]);
    for (const { recordedAt } of events) expect(Date.parse(recordedAt)).toBeLessThan(NOW_MS);
    expect(events.length).toBeLessThanOrEqual(500);
  });

  it("has one finished walk, three days ago, on which every check was as it should be, and a flight after it", async () => {
    const { book, events } = await made();
    const state = fold(events);
    const [walk, ...others] = [...state.walks.values()];
    expect(others).toEqual([]);
    expect(walk?.kind).toBe("first-of-day");
    const finished_ms = Date.parse(walk?.finished?.recordedAt ?? "");
    expect(NOW_MS - finished_ms).toBeGreaterThan(2 * DAY_MS);
    expect(NOW_MS - finished_ms).toBeLessThan(4 * DAY_MS);
    const due = book.checks.filter(({ walks }) => walks.includes("first-of-day"));
    for (const { id } of due) {
      expect([id, state.checks.get(id)?.answers.map(({ answer }) => answer)]).toEqual([
        id,
        ["as-it-should-be"],
      ]);
    }
    expect(state.happenings.map(({ kind }) => kind)).toEqual(["flown"]);
    expect(state.happenings[0]?.at_ms).toBeGreaterThan(finished_ms);
  });

  it("gives every reading a value that the book's limits find clear", async () => {
    const { book, events } = await made();
    const state = fold(events);
    for (const check of book.checks.filter(
      (one) => one.reading !== undefined && one.walks.includes("first-of-day"),
    )) {
      const reading = state.checks.get(check.id)?.readings.at(-1);
      if (reading === undefined) throw new Error(`Expected a reading of ${check.id}.`);
      expect([check.id, judge(check, book, reading).status]).toEqual([check.id, "clear"]);
    }
  });

  it("leaves the ground gear fitted", async () => {
    const { book, events } = await made();
    const state = fold(events);
    for (const { id, count } of book.groundGear) expect(state.groundGear.get(id)?.fitted).toBe(count);
  });
});

describe("seedDemo", () => {
  it("puts every book of the folder into an empty store, and nothing into one that is not", async () => {
    const own = await emptyStore();
    const seed = { own, books: folderWith(smallBookText), ...CONTEXT };
    expect(await seedDemo(seed)).toEqual(["ZZ-SML"]);
    const page = await own.page("ZZ-SML", { after: 0, limit: 500, most_B: 1e9 });
    const events: readonly LedgerEvent[] = page.events.map(({ text }) => {
      const parsed = parseEvent(JSON.parse(text));
      if (!parsed.ok) throw new Error(text);
      return parsed.event;
    });
    expect((await verifyLedger(events)).faults).toEqual([]);
    expect(await own.quarantine("ZZ-SML", 10, 1e6)).toEqual([]);
    expect(await seedDemo(seed)).toEqual([]);
    expect(await own.heads()).toEqual([{ aircraft: "ZZ-SML", head: page.head }]);
  });

  it("does without a folder of books", async () => {
    expect(await seedDemo({ own: await emptyStore(), books: "/nowhere", ...CONTEXT })).toEqual([]);
  });

  it("names the book and the fault when one has a fault", async () => {
    const books = folderWith(smallBookText.replace("revision: 3", "revision: three"));
    await expect(seedDemo({ own: await emptyStore(), books, ...CONTEXT })).rejects.toThrow(
      /The demo's book a\.yaml has faults\..*three/s,
    );
  });
});

describe("the demo's two years", () => {
  const turboprop = once(async () => {
    const text = readFileSync(join(BOOKS, "zz-skr.yaml"), "utf8");
    const book = await read(text);
    const author = { id: newId(), name: "Demo", role: "owner" } as const;
    const events = await demoHistory(book, text, { ...CONTEXT, past: "long", device: newId(), author });
    return { book, state: fold(events), events };
  });

  it("are a ledger that verifies, of a size that a phone takes at once", async () => {
    const { events, state } = await turboprop();
    expect((await verifyLedger(events)).faults).toEqual([]);
    expect(state.unplaced.size).toBe(0);
    expect(state.flightsMade.length).toBe(200);
    expect(events.length).toBeLessThan(5000);
    for (const readings of state.counters.values())
      expect(readings.some(({ backwards }) => backwards)).toBe(false);
  });

  it("have a tyre that leaks, found before its limit, oil use that rises, and a fault that came back", async () => {
    const { book, state } = await turboprop();
    const { verdicts } = assess(book, state, null, NOW_MS);
    const about = (topic: string) => verdicts.filter((verdict) => verdict.topic === topic);
    const leak = about("trend").find(({ title }) => title.includes("Right main tyre"));
    expect(leak?.status).toBe("caution");
    expect(verdicts.find(({ id }) => id === "trend:oil-use:oil-level")).toMatchObject({
      status: "caution",
      says: expect.stringContaining("Oil use rises"),
    });
    expect(verdicts.some(({ id, status }) => id.startsWith("repeat:") && status === "caution")).toBe(true);
    const reading = state.checks.get("main-tyre-pressure.right-main-tyre")?.readings.at(-1);
    const check = book.checksById.get("main-tyre-pressure.right-main-tyre");
    if (reading === undefined || check === undefined) throw new Error("expected a reading of the tyre");
    expect(judge(check, book, reading).status).not.toBe("stop");
  });

  it("end with an inspection that the planned flight would overrun", async () => {
    const { book, state } = await turboprop();
    const plan = {
      from: "ZZTW",
      to: "ZZQN",
      offBlocks: new Date(NOW_MS).toISOString(),
      plan: {
        rulePack: "us-part-91",
        flightRules: "VFR",
        route: {
          distance: { value: 120, unit: "NM" },
          time: { value: 48, unit: "min" },
          level: { value: 9000, unit: "ft" },
        },
      },
    } as const;
    const of = (flight: typeof plan | null) =>
      assess(book, state, flight, NOW_MS).verdicts.find(({ id }) => id === "timed:inspection-100h");
    expect(of(null)?.status).toBe("clear");
    const stopped = of(plan);
    expect(stopped?.status).toBe("stop");
    // 0.4 h are left of the 0.8 h that it takes
    expect(stopped?.says).toMatch(
      /^Runs out during this flight: 0\.4 h before this flight ends, about .*\d\d:\d\d\. At /,
    );
  });
});
