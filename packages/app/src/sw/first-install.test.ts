import { expect, it, vi } from "vitest";
import { type Registration, whenFirstFails } from "./first-install.ts";

class FakeWorker extends EventTarget {
  state: ServiceWorkerState = "installing";
  becomes(state: ServiceWorkerState): void {
    this.state = state;
    this.dispatchEvent(new Event("statechange"));
  }
}

const worker = () => new FakeWorker() as FakeWorker & ServiceWorker; // what is used of one
type Parts = { -readonly [K in keyof Registration]: Registration[K] };
const registered = (parts: Partial<Parts>): Parts => ({
  active: null,
  installing: null,
  waiting: null,
  ...parts,
});

it("tells of a first visit whose files could not be kept, once it is known", () => {
  const installing = worker();
  const failed = vi.fn();
  whenFirstFails(registered({ installing }), failed);
  installing.becomes("installed");
  expect(failed).not.toHaveBeenCalled();
  installing.becomes("redundant");
  expect(failed).toHaveBeenCalledOnce();
});

it("tells of one that was given up before anybody looked", () => {
  const failed = vi.fn();
  whenFirstFails(registered({}), failed);
  expect(failed).toHaveBeenCalledOnce();
});

it("says nothing where the files are kept, of this version or the one before", () => {
  const failed = vi.fn();
  const newer = worker();
  whenFirstFails(registered({ active: worker(), installing: newer }), failed);
  newer.becomes("redundant");
  const first = worker();
  const registration = registered({ installing: first });
  whenFirstFails(registration, failed);
  registration.active = first;
  first.becomes("activated");
  first.becomes("redundant"); // a newer one took its place, which is active then
  expect(failed).not.toHaveBeenCalled();
});
