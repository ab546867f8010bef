import { readFileSync } from "node:fs";
import { createServer } from "node:http";
import { dirname, join } from "node:path";
import { describe, expect, it, onTestFinished } from "vitest";
import { makeClient } from "./client.ts";
import { serve } from "./testing/serve.ts";
import { AIRCRAFT } from "./testing/test-device.ts";

/** Something on the way that answers everything by itself. */
async function answering(status: number, type: string, body: string): Promise<string> {
  const server = createServer((_, response) => {
    response.writeHead(status, { "content-type": type }).end(body);
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  onTestFinished(() => void server.close());
  const address = server.address();
  if (address === null || typeof address === "string") throw new Error("Expected a port.");
  return `http://127.0.0.1:${address.port}`;
}

describe("makeClient", () => {
  it.each([
    [200, "text/html", "<h1>Welcome to our network</h1>"],
    [200, "application/json", '{"welcome":true}'],
    [200, "application/json", '{"epoch":"e","head":-1,"events":[]}'],
    [502, "text/html", "Bad gateway"],
    [511, "text/html", "Sign in"],
  ])(
    "takes %i %s from something else for no answer, never for an empty ledger",
    async (status, type, body) => {
      const client = makeClient(await answering(status, type, body));
      await expect(client.pull(AIRCRAFT, { after: 0 })).rejects.toMatchObject({ name: "NoAnswer" });
      await expect(client.push(AIRCRAFT, [])).rejects.toMatchObject({ name: "NoAnswer" });
      await expect(client.about()).rejects.toMatchObject({ name: "NoAnswer" });
    },
  );

  it("says that nobody answered when nobody does", async () => {
    await expect(makeClient("http://127.0.0.1:1").about()).rejects.toMatchObject({ name: "NoAnswer" });
  });

  it("passes a refusal on with its code and words", async () => {
    const { url } = await serve();
    await expect(makeClient(url).pull(AIRCRAFT, { after: 0, limit: 501 })).rejects.toMatchObject({
      name: "Refused",
      status: 400,
      code: "bad-request",
      message: expect.stringContaining("limit"),
    });
  });

  it("sends through the fetch that it is given", async () => {
    const { url } = await serve();
    const asked: string[] = [];
    const client = makeClient(url, (input, init) => {
      asked.push(String(input));
      return fetch(input, init);
    });
    await client.about();
    await client.hasPhoto("a".repeat(64));
    expect(asked).toEqual([`${url}/api/about`, `${url}/api/photos/${"a".repeat(64)}`]);
  });
});

describe("the client's module", () => {
  /** Everything that it loads when it runs; imports of types are gone by then. */
  function loaded(file: string, seen = new Set<string>()): ReadonlySet<string> {
    for (const [, what = "", from = ""] of readFileSync(file, "utf8").matchAll(
      /^(?:import|export)\s+(?!type\b)([^;]*?)\s*from\s+"([^"]+)";/gms,
    )) {
      // `import { type A, type B }` loads nothing of those names, but still the module.
      if (what === "" || seen.has(from)) continue;
      if (!from.startsWith(".")) seen.add(from);
      else {
        const path = join(dirname(file), from);
        if (seen.has(path)) continue;
        seen.add(path);
        loaded(path, seen);
      }
    }
    return seen;
  }

  it("brings nothing of the server into a page", () => {
    const all = [...loaded(join(import.meta.dirname, "client.ts"))].map((path) =>
      path.replace(`${import.meta.dirname}/`, ""),
    );
    expect(all.sort()).toEqual(["hono/client", "live-reader.ts", "protocol.ts", "schemas.ts", "zod"]);
  });
});
