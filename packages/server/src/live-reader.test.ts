import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readLive } from "./live-reader.ts";
import type { LiveMessage } from "./protocol.ts";

/** A response whose body comes in pieces that are cut anywhere. */
function inPieces(text: string, cuts: readonly number[]): Response {
  const bytes = new TextEncoder().encode(text);
  const ends = [...new Set([...cuts.map((cut) => cut % (bytes.length + 1)), bytes.length])].sort(
    (a, b) => a - b,
  );
  const pieces = ends.map((end, index) => bytes.slice(ends[index - 1] ?? 0, end));
  return new Response(
    new ReadableStream({
      start(controller) {
        for (const piece of pieces) controller.enqueue(piece);
        controller.close();
      },
    }),
  );
}

const message = fc.record({
  aircraft: fc.string({ minLength: 1, maxLength: 10, unit: "grapheme" }),
  head: fc.nat(),
  epoch: fc.uuid(),
});

describe("readLive", () => {
  it("hears every message once, in order, however the stream is cut", async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(message, { maxLength: 6 }),
        fc.array(fc.nat(), { maxLength: 12 }),
        fc.constantFrom("\n", "\r\n"),
        async (messages, cuts, end) => {
          const text = messages
            .map((one) =>
              [`: still here`, "", "event: head", `data: ${JSON.stringify(one)}`, "", ""].join(end),
            )
            .join("");
          const heard: LiveMessage[] = [];
          await readLive(inPieces(`retry: 3000${end}${end}${text}`, cuts), (one) => heard.push(one));
          expect(heard).toEqual(messages);
        },
      ),
    );
  });

  it("passes over events that it does not know, and one that was cut off", async () => {
    const heard: LiveMessage[] = [];
    const text = 'event: other\ndata: 1\n\nevent: head\ndata: {"x":1}\n\nevent: head\ndata: {"aircraft":"ZZ';
    await readLive(inPieces(text, []), (one) => heard.push(one));
    expect(heard).toEqual([]);
  });
});
