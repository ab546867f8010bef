import { describe, expect, it } from "vitest";
import { rawRequest } from "../testing/raw-request.ts";
import { serve } from "../testing/serve.ts";

const codeOf = (body: string): unknown => JSON.parse(body).error.code;
const JSON_TYPE = { "content-type": "application/json" };
const PUSH = JSON.stringify({ protocolVersion: 1, events: [] });

describe("the gate", () => {
  it.each(["127.0.0.1", "localhost", "[::1]", "LOCALHOST"])(
    "answers to this machine's own name %s",
    async (name) => {
      const { url } = await serve();
      const { status } = await rawRequest(url, "/api/about", {
        headers: { host: `${name}:${new URL(url).port}` },
      });
      expect(status).toBe(200);
    },
  );

  it.each([
    "evil.example",
    "127.0.0.1.evil.example",
    "127.0.0.1",
    "localhost:1",
    "127.0.0.1:4460@evil.example",
  ])("does not answer to %s: a page that points its own name here gets nothing", async (host) => {
    const { url } = await serve();
    for (const path of ["/api/about", "/", "/api/live"]) {
      const { status, body } = await rawRequest(url, path, { headers: { host } });
      expect(status).toBeGreaterThanOrEqual(400);
      expect(body).not.toContain("epoch");
    }
  });

  it("says what to do to whoever uses another name", async () => {
    const { url } = await serve();
    const { status, body } = await rawRequest(url, "/api/about", { headers: { host: "walk.example" } });
    expect(status).toBe(421);
    expect(JSON.parse(body)).toEqual({
      error: {
        code: "unknown-host",
        message:
          "This server does not answer to the name walk.example. Use the address it printed when it started, or set PUBLIC_ORIGIN.",
      },
    });
  });

  it("answers to a public name that was set, and lets its pages change things", async () => {
    const { url } = await serve({ allowedOrigins: ["https://walk.example"] });
    const { status } = await rawRequest(url, "/api/aircraft/ZZ-SKR/events", {
      method: "POST",
      headers: { ...JSON_TYPE, host: "walk.example", origin: "https://walk.example" },
      body: PUSH,
    });
    expect(status).toBe(200);
  });

  it.each([
    { origin: "https://evil.example" },
    { origin: "null" },
    { origin: "http://localhost:1" },
    { "sec-fetch-site": "cross-site" },
    { "sec-fetch-site": "same-site" },
  ])("lets no page of another site change anything: %o", async (headers) => {
    const { url, store } = await serve();
    for (const [method, path] of [
      ["POST", "/api/aircraft/ZZ-SKR/events"],
      ["PUT", `/api/photos/${"a".repeat(64)}`],
    ] as const) {
      const answer = await rawRequest(url, path, {
        method,
        headers: { ...JSON_TYPE, ...headers },
        body: PUSH,
      });
      expect(answer.status).toBe(403);
      expect(codeOf(answer.body)).toBe("foreign-page");
    }
    expect(await store.forOperator("own").heads()).toEqual([]);
  });

  it("lets its own page, and a program that is no browser, change things", async () => {
    const { url } = await serve();
    for (const headers of [{}, { origin: url }, { origin: url, "sec-fetch-site": "same-origin" }]) {
      const answer = await rawRequest(url, "/api/aircraft/ZZ-SKR/events", {
        method: "POST",
        headers: { ...JSON_TYPE, ...headers },
        body: PUSH,
      });
      expect(answer.status).toBe(200);
    }
  });

  it("gives no other site leave to read", async () => {
    const { url } = await serve();
    const { headers } = await rawRequest(url, "/api/about", { headers: { origin: "https://evil.example" } });
    expect(headers["access-control-allow-origin"]).toBeUndefined();
    expect(headers["cross-origin-resource-policy"]).toBe("same-origin");
  });

  it("stops a client that never rests, says when to come back, and lets it on then", async () => {
    let now_ms = 1_000_000;
    const { url } = await serve({ rateLimit: { burst: 3, perSecond: 0.5 }, now_ms: () => now_ms });
    const ask = () => rawRequest(url, "/api/about");
    for (const _ of [1, 2, 3]) expect((await ask()).status).toBe(200);
    const refused = await ask();
    expect(refused.status).toBe(429);
    expect(refused.headers["retry-after"]).toBe("2");
    expect(codeOf(refused.body)).toBe("too-many-requests");
    now_ms += 2_000;
    expect((await ask()).status).toBe(200);
    expect((await ask()).status).toBe(429);
  });

  it("counts each client behind our own proxy by itself, and believes nobody else's word for it", async () => {
    const from = (...addresses: readonly string[]) => ({
      headers: { "x-forwarded-for": addresses.join(", ") },
    });
    const rateLimit = { burst: 1, perSecond: 0.001 };
    const behind = await serve({ rateLimit, behindProxy: true });
    expect((await rawRequest(behind.url, "/api/about", from("192.0.2.1"))).status).toBe(200);
    expect((await rawRequest(behind.url, "/api/about", from("192.0.2.2"))).status).toBe(200);
    expect((await rawRequest(behind.url, "/api/about", from("198.51.100.9", "192.0.2.2"))).status).toBe(429);
    const open = await serve({ rateLimit });
    expect((await rawRequest(open.url, "/api/about", from("192.0.2.1"))).status).toBe(200);
    expect((await rawRequest(open.url, "/api/about", from("192.0.2.2"))).status).toBe(429);
  });
});
