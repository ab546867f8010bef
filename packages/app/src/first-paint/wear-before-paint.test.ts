import { afterEach, expect, it, vi } from "vitest";
import { wearBeforePaint } from "./wear-before-paint.ts";

/** As much of a page as the two functions dress. */
function standIn(kept: Readonly<Record<string, string>>, dark: boolean) {
  const dataset: Record<string, string> = {};
  const colour = { content: "" };
  const meta = { setAttribute: (_: string, value: string) => Object.assign(colour, { content: value }) };
  const localStorage = { getItem: (name: string) => kept[name] ?? null };
  const matchMedia = () => ({ matches: dark, addEventListener: () => {} });
  vi.stubGlobal("document", { documentElement: { dataset }, querySelector: () => meta });
  vi.stubGlobal("localStorage", localStorage);
  vi.stubGlobal("matchMedia", matchMedia);
  vi.stubGlobal("window", { localStorage, matchMedia, addEventListener: () => {} });
  return { dataset, colour };
}

afterEach(() => {
  vi.unstubAllGlobals();
  vi.resetModules();
});

const KEPT = [
  undefined,
  "{}",
  '{"theme":"night"}',
  '{"theme":"day","hand":"left"}',
  '{"theme":"auto","hand":"right"}',
  '{"theme":7,"hand":null}',
  "[]",
  "null",
  "no JSON",
];

it.each(KEPT.flatMap((text) => [false, true].map((dark) => ({ text, dark }))))(
  "dresses the page before it is painted as the app does after: $text, dark $dark",
  async ({ text, dark }) => {
    const kept: Record<string, string> = text === undefined ? {} : { "witnessmark.preferences": text };
    const before = standIn(kept, dark);
    wearBeforePaint();
    const after = standIn(kept, dark);
    const { wearPreferences } = await import("../preferences/preferences.ts");
    wearPreferences();
    expect(before).toEqual(after);
    expect(before.dataset["theme"]).toMatch(/^(day|night)$/);
  },
);

it("says whom the device knows, and only then", () => {
  const known = standIn({ "witnessmark.known": "true" }, false);
  wearBeforePaint();
  expect(known.dataset["known"]).toBe("yes");
  for (const text of ["false", "{}", "no JSON"]) {
    const unknown = standIn({ "witnessmark.known": text }, false);
    wearBeforePaint();
    expect(unknown.dataset).not.toHaveProperty("known");
  }
});
