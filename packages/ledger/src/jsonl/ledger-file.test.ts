import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import type { KnownEvent } from "../event.ts";
import { fold } from "../fold/fold.ts";
import { generateHistory } from "../testing/generate.ts";
import { readLedger } from "./read-ledger.ts";
import { ledgerLines, writeLedger } from "./write-ledger.ts";

const ABOUT = {
  aircraft: "ZZ-SKR",
  operator: "island-eye-clinic",
  exportedAt: "2032-01-02T10:00:00.000+01:00",
};

let history: readonly KnownEvent[];
let file: string;
let lines: readonly string[];

beforeAll(async () => {
  // Few checks, so that a file is read quickly enough to be changed hundreds of times.
  const checks = ["oil-level", "fuel-cap.left", "Räder & Bremsen"].map((id) => ({ id }));
  history = await generateHistory({ years: 1, flightsPerYear: 3, seed: 4, seal: "signed", checks });
  file = await writeLedger(ABOUT, history);
  lines = file.trimEnd().split("\n");
});

const at = (line: number): string => lines[line - 1] ?? "";
const join = (some: readonly string[]): string => `${some.join("\n")}\n`;
const codesOf = async (text: string) => (await readLedger(text)).faults.map(({ code, line }) => [code, line]);

describe("a ledger file", () => {
  it("brings every event back, in order, with nothing to find fault with", async () => {
    const read = await readLedger(file);
    expect(read.faults).toEqual([]);
    expect(read.events).toStrictEqual(history);
    expect(read.header).toEqual({ witnessmark: "ledger", version: 1, ...ABOUT, events: history.length });
    expect(fold(read.events)).toStrictEqual(fold(history));
  });

  it("is a header, one event a line, and a closing line with each device's last", () => {
    expect(lines).toHaveLength(history.length + 2);
    expect(at(1)).toBe(
      `{"witnessmark":"ledger","version":1,"aircraft":"ZZ-SKR","operator":"island-eye-clinic","exportedAt":"2032-01-02T10:00:00.000+01:00","events":${history.length}}`,
    );
    const footer: unknown = JSON.parse(at(lines.length));
    const devices = Object.groupBy(history, ({ device }) => device);
    const heads = Object.fromEntries(
      Object.entries(devices).map(([device, events]) => [
        device,
        [events?.at(-1)?.deviceSeq, events?.at(-1)?.hash],
      ]),
    );
    expect(footer).toMatchObject({ end: true, events: history.length, heads });
  });

  it("names the line of any one changed byte, and the event on it", async () => {
    const bytes = new TextEncoder().encode(file);
    const lineStarts = [
      0,
      ...[...bytes.entries()].filter(([, byte]) => byte === 10).map(([place]) => place + 1),
    ];
    await fc.assert(
      fc.asyncProperty(
        fc.nat(bytes.length - 2),
        fc.integer({ min: 1, max: 255 }),
        async (place, difference) => {
          const copy = bytes.slice();
          copy[place] = (copy[place] ?? 0) ^ difference;
          const { faults, events } = await readLedger(new TextDecoder().decode(copy));
          const line = lineStarts.findLastIndex((start) => start <= place) + 1;
          const ofLine = faults.filter((fault) => fault.line === line);
          expect(ofLine, `byte ${place} of line ${line}`).not.toEqual([]);
          const event = history[line - 2];
          const isReadable = !ofLine.some(({ code }) => code === "line-unreadable");
          const isNamed = ofLine.some(
            (fault) => fault.event === event?.id || fault.deviceSeq === event?.deviceSeq,
          );
          if (event !== undefined && isReadable) expect(isNamed, `event on line ${line}`).toBe(true);
          expect(events.length).toBeGreaterThanOrEqual(history.length - 2);
        },
      ),
      { numRuns: 400 },
    );
  });

  it("cut anywhere is known to be cut, and gives back what is whole", async () => {
    await fc.assert(
      fc.asyncProperty(fc.nat(file.length - 2), async (length) => {
        const { faults, events } = await readLedger(file.slice(0, length));
        expect(faults).not.toEqual([]);
        const whole = file.slice(0, length).split("\n").length - 2;
        expect(events.length).toBeGreaterThanOrEqual(Math.max(0, whole));
      }),
      { numRuns: 100 },
    );
    const cut = await readLedger(join(lines.slice(0, 9)));
    expect(cut.faults.map(({ code }) => code)).toEqual(["header-wrong", "cut-short"]);
    expect(cut.faults[1]?.says).toBe(
      'the file was cut short: line 9 is its last, and it is not the closing line {"end":true …}; export it again',
    );
  });

  it("that lost lines in the middle says which events of which device, and that the counts differ", async () => {
    const lost = history[5];
    const codes = await codesOf(join(lines.toSpliced(6, 1)));
    expect(codes.map(([code]) => code).sort()).toEqual(["footer-wrong", "header-wrong", "number-missing"]);
    const { faults } = await readLedger(join(lines.toSpliced(6, 1)));
    expect(faults.find(({ code }) => code === "number-missing")?.says).toContain(
      `event ${lost?.deviceSeq} is missing from device ${lost?.device}`,
    );
  });

  it("names a foreign device by the line of its first event", async () => {
    const other = await generateHistory({
      years: 1,
      flightsPerYear: 1,
      seed: 99,
      seal: "hashed",
      checks: [],
    });
    const foreign = other.find(({ type, deviceSeq }) => type !== "device.introduced" && deviceSeq === 2);
    if (foreign === undefined) throw new Error("the other history has no second event");
    const text = await writeLedger(ABOUT, [...history, foreign]);
    const { faults } = await readLedger(text);
    const unknown = faults.find(({ code }) => code === "device-unknown");
    expect(unknown).toMatchObject({ device: foreign.device, line: history.length + 2 });
    expect(unknown?.says).toMatch(/was never introduced/);
  });

  it("of another program's making, or of a later version, is read as far as it goes", async () => {
    expect((await codesOf("hello\nworld\n")).map(([code]) => code)).toEqual([
      "header-wrong",
      "cut-short",
      "line-unreadable",
    ]);
    expect(await codesOf("")).toEqual([
      ["header-wrong", 1],
      ["cut-short", 1],
    ]);
    const later = file.replace('"version":1', '"version":2');
    const read = await readLedger(later);
    expect(read.events).toHaveLength(history.length);
    expect(read.faults[0]?.says).toBe(
      "the file is of version 2, expected 1; read it with a newer Witnessmark",
    );
  });

  it("without its header still gives its events", async () => {
    const read = await readLedger(join(lines.slice(1)));
    expect(read.events).toStrictEqual(history);
    expect(read.header).toBeNull();
    expect(read.faults.map(({ code }) => code)).toEqual(["header-wrong"]);
  });

  it("with the line ends of another system, or a mark at its beginning, is the same file", async () => {
    expect((await readLedger(`\uFEFF${file.replaceAll("\n", "\r\n")}`)).faults).toEqual([]);
  });

  it("rewritten with the same contents in other words says so, line by line", async () => {
    const spaced = at(3).replace(',"', ', "');
    expect(await codesOf(join(lines.with(2, spaced)))).toEqual([["line-changed", 3]]);
    const doubled = at(3).replace("{", '{"aircraft":"ZZ-SKR",');
    expect(await codesOf(join(lines.with(2, doubled)))).toEqual([["line-changed", 3]]);
  });

  it("carries events of a later version", async () => {
    const last = history.at(-1);
    if (last === undefined) throw new Error("the history is empty");
    const later = { ...last, type: "mood.noted", body: { mood: "sunny" } };
    const read = await readLedger(await writeLedger(ABOUT, [...history.slice(0, -1), later]));
    expect(read.events.at(-1)).toStrictEqual(later);
    expect(read.faults.map(({ code }) => code)).toEqual(["hash-wrong"]);
  });

  it("is not begun with a wrong count of events", async () => {
    const write = async () => {
      for await (const line of ledgerLines(ABOUT, 3, history.slice(0, 2)))
        expect(line).not.toContain('"end"');
    };
    await expect(write()).rejects.toThrow("ledger file: expected 3 events of ZZ-SKR, received 2");
  });
});
