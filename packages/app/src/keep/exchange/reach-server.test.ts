import * as served from "@witnessmark/server/client";
import { describe, expect, it } from "vitest";
import { reachServer } from "./reach-server.ts";
import { OutOfReach, PAGE_EVENTS, PROTOCOL_VERSION, Refused } from "./server.ts";

const answering = (response: () => Response) => reachServer(async () => response());
const error = { error: { code: "some-code", message: "A sentence for a person." } };

describe("the server, as the exchange sees it", () => {
  it("speaks by the same rules as the server itself", () => {
    expect(PROTOCOL_VERSION).toBe(served.PROTOCOL_VERSION);
    expect(PAGE_EVENTS).toBe(served.PAGE_EVENTS);
  });

  it.each([400, 403, 413, 426, 507])("has refused when it answers %i, with its sentence", async (status) => {
    const asked = answering(() => Response.json(error, { status })).about();
    await expect(asked).rejects.toThrow(Refused);
    await expect(asked).rejects.toMatchObject({
      status,
      code: "some-code",
      message: "A sentence for a person.",
    });
  });

  it.each([408, 429, 500, 503])("is to be tried again later when it answers %i", async (status) => {
    await expect(answering(() => Response.json(error, { status })).about()).rejects.toThrow(OutOfReach);
  });

  it.each([
    ["nothing", () => Promise.reject(new TypeError("fetch failed"))],
    ["a sign-in page", async () => new Response("<html>", { status: 200 })],
    ["a gateway's error page", async () => new Response("<html>", { status: 502 })],
    ["JSON of something else", async () => Response.json({ hello: "world" })],
  ])("is out of reach when what answers is %s", async (_, fetch) => {
    await expect(reachServer(fetch).about()).rejects.toThrow(OutOfReach);
  });

  it("does not have a photo that it does not have", async () => {
    expect(await answering(() => new Response(null, { status: 404 })).hasPhoto("0".repeat(64))).toBe(false);
    expect(await answering(() => Response.json(error, { status: 404 })).getPhoto("0".repeat(64))).toBeNull();
  });

  it("waits no longer than a dead line deserves", async () => {
    let signal: AbortSignal | null | undefined;
    const server = reachServer((_, init) => {
      signal = init?.signal;
      return Promise.resolve(Response.json({}));
    });
    await expect(server.about()).rejects.toThrow(OutOfReach);
    expect(signal).toBeInstanceOf(AbortSignal);
  });
});
