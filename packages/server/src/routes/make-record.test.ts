import { canonical } from "@witnessmark/ledger";
import { describe, expect, it } from "vitest";
import { TestDevice } from "../testing/test-device.ts";
import { makeRecord } from "./make-record.ts";

const job = {
  from: undefined,
  to: undefined,
  paper: "A4",
  now_ms: Date.UTC(2031, 4, 6, 9, 0, 0),
  count: 3,
} as const;
const texts = (await new TestDevice().make(3)).map((event) => canonical(event));

async function* few() {
  yield texts.slice(0, 2);
  yield texts.slice(2);
}

async function* broken() {
  yield texts.slice(0, 1);
  throw new Error("the database went away");
}

describe("a record made in a thread of its own", () => {
  it("comes back as a PDF with the period that it is of", async () => {
    const made = await makeRecord(few, job);
    expect(made).toMatchObject({ ok: true, from: "2031-05-06", to: "2031-05-06" });
    expect(made.ok && Buffer.from(made.pdf.subarray(0, 5)).toString("latin1")).toBe("%PDF-");
  });

  it("that memory is too small for is refused in words, and the server goes on", async () => {
    // the program itself does not fit into so little
    await expect(makeRecord(few, job, { maxOldGenerationSizeMb: 8 })).rejects.toMatchObject({
      status: 507,
      code: "ledger-too-long",
      message: expect.stringContaining("Take the ledger itself, at ledger.jsonl"),
    });
    expect(await makeRecord(few, job)).toMatchObject({ ok: true });
  });

  it("fails with the reason when its events do", async () => {
    await expect(makeRecord(broken, job)).rejects.toThrow("the database went away");
  });
});
