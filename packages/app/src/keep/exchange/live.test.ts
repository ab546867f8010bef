import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { FakeServer } from "../testing/fake-server.ts";
import { newPhone, pickUp } from "../testing/phone.ts";
import { listen } from "./live.ts";

describe("the live stream", () => {
  beforeEach(() => {
    vi.useFakeTimers();
  });
  afterEach(() => {
    vi.useRealTimers();
  });

  it("opens again whenever it ends, waiting longer each time, and says when it is there", async () => {
    const server = new FakeServer();
    const sources: ReturnType<FakeServer["liveSource"]>[] = [];
    const connected = vi.fn();
    const live = listen(
      () => {
        const source = server.liveSource();
        sources.push(source);
        return source;
      },
      { connected, head: () => {} },
      () => 1,
    );
    live.open();
    live.open();
    await vi.advanceTimersByTimeAsync(0);
    expect(sources).toHaveLength(1);
    expect(connected).toHaveBeenCalledTimes(1);
    sources[0]?.fail();
    await vi.advanceTimersByTimeAsync(999);
    expect(sources).toHaveLength(1);
    await vi.advanceTimersByTimeAsync(1);
    expect(sources).toHaveLength(2);
    live.close();
    sources[1]?.fail();
    await vi.advanceTimersByTimeAsync(600_000);
    expect(sources).toHaveLength(2);
  });

  it("takes a message that does not read for no news", async () => {
    const heard: unknown[] = [];
    let say: (data: string) => void = () => {};
    const live = listen(
      () => ({
        readyState: 1,
        onopen: null,
        onerror: null,
        addEventListener: (_, listener) => {
          say = (data) => listener(new MessageEvent("head", { data }));
        },
        close: () => {},
      }),
      { connected: () => {}, head: (message) => heard.push(message) },
    );
    live.open();
    say("not JSON");
    say('{"aircraft": 7}');
    say('{"aircraft": "ZZ-SKR", "head": 4, "epoch": "e", "later": true}');
    expect(heard).toEqual([{ aircraft: "ZZ-SKR", head: 4, epoch: "e" }]);
  });
});

describe("two phones with a connection", () => {
  it("see each other's answers without being asked", async () => {
    const server = new FakeServer();
    const options = { automatic: true, liveSource: () => server.liveSource() };
    const one = await pickUp(server, newPhone(), options);
    const two = await pickUp(server, newPhone(), options);
    const walk = "01a21200-0000-7000-8000-000000000000";
    await one.append("ZZ-SKR", [
      { type: "check.answered", body: { walk, check: "oil-level", answer: "as-it-should-be" } },
    ]);
    await expect
      .poll(() => two.snapshot().aircraft.get("ZZ-SKR")?.state.checks.get("oil-level")?.answers.length)
      .toBe(1);
    await two.append("ZZ-SKR", [
      { type: "check.answered", body: { walk, check: "oil-level", answer: "not-right" } },
    ]);
    await expect
      .poll(() => one.snapshot().aircraft.get("ZZ-SKR")?.state.checks.get("oil-level")?.answers.length)
      .toBe(2);
    await expect.poll(() => one.snapshot().status.toSend + two.snapshot().status.toSend).toBe(0);
    one.close();
    two.close();
  });
});
