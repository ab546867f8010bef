import { describe, expect, it, vi } from "vitest";
import { type PreloadPage, reloadForMissingPart } from "./preload-error.ts";

function fakePage(isOnline: boolean) {
  const kept = new Map<string, string>();
  let now_ms = 1_000_000;
  const reload = vi.fn();
  const page: PreloadPage = {
    online: () => isOnline,
    now_ms: () => now_ms,
    storage: { getItem: (key) => kept.get(key) ?? null, setItem: (key, value) => void kept.set(key, value) },
    reload,
  };
  return {
    page,
    reload,
    pass: (time_ms: number) => {
      now_ms += time_ms;
    },
  };
}

describe("a part of the app that is no longer there", () => {
  it("is answered by one reload, and not by a second one soon after", () => {
    const { page, reload, pass } = fakePage(true);
    expect(reloadForMissingPart(page)).toBe(true);
    pass(60_000);
    expect(reloadForMissingPart(page)).toBe(false);
    expect(reload).toHaveBeenCalledOnce();
    pass(300_000);
    expect(reloadForMissingPart(page)).toBe(true);
  });

  it("never reloads a page without a connection: it would be gone", () => {
    const { page, reload } = fakePage(false);
    expect(reloadForMissingPart(page)).toBe(false);
    expect(reload).not.toHaveBeenCalled();
  });
});
