import { SOON } from "@witnessmark/store/testing/soon";
import { describe, expect, it, vi } from "vitest";
import { LIVE_PER_CLIENT } from "../guard/limits.ts";
import { serve } from "../testing/serve.ts";

/** Opens a live line and reads its first part. */
async function open(url: string) {
  const off = new AbortController();
  const response = await fetch(`${url}/api/live`, { signal: off.signal });
  const reader = response.body?.getReader();
  const part = async () => new TextDecoder().decode((await reader?.read())?.value);
  return { response, part, off };
}

describe("a live line", () => {
  it("is an event stream that nobody keeps or holds back", async () => {
    const { url } = await serve();
    const { response, part, off } = await open(url);
    expect(response.headers.get("content-type")).toBe("text/event-stream");
    expect(response.headers.get("cache-control")).toBe("no-store");
    expect(response.headers.get("content-encoding")).toBeNull();
    expect(await part()).toBe("retry: 3000\n\n");
    off.abort();
  });

  it("is refused to a client that has too many, and given again when one is closed", async () => {
    const { url } = await serve();
    const lines = [];
    for (let line = 0; line < LIVE_PER_CLIENT; line += 1) lines.push(await open(url));
    const refused = await fetch(`${url}/api/live`);
    expect(refused.status).toBe(429);
    expect(refused.headers.get("retry-after")).toBe("30");
    await refused.body?.cancel();
    lines[0]?.off.abort();
    const status = async () => {
      const again = await open(url);
      const { status: got } = again.response;
      again.off.abort();
      return got;
    };
    await expect.poll(status, SOON).toBe(200);
    for (const { off } of lines) off.abort();
  });

  it("says that it is still there, so that nothing on the way cuts it", async () => {
    vi.useFakeTimers({ toFake: ["setInterval", "clearInterval"] });
    try {
      const { url } = await serve();
      const { part, off } = await open(url);
      await part();
      vi.advanceTimersByTime(15_000);
      expect(await part()).toBe(": still here\n\n");
      off.abort();
    } finally {
      vi.useRealTimers();
    }
  });
});
