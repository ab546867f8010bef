import { afterEach, beforeEach, expect, it, vi } from "vitest";
import { askWorker, type Failure } from "./ask-worker.ts";

/** A worker that answers when it is told to. */
class FakeWorker extends EventTarget {
  readonly asked: { readonly request: number; readonly question: string }[] = [];
  isStopped = false;
  postMessage(message: { readonly request: number; readonly question: string }): void {
    this.asked.push(message);
  }
  terminate(): void {
    this.isStopped = true;
  }
  say(data: object): void {
    this.dispatchEvent(Object.assign(new Event("message"), { data }));
  }
  break(message: string): void {
    this.dispatchEvent(Object.assign(new Event("error"), { message }));
  }
}

let workers: FakeWorker[] = [];
const asking = (idle_ms?: number) =>
  askWorker<string, string>({
    start: () => {
      const worker = new FakeWorker();
      workers.push(worker);
      return worker as unknown as Worker; // as much of one as is used
    },
    broke: (detail) => new Error(`broke: ${detail}`),
    failed: ({ name, message, status }: Failure) => new Error(`${name} ${String(status)}: ${message}`),
    ...(idle_ms === undefined ? {} : { idle_ms }),
  });

beforeEach(() => {
  workers = [];
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

it("gives each question its own answer, in whatever order they come, from one worker", async () => {
  const ask = asking();
  const [one, two] = [ask("one"), ask("two")];
  workers[0]?.say({ request: 2, answer: "second" });
  workers[0]?.say({ request: 1, answer: "first" });
  expect(await one).toBe("first");
  expect(await two).toBe("second");
  expect(workers).toHaveLength(1);
});

it("tells what the worker could not do, with all that its error says", async () => {
  const asked = asking()("one");
  workers[0]?.say({ request: 1, failure: { name: "Refused", message: "No.", status: 413 } });
  await expect(asked).rejects.toThrow("Refused 413: No.");
});

it("fails everything that waits when the worker breaks down, and the next question has a new one", async () => {
  const ask = asking();
  const waiting = Promise.allSettled([ask("one"), ask("two")]);
  workers[0]?.break("out of memory");
  expect((await waiting).map(({ status }) => status)).toEqual(["rejected", "rejected"]);
  const next = ask("three");
  expect(workers).toHaveLength(2);
  workers[1]?.say({ request: 3, answer: "third" });
  expect(await next).toBe("third");
});

it("is stopped after a while with nothing to do, and not while a question waits", async () => {
  const ask = asking(1000);
  const one = ask("one");
  workers[0]?.say({ request: 1, answer: "first" });
  await one;
  vi.advanceTimersByTime(900);
  const two = ask("two");
  vi.advanceTimersByTime(5000);
  expect(workers[0]?.isStopped).toBe(false);
  workers[0]?.say({ request: 2, answer: "second" });
  await two;
  vi.advanceTimersByTime(1001);
  expect(workers[0]?.isStopped).toBe(true);
});
