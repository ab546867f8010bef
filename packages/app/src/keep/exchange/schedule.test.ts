import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import type { Outcome, Scope } from "./exchange.ts";
import { makeSchedule, type Schedule } from "./schedule.ts";

const reached: Outcome = { reached: true, trouble: null };
const outOfReach: Outcome = { reached: false, trouble: null };

let schedule: Schedule | null = null;
beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  schedule?.stop();
  vi.useRealTimers();
});

/** A round that ends when it is told to. */
function rounds() {
  const asked: Scope[] = [];
  const ends: ((outcome: Outcome) => void)[] = [];
  const round = (scope: Scope) => {
    asked.push(scope);
    return new Promise<Outcome>((resolve) => ends.push(resolve));
  };
  const end = async (outcome: Outcome) => {
    ends.shift()?.(outcome);
    await vi.advanceTimersByTimeAsync(0);
  };
  return { asked, round, end };
}

describe("when exchanges happen", () => {
  it("one at a time, and what comes meanwhile together in the next", async () => {
    const { asked, round, end } = rounds();
    schedule = makeSchedule(round);
    void schedule.want({ aircraft: "ZZ-SKR" });
    void schedule.want({ aircraft: "ZZ-DUN" });
    void schedule.want({ aircraft: "ZZ-SKR" });
    expect(asked).toEqual([{ aircraft: "ZZ-SKR" }]);
    await end(reached);
    expect(asked.slice(1)).toEqual([{ aircraft: "ZZ-DUN" }]);
    await end(reached);
    expect(asked.slice(2)).toEqual([{ aircraft: "ZZ-SKR" }]);
    void schedule.want({ aircraft: "ZZ-BRK" });
    void schedule.want("all");
    await end(reached);
    expect(asked.slice(3)).toEqual(["all"]);
  });

  it("a wish is fulfilled by an exchange that began after it", async () => {
    const { round, end } = rounds();
    schedule = makeSchedule(round);
    void schedule.want("all");
    let isDone = false;
    void schedule.want("all").then(() => {
      isDone = true;
    });
    await end(reached);
    expect(isDone).toBe(false);
    await end(reached);
    expect(isDone).toBe(true);
  });

  it("waits longer after each failure, up to five minutes, and starts over once it got through", async () => {
    const { asked, round, end } = rounds();
    schedule = makeSchedule(round, () => 1);
    void schedule.want("all");
    const waits_s = [1, 2, 4, 8, 16, 32, 64, 128, 256, 300, 300];
    for (const [failures, wait_s] of waits_s.entries()) {
      await end(outOfReach);
      await vi.advanceTimersByTimeAsync(wait_s * 1_000 - 1);
      expect(asked).toHaveLength(failures + 1);
      await vi.advanceTimersByTimeAsync(1);
      expect(asked).toHaveLength(failures + 2);
    }
    await end(reached);
    await vi.advanceTimersByTimeAsync(60_000);
    await end(outOfReach);
    const before = asked.length;
    await vi.advanceTimersByTimeAsync(1_000);
    expect(asked).toHaveLength(before + 1);
  });

  it("spreads the tries of phones that lost the same server: from half the wait to all of it", async () => {
    const { asked, round, end } = rounds();
    schedule = makeSchedule(round, () => 0);
    void schedule.want("all");
    await end(outOfReach);
    await vi.advanceTimersByTimeAsync(499);
    expect(asked).toHaveLength(1);
    await vi.advanceTimersByTimeAsync(1);
    expect(asked).toHaveLength(2);
  });

  it("tries the other aircraft later when the server is out of reach", async () => {
    const { asked, round, end } = rounds();
    schedule = makeSchedule(round, () => 1);
    void schedule.want("all");
    void schedule.want({ aircraft: "ZZ-SKR" });
    void schedule.want({ aircraft: "ZZ-DUN" });
    await end(reached);
    await end(outOfReach);
    expect(asked).toEqual(["all", { aircraft: "ZZ-SKR" }]);
    await vi.advanceTimersByTimeAsync(1_000);
    expect(asked.at(-1)).toBe("all");
  });

  it("stops when it is told to, and leaves nobody waiting", async () => {
    const { round } = rounds();
    schedule = makeSchedule(round);
    void schedule.want("all");
    const waiting = schedule.want("all");
    schedule.stop();
    await waiting;
    await schedule.want("all");
  });
});
