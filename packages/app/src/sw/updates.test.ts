import { describe, expect, it, vi } from "vitest";
import { type UpdatePage, watchForUpdates } from "./updates.ts";

class FakeContainer extends EventTarget {
  controller: object | null = null;
  /** Another worker takes the page over. */
  changeController(): void {
    this.controller = {};
    this.dispatchEvent(new Event("controllerchange"));
  }
}

function fakePage(hasWaiting = true) {
  const container = new FakeContainer();
  const said = { waiting: () => {}, failed: () => {} };
  const reload = vi.fn();
  const skipWaiting = vi.fn(() => hasWaiting);
  const page: UpdatePage = {
    container: container as unknown as ServiceWorkerContainer, // what is used of it
    reload,
    register: async (on) => {
      Object.assign(said, on);
      return { skipWaiting, update: async () => {} };
    },
  };
  return { container, page, reload, skipWaiting, said };
}

const settle = () => new Promise((resolve) => setImmediate(resolve));

describe("a newer version of the app", () => {
  it("waits until it is taken up, and is taken up with one reload", async () => {
    const { container, page, reload, skipWaiting, said } = fakePage();
    container.controller = {};
    const updates = watchForUpdates(page, () => {});
    const changed = vi.fn();
    updates.subscribe(changed);
    await settle();
    expect(updates.waiting()).toBe(false);
    said.waiting();
    expect(updates.waiting()).toBe(true);
    expect(changed).toHaveBeenCalledOnce();
    expect(reload).not.toHaveBeenCalled();
    updates.take();
    await settle();
    expect(skipWaiting).toHaveBeenCalledOnce();
    expect(reload).not.toHaveBeenCalled(); // not before the new version has the page
    container.changeController();
    expect(reload).toHaveBeenCalledOnce();
  });

  it("that does not come in time is not waited for: the page begins again, and it is offered once more", async () => {
    vi.useFakeTimers();
    try {
      const { container, page, reload } = fakePage();
      container.controller = {};
      const updates = watchForUpdates(page, () => {});
      updates.take();
      await vi.advanceTimersByTimeAsync(4_000);
      expect(reload).not.toHaveBeenCalled();
      await vi.advanceTimersByTimeAsync(2_000);
      expect(reload).toHaveBeenCalledOnce();
    } finally {
      vi.useRealTimers();
    }
  });

  it("does not reload a page because it is the first visit", async () => {
    const { container, page, reload } = fakePage();
    const updates = watchForUpdates(page, () => {});
    container.changeController();
    await settle();
    expect(reload).not.toHaveBeenCalled();
    expect(updates.waiting()).toBe(false);
  });

  it("that another tab took up waits here for this page's own tap", async () => {
    const { container, page, reload } = fakePage(false);
    container.controller = {};
    const updates = watchForUpdates(page, () => {});
    container.changeController();
    expect(updates.waiting()).toBe(true);
    expect(reload).not.toHaveBeenCalled();
    updates.take();
    await settle();
    expect(reload).toHaveBeenCalledOnce();
  });

  it("that could not be kept at a first visit is told of", async () => {
    const { page, said } = fakePage();
    const updates = watchForUpdates(page, () => {});
    const changed = vi.fn();
    updates.subscribe(changed);
    await settle();
    expect(updates.cannotBeKept()).toBe(false);
    said.failed();
    expect(updates.cannotBeKept()).toBe(true);
    expect(changed).toHaveBeenCalledOnce();
  });

  it("that cannot be registered is reported, and the app goes on without", async () => {
    const { page } = fakePage();
    const reported = vi.fn();
    const failing = { ...page, register: () => Promise.reject(new Error("blocked")) };
    const updates = watchForUpdates(failing, reported);
    await settle();
    expect(reported).toHaveBeenCalledWith(expect.objectContaining({ message: "blocked" }));
    updates.look();
    await settle();
    expect(updates.waiting()).toBe(false);
  });
});
