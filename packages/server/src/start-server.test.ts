import { createServer } from "node:http";
import { sha256 } from "@witnessmark/ledger";
import { openSqlite } from "@witnessmark/store";
import { temporaryFolder } from "@witnessmark/store/testing/temporary-folder";
import { describe, expect, it, onTestFinished } from "vitest";
import { makeClient } from "./client.ts";
import { EVENTS_MOST_B, PHOTO_MOST_B } from "./guard/limits.ts";
import { startServer } from "./start-server.ts";
import { rawRequest } from "./testing/raw-request.ts";
import { serve } from "./testing/serve.ts";
import { AIRCRAFT, OPERATOR, TestDevice } from "./testing/test-device.ts";

const EVENTS = `/api/aircraft/${AIRCRAFT}/events`;
const JSON_TYPE = { "content-type": "application/json" };
const errorOf = (body: string): { readonly code: string; readonly message: string } => JSON.parse(body).error;

describe("every answer", () => {
  it("carries the strict policy, refusals too", async () => {
    const { url } = await serve();
    for (const path of ["/api/about", "/api/none", "/", "/api", "/api/aircraft/ZZ/events?after=x"]) {
      const { headers } = await rawRequest(url, path);
      const policy = String(headers["content-security-policy"]).split("; ");
      expect(policy).toEqual(
        expect.arrayContaining([
          "default-src 'self'",
          "script-src 'self' 'wasm-unsafe-eval'",
          "style-src 'self'",
          "img-src 'self' blob: data:",
          "worker-src 'self'",
          "object-src 'none'",
          "frame-ancestors 'none'",
          "base-uri 'none'",
        ]),
      );
      expect(policy.join()).not.toMatch(/'unsafe-/);
      expect(headers).toMatchObject({
        "x-content-type-options": "nosniff",
        "referrer-policy": "no-referrer",
        "cross-origin-opener-policy": "same-origin",
        "permissions-policy": expect.stringContaining("camera=(self)"),
      });
    }
  });

  it("that refuses is a sentence and a code", async () => {
    const { url } = await serve();
    for (const [path, init] of [
      ["/api/none", {}],
      ["/none.js", {}],
      [EVENTS, { method: "DELETE" }],
      [`${EVENTS}?after=-1`, {}],
      [`${EVENTS}?limit=501`, {}],
      [`${EVENTS}?after=1e400`, {}],
      ["/api/photos/..%2f..%2fetc%2fpasswd", {}],
      [`/api/aircraft/${"x".repeat(41)}/events`, {}],
      ["/api/aircraft/%00/events", {}],
      [EVENTS, { method: "POST", headers: JSON_TYPE, body: "{" }],
      [EVENTS, { method: "POST", headers: JSON_TYPE, body: "[]" }],
      [EVENTS, { method: "POST", body: '{"protocolVersion":1,"events":[]}' }],
      [EVENTS, { method: "POST", headers: JSON_TYPE, body: '{"protocolVersion":1,"events":{}}' }],
    ] as const) {
      const { status, body } = await rawRequest(url, path, init);
      expect([path, status >= 400 && status < 500]).toEqual([path, true]);
      expect(errorOf(body).message).toMatch(/^[A-Z0-9a-z].*\.$/s);
    }
  });
});

describe("limits", () => {
  it("a push of more than 2 MB is refused, whether or not it says its size", async () => {
    const { url, store } = await serve();
    const events = JSON.stringify({ protocolVersion: 1, events: ["x".repeat(EVENTS_MOST_B)] });
    const said = await rawRequest(url, EVENTS, { method: "POST", headers: JSON_TYPE, body: events });
    expect([said.status, errorOf(said.body).code]).toEqual([413, "too-large"]);
    const chunked = await rawRequest(url, EVENTS, {
      method: "POST",
      headers: { ...JSON_TYPE, "transfer-encoding": "chunked" },
      body: events,
    });
    expect(chunked.status).toBe(413);
    expect(await store.forOperator(OPERATOR).quarantine(AIRCRAFT, 10, 1e9)).toEqual([]);
  });

  it("a push of just 2 MB is taken", async () => {
    const { url } = await serve();
    const around = JSON.stringify({ protocolVersion: 1, events: [""] }).length;
    const events = JSON.stringify({ protocolVersion: 1, events: ["x".repeat(EVENTS_MOST_B - around)] });
    expect((await rawRequest(url, EVENTS, { method: "POST", headers: JSON_TYPE, body: events })).status).toBe(
      200,
    );
  });

  it("a push of more than 500 events is refused", async () => {
    const { url } = await serve();
    const body = JSON.stringify({ protocolVersion: 1, events: Array.from({ length: 501 }, () => 1) });
    const answer = await rawRequest(url, EVENTS, { method: "POST", headers: JSON_TYPE, body });
    expect([answer.status, errorOf(answer.body).code]).toEqual([400, "bad-request"]);
  });

  it("a picture of more than 8 MB is refused, one of just 8 MB is kept", async () => {
    const { url } = await serve();
    const client = makeClient(url);
    const picture = new Uint8Array(PHOTO_MOST_B);
    picture.set([0xff, 0xd8, 0xff, 0xe0]);
    expect(await client.putPhoto(await sha256(picture), picture)).toBe("stored");
    expect(await client.putPhoto(await sha256(picture), picture)).toBe("present");
    const larger = new Uint8Array(PHOTO_MOST_B + 1);
    larger.set([0xff, 0xd8, 0xff, 0xe0]);
    const path = `/api/photos/${await sha256(larger)}`;
    expect((await rawRequest(url, path, { method: "PUT", body: larger })).status).toBe(413);
    const headers = { "transfer-encoding": "chunked" };
    expect((await rawRequest(url, path, { method: "PUT", headers, body: larger })).status).toBe(413);
  });

  it("an app that speaks another version of the protocol is told who must be updated", async () => {
    const { url } = await serve();
    const push = async (protocolVersion: number) => {
      const body = JSON.stringify({ protocolVersion, events: [] });
      return rawRequest(url, EVENTS, { method: "POST", headers: JSON_TYPE, body });
    };
    const older = await push(0);
    expect(older.status).toBe(426);
    expect(errorOf(older.body).message).toContain("take up its update");
    expect(errorOf((await push(2)).body).message).toContain("Update the server");
  });
});

describe("a picture", () => {
  it("is served as a picture and nothing else", async () => {
    const { url } = await serve();
    const picture = new Uint8Array([0x52, 0x49, 0x46, 0x46, 0, 0, 0, 0, 0x57, 0x45, 0x42, 0x50]);
    const hash = await sha256(picture);
    await makeClient(url).putPhoto(hash, picture);
    for (const method of ["GET", "HEAD"]) {
      const { status } = await rawRequest(url, `/api/photos/${hash}`, { method });
      expect(status).toBe(200);
    }
    const { headers } = await rawRequest(url, `/api/photos/${hash}`);
    expect(headers).toMatchObject({
      "content-type": "image/webp",
      "content-disposition": `inline; filename="${hash.slice(0, 16)}.webp"`,
      "x-content-type-options": "nosniff",
      "content-security-policy": "default-src 'none'; img-src 'self'; sandbox",
      "cache-control": "private, max-age=31536000, immutable",
    });
    const { status } = await rawRequest(url, `/api/photos/${"0".repeat(64)}`, { method: "HEAD" });
    expect(status).toBe(404);
  });
});

describe("a full disk", () => {
  it("refuses a push in words, acknowledges nothing of it, and takes it once there is room", async () => {
    const folder = temporaryFolder();
    onTestFinished(folder.remove);
    const file = `${folder.path}/small.sqlite`;
    const small = await openSqlite({ file, most_B: 400_000 });
    const server = await serve({ store: small });
    const client = makeClient(server.url);
    const device = new TestDevice();
    const acknowledged = new Set<string>();
    let refused = await device.make(50);
    const fill = async () => {
      for (;;) {
        for (const { id } of (await client.push(AIRCRAFT, refused)).results) acknowledged.add(id);
        refused = await device.make(50);
      }
    };
    await expect(fill()).rejects.toMatchObject({
      name: "Refused",
      status: 507,
      code: "disk-full",
      message: expect.stringContaining("There is no room left"),
    });
    expect(acknowledged.size).toBeGreaterThan(0);
    expect((await client.pull(AIRCRAFT, { after: 0 })).head).toBe(acknowledged.size);
    const picture = new Uint8Array(300_000);
    picture.set([0xff, 0xd8, 0xff, 0xe0]);
    await expect(client.putPhoto(await sha256(picture), picture)).rejects.toMatchObject({ status: 507 });
    expect(await small.check()).toEqual([]);
    await server.close();
    await small.close();

    const roomy = await openSqlite({ file });
    const again = await serve({ store: roomy });
    const { results } = await makeClient(again.url).push(AIRCRAFT, refused);
    expect(new Set(results.map(({ outcome }) => outcome))).toEqual(new Set(["accepted"]));
    await again.close();
    await roomy.close();
  });
});

describe("the list of routes", () => {
  it("is there for programs and for people, with every route", async () => {
    const { url } = await serve();
    const described = JSON.parse((await rawRequest(url, "/api/openapi.json")).body);
    expect(Object.keys(described.paths).sort()).toEqual([
      "/api/about",
      "/api/aircraft",
      "/api/aircraft/{aircraft}/decisions/{decision}/sheet.pdf",
      "/api/aircraft/{aircraft}/devices",
      "/api/aircraft/{aircraft}/events",
      "/api/aircraft/{aircraft}/ledger.jsonl",
      "/api/aircraft/{aircraft}/needed",
      "/api/aircraft/{aircraft}/quarantine",
      "/api/aircraft/{aircraft}/record.pdf",
      "/api/aircraft/{aircraft}/runs-out.ics",
      "/api/live",
      "/api/photos/{sha256}",
      "/api/weather",
    ]);
    expect(described.components.schemas).toHaveProperty("PushAnswer");
    const page = await rawRequest(url, "/api");
    expect(page.headers["content-type"]).toMatch(/^text\/html/);
    for (const path of Object.keys(described.paths)) expect(page.body).toContain(path);
    expect(page.body).not.toMatch(/<script|style=/);
    expect((await rawRequest(url, "/api/page.css")).headers["content-type"]).toMatch(/^text\/css/);
  });
});

describe("startServer", () => {
  it("listens on this machine only, unless told otherwise", async () => {
    const { url } = await serve();
    expect(url).toMatch(/^http:\/\/127\.0\.0\.1:\d+$/);
  });

  it("says so when the port is taken", async () => {
    const other = createServer();
    await new Promise<void>((resolve) => other.listen(0, "127.0.0.1", resolve));
    onTestFinished(() => void other.close());
    const address = other.address();
    if (address === null || typeof address === "string") throw new Error("Expected a port.");
    const { store } = await serve();
    await expect(startServer({ store, operator: OPERATOR, port: address.port })).rejects.toThrow(
      `Port ${address.port} is taken by another program. Stop it, or choose another port: PORT=${address.port + 1}.`,
    );
  });

  it("ends live lines when it closes, and lets what has begun come to its end", async () => {
    const { url, close } = await serve();
    const client = makeClient(url);
    const line = client.live(() => undefined, new AbortController().signal);
    line.catch(() => undefined);
    await client.about();
    const pushing = client.push(AIRCRAFT, await new TestDevice().make(200));
    const [, pushed] = await Promise.all([close(), pushing.catch((error: unknown) => error)]);
    await expect(line).rejects.toMatchObject({ name: "NoAnswer" });
    // Either it had begun, and was answered in full, or it had not, and was not taken.
    expect(pushed).toSatisfy(
      (answer: unknown) =>
        (typeof answer === "object" && answer !== null && "head" in answer && answer.head === 200) ||
        (answer instanceof Error && answer.name === "NoAnswer"),
    );
    await expect(client.about()).rejects.toMatchObject({ name: "NoAnswer" });
  });

  it("goes on when a client breaks off in the middle of a push", async () => {
    const problems: unknown[] = [];
    const { url, store } = await serve({ onProblem: (problem) => problems.push(problem) });
    const cut = new AbortController();
    const body = new ReadableStream({
      pull(controller) {
        controller.enqueue(new TextEncoder().encode('{"protocolVersion":1,"events":['));
        cut.abort();
      },
    });
    const init = { method: "POST", headers: JSON_TYPE, body, duplex: "half", signal: cut.signal } as const;
    await expect(fetch(`${url}${EVENTS}`, init)).rejects.toThrow();
    expect((await makeClient(url).about()).program).toBe("witnessmark");
    expect(await store.forOperator(OPERATOR).quarantine(AIRCRAFT, 10, 1e6)).toEqual([]);
    expect(problems).toEqual([]);
  });
});
